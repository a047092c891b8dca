import type Token from "markdown-it/lib/token.mjs";
import activitySchema from "../../../schemas/activity.schema.json";
import type { LineIndex, Range } from "../../base/range";
import { type Problems, write } from "../problems";
import type { Problem } from "../unit";
import { both, endless, openEnd } from "./fences";
import { textOf } from "./lines";

/*
 * Activities whose fence is missing, or does not hold their name. Hardly anything else can be meant, so they are told wherever they
 * stand.
 */

const kinds = activitySchema.properties.make.enum.join("|");
const make = new RegExp(`^[ \\t]*make[ \\t]*[:：][ \\t]*["'“]?(?:${kinds})["'”]?[ \\t]*$`, "u");
/** The same without its colon. */
const bare = new RegExp(`^[ \\t]*make(?=[ \\t]+(?:${kinds})[ \\t]*$)`, "u");
const withKind = new RegExp(`^activity[ \\t]*[:=：][ \\t]*(${kinds})$`, "iu");
const option = /^[ \t]*[a-z][\w-]*[ \t]*[:：]/u;
const word = /^[ \t]*activity[ \t]*:?[ \t]*$/iu;

/**
 * `make: loop` and further options as a paragraph. Alone, `make loop` may be a note as well where an activity uses the section.
 * Whether this is one.
 */
export function unfencedActivity(
  lines: LineIndex,
  [first, after]: readonly [number, number],
  problems: Problems,
): boolean {
  const texts = Array.from({ length: after - first }, (_, i) => textOf(lines, first + i));
  const named = word.test(texts[0] ?? "");
  const options = named ? texts.slice(1) : texts;
  const bareAt = options.findIndex((text) => bare.test(text));
  if (bareAt < 0 && !options.some((text) => make.test(text))) return false;
  if (!options.every((text, i) => i === bareAt || option.test(text))) return false;
  const isLone = bareAt >= 0 && !named && options.length === 1;
  const newline = lines.newline;
  const begin = lines.start(first);
  const { end } = lines.line(after - 1);
  const bareLine = after - options.length + bareAt;
  const colon = bareAt < 0 ? 0 : lines.start(bareLine) + (bare.exec(options[bareAt] ?? "")?.[0].length ?? 0);
  problems.tell(
    isLone ? "unused" : undefined,
    "not-an-activity",
    lines.line(first),
    "This is no activity: a line “```activity” stands above its options, and a line “```” below them.",
    {
      title: "Put these lines round it",
      ...(isLone ? { unsure: true as const } : {}),
      edits: [
        {
          range: { start: begin, end: named ? lines.start(first + 1) : begin },
          text: `\`\`\`activity${newline}`,
        },
        ...(bareAt < 0 ? [] : [{ range: { start: colon, end: colon }, text: ":" }]),
        { range: { start: end, end }, text: `${newline}\`\`\`` },
      ],
    },
  );
  return true;
}

/**
 * A block with its name on the line below the fence, or with the kind behind the name: “activity: loop”; undefined where it is none.
 * `below`: from which line on is read what stands below it, where it has no end of its own.
 */
export function misnamedActivity(
  lines: LineIndex,
  token: Token,
  problems: Problems,
): { readonly below?: number } | undefined {
  const [first] = token.map ?? [0];
  const kind = withKind.exec(token.info.trim())?.[1];
  const [name = ""] = token.content.split("\n", 1);
  if (kind === undefined && !word.test(name)) return undefined;
  const open = openEnd(lines, token, kind === undefined);
  const own = token.content.split("\n");
  const options = open ? own.slice(0, open.extent.end - first - 1) : own;
  const isMade = options.some((text) => make.test(text));
  const head = lines.line(first);
  const at = head.start + textOf(lines, first).indexOf(token.markup) + token.markup.length;
  const tell = (range: Range, message: string, fix: Problem["fixes"][number]) => {
    problems.add("not-an-activity", range, open ? message + endless : message, open ? both(fix, open.fix) : fix);
    return open?.extent.below === undefined ? {} : { below: open.extent.below };
  };
  if (kind !== undefined && !isMade) {
    const range = { start: at, end: head.end };
    const message = `This block is no activity: that has the name “activity” alone, and “make: ${kind}” in a line below.`;
    return tell(range, message, write("Write it so", range, `activity${lines.newline}make: ${kind.toLowerCase()}`));
  }
  if (!word.test(name) || !isMade) return undefined;
  const { end } = lines.line(first + 1);
  return tell(
    lines.line(first + 1),
    "This block is no activity: the name “activity” stands right behind its three backticks.",
    write("Write it there", { start: at, end }, "activity"),
  );
}
