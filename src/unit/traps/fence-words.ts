import type Token from "markdown-it/lib/token.mjs";
import activitySchema from "../../../schemas/activity.schema.json";
import type { LineIndex } from "../../base/range";
import { commentMeaning } from "../comments";
import { type Problems, write } from "../problems";
import { textOf } from "./lines";

const kinds: readonly string[] = activitySchema.properties.make.enum;
const option = /^[a-z][\w-]*[ \t]*[:：][ \t]*\S/u;

/**
 * What behind the name of an activity or a plan, in the line of its fence, was to be an option: nothing there is read. Whether there is
 * such a thing.
 */
export function fenceWords(lines: LineIndex, token: Token, problems: Problems): boolean {
  const [first] = token.map ?? [0];
  const head = /^(\s*[`~]+[ \t]*(?:activity|stations))([ \t]+)(\S.*?)[ \t]*$/u.exec(textOf(lines, first));
  const [, before = "", gap = "", words = ""] = head ?? [];
  const meant = head && meantBy(words, token, lines.newline);
  if (!meant) return false;
  const start = lines.start(first) + before.length;
  const end = start + gap.length + words.length;
  problems.add(
    "unreadable-yaml",
    { start: start + gap.length, end },
    "Behind the name nothing is read: each option stands on a line of its own, below.",
    write("Put it below", { start, end }, `${lines.newline}${meant}`),
  );
  return true;
}

/** The lines that were meant; none where others say the same already. */
function meantBy(words: string, { content, info }: Token, newline: string): string | undefined {
  const has = (key: string): boolean => new RegExp(`^${key}[ \\t]*[:：]`, "mu").test(content);
  const bare = /^\{[ \t]*([^.#{}][^{}]*?)[ \t]*\}$/u.exec(words)?.[1] ?? words;
  if (info.trim().startsWith("activity")) {
    const kind = bare.toLowerCase();
    if (kinds.includes(kind)) return has("make") ? undefined : `make: ${kind}`;
    const silence = commentMeaning(words);
    if (silence && "allow" in silence && silence.reason !== "")
      return has("allow") ? undefined : `allow: { ${silence.allow}: ${JSON.stringify(silence.reason)} }`;
  }
  const options = bare.split(/,[ \t]*(?=[a-z][\w-]*[ \t]*[:：])/u);
  const keys = options.map((each) => (option.test(each) ? (/^[\w-]+/.exec(each)?.[0] ?? "") : ""));
  return keys.every((key) => key !== "" && !has(key)) ? options.join(newline) : undefined;
}
