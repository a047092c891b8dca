import { type Env, type Span, scan } from "../inline";
import { drop, insert, type Problems, write } from "../problems";
import type { SourceText } from "../source-text";
import { type Part, stops } from "./emphasis";

/*
 * Pictures that are links, or one too many.
 */

/** The stretches of a text that are printed each by itself, as answers or parts of them. */
function stretches(text: string, part: Part | undefined, env: Env): Span[] {
  const between = part ? stops(text, part, env) : [];
  return [{ start: 0, end: 0 }, ...between].map(({ end }, i) => ({
    start: end,
    end: between[i]?.start ?? text.length,
  }));
}

const link = /^\s*(\[[^\]\n]*\]\((?:<[^<>\n]+|[^()<>\s]+)\.(?:png|jpe?g|gif|svg|webp)>?\))\s*$/iu;

/** The path of a picture and nothing else. */
const bare = /^\s*((?:[^\s/\\()[\]<>:|]+[/\\])*([^\s/\\()[\]<>:|]+)\.(?:png|jpe?g|gif|svg|webp))\s*$/iu;

/** `[mar](sea.png) = sea`, `sea.png = sea`: an answer or an event that is nothing but a link to a picture, or its path. */
export function linkedPictures(source: SourceText, part: Part | undefined, env: Env, problems: Problems): void {
  const { text } = source;
  if (!/\]\(|\.(?:png|jpe?g|gif|svg|webp)/iu.test(text)) return;
  const behind = scan(text, env).comments[0]?.start ?? text.length;
  for (const { start, end } of stretches(text, part, env)) {
    const match = link.exec(text.slice(start, Math.min(end, behind)));
    if (!match?.[1]) {
      const [whole = "", path = "", name = ""] = bare.exec(text.slice(start, Math.min(end, behind))) ?? [];
      if (path === "") continue;
      const range = source.range(start + whole.indexOf(path), start + whole.indexOf(path) + path.length);
      const wanted = `![${name}](${path.replaceAll("\\", "/")})`;
      const message = "This path is printed as a text: a picture is written ![what it shows](its path).";
      problems.trap("picture-path", range, message, write(`Write “${wanted}”`, range, wanted));
      continue;
    }
    const at = start + match[0].indexOf(match[1]);
    problems.trap(
      "picture-path",
      source.range(at, at + match[1].length),
      "This is a link, of which only the words are printed: a picture has an exclamation mark before it.",
      insert("Put “!” before it", source.source(at), "!"),
    );
  }
}

const picture = /!\[(?:\\.|[^\]\\\n])*\]\((?:\\.|[^)\\\n])*\)/gu;

/** Of two pictures in one answer, statement or event only the first is printed. */
export function secondPictures(source: SourceText, part: Part | undefined, env: Env, problems: Problems): void {
  const { text } = source;
  const { mask } = scan(text, env);
  for (const { start, end } of stretches(text, part, env)) {
    const found = [...text.slice(start, end).matchAll(picture)].filter(({ index }) => mask[start + index]);
    for (const { index, 0: written } of found.slice(1)) {
      const at = start + index;
      const space = /\s*$/u.exec(text.slice(start, at))?.[0].length ?? 0;
      problems.trap(
        "second-picture",
        source.range(at, at + written.length),
        "This picture is not printed: there is place for one, and another stands before it.",
        drop("Take it out", source.range(at - space, at + written.length)),
      );
    }
  }
}
