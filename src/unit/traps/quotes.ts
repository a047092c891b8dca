import type Token from "markdown-it/lib/token.mjs";
import type { LineIndex } from "../../base/range";
import type { Env } from "../inline";
import { type Problems, write } from "../problems";
import { pairsInQuotation } from "./boxed-lines";
import { isAbout } from "./corrections";
import { blankAround, textOf } from "./lines";
import { nextLine } from "./numbered-lines";

const sign = /^[ \t]{0,3}>(?:[ \t]{0,3}>)*[ \t]?/;
const item = /^\s*(?:[-*+]|\d{1,9}[.)])\s+\S/;
const shaped = /^\s*(?:\d{1,9}[.)]|[-*+]\s+\[[ xX]\])\s+\S|\s[=＝]\s/u;
const activity = /^\s*(?:`{3,}|~{3,})[ \t]*(?:activity|stations)[ \t]*$/;

/** Whether these are the lines of one activity that says what to make, or of a plan. */
function options([head = "", ...below]: readonly string[]): boolean {
  const fence = /^\s*(`{3,}|~{3,})/.exec(head)?.[1] ?? "";
  const closed = below.at(-1)?.trim().startsWith(fence) ? below.slice(0, -1) : below;
  const makes = head.includes("stations") || closed.some((text) => /^\s*make[ \t]*[:=：]/u.test(text));
  return makes && closed.every((text) => /^\s*(?:#|-[ \t]|[a-z][\w-]*[ \t]*[:=：])/u.test(text));
}

const falseStatement = /^([ \t]*[-*+][ \t]+)\[ \][ \t]+(\S.*)$/u;

/** A line of quotation below a false statement that is about the same. Whether there is one. */
function quotedCorrection(lines: LineIndex, first: number, problems: Problems): boolean {
  const above = nextLine(lines, first - 1, -1);
  const [, bullet = "", statement = ""] = falseStatement.exec(above === undefined ? "" : textOf(lines, above)) ?? [];
  const quoted = textOf(lines, first);
  const begin = sign.exec(quoted)?.[0].length ?? 0;
  if (statement === "" || !isAbout(statement, quoted.slice(begin))) return false;
  const { start, end } = lines.line(first);
  problems.trap(
    "lost-correction",
    { start, end },
    "This quotation is a note: the correction of the statement above it stands behind a bullet under that one.",
    write("Make it the correction", { start, end: start + begin }, `${bullet.replace(/\S/gu, " ")}- `),
  );
  return true;
}

/** Items, or an activity, behind signs of quotation: they are notes. So is a correction. */
export function quotedItems(lines: LineIndex, token: Token, env: Env, problems: Problems): void {
  const [first, after] = token.map ?? [0, 0];
  if (after === first + 1 && quotedCorrection(lines, first, problems)) return;
  const numbers = Array.from({ length: after - first }, (_, i) => first + i);
  const inside = numbers.map((number) => textOf(lines, number).replace(sign, "")).filter((text) => text.trim() !== "");
  const [head = ""] = inside;
  const block = activity.test(head);
  if (!block && !(inside.every((text) => item.test(text)) && inside.some((text) => shaped.test(text)))) {
    pairsInQuotation(lines, token, env, problems);
    return;
  }
  const edits = numbers.flatMap((number) => {
    const length = sign.exec(textOf(lines, number))?.[0].length ?? 0;
    const start = lines.start(number);
    return length > 0 ? [{ range: { start, end: start + length }, text: "" }] : [];
  });
  // Where the section's only activity is quoted, no activity uses that; a quotation that holds nothing else is hardly an example.
  const alone = block && inside.length > 2 && options(inside);
  problems.tell(
    alone ? undefined : true,
    "quoted-items",
    lines.line(first),
    `${block ? "This block stands" : "These items stand"} in a quotation, so that nothing of it is read.`,
    { title: "Take the signs out", edits: [...edits, ...blankAround(lines, first, after)] },
  );
}
