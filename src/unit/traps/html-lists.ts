import type Token from "markdown-it/lib/token.mjs";
import type { LineIndex } from "../../base/range";
import type { Env } from "../inline";
import type { Problems } from "../problems";
import { numerals } from "./doubtful-signs";
import { hasItems } from "./other-numbers";
import { isPairLine } from "./pair-lines";

/*
 * Lists written in HTML whose items were meant as such: `<li>a roda = the wheel</li>`, `<dt>a roda</dt><dd>the wheel</dd>`, `<td>a roda</td><td>the wheel</td>`.
 */

interface HtmlList {
  /** `ol` counts. */
  readonly name: string;
  readonly texts: readonly string[];
}

/** What tags inside an item are in Markdown. */
const marks: Readonly<Record<string, string>> = { b: "**", strong: "**", i: "*", em: "*", br: " " };

/** The head of a column is no item. */
const head = /<th\b[^<>]*>[^<>]*(?:<\/th\s*>)?/gi;

const tag = /^<(\/?)([a-z]+)\b[^<>]*>$/i;

/** The items of a block that is one list and nothing else. */
function listOf(content: string): HtmlList | undefined {
  let name: string | undefined;
  let open = false;
  let cells = 0;
  const texts: string[] = [];
  const add = (text: string): void => void texts.push(`${texts.pop() ?? ""}${text}`);
  for (const piece of content.replace(head, "").match(/<[^<>]*>|[^<>]+|[<>]/g) ?? []) {
    const [, slash = "", word = ""] = tag.exec(piece) ?? [];
    const element = word.toLowerCase();
    if (element === "") {
      if (open) add(piece);
      else if (piece.trim() !== "") return undefined;
    } else if (/^t(?:r|able|head|body)$/.test(element)) {
      name = "table";
      [open, cells] = [false, 0];
    } else if (element === "td") {
      open = slash === "";
      if (open) cells++;
      if (cells > 2) return undefined;
      if (open && cells === 1) texts.push("");
      else if (open) add(" = ");
    } else if (/^[uod]l$/.test(element)) {
      // One list in another one, or two.
      if (slash === "" && (name !== undefined || texts.length > 0)) return undefined;
      name ??= element;
      open = false;
    } else if (/^(?:li|d[td])$/.test(element)) {
      open = slash === "";
      if (open && element !== "dd") texts.push("");
      else if (open) {
        if (texts.length === 0) return undefined;
        add(" = ");
      }
    } else if (open && marks[element]) add(marks[element]);
    else return undefined;
  }
  return { name: name ?? "ul", texts: texts.map((text) => text.replace(/\s+/g, " ").trim()) };
}

/** Whether a block of HTML is such a list, which is told then. */
export function htmlList(lines: LineIndex, { map, content }: Token, env: Env, problems: Problems): boolean {
  if (!map || !/^\s*<(?:[uod]l|li|t(?:able|body|r))\b/i.test(content)) return false;
  const list = listOf(content);
  if (!list || list.texts.length < 2) return false;
  const { name, texts } = list;
  const isEach = (test: (text: string) => boolean): boolean => texts.every(test);
  // Cells of a plan have times, or minutes.
  const isPlan = (text: string): boolean => {
    const [left = "", right = ""] = text.split(" = ");
    return name === "table" && numerals(left) !== numerals(right);
  };
  const as = isEach((text) => isPairLine(text, env) && !isPlan(text))
    ? "pairs"
    : isEach((text) => /^\[[ xX]\] \S/.test(text))
      ? "statements"
      : name === "ol" && isEach((text) => /^[\p{L}\p{N}\p{P}]/u.test(text) && !/^[-+*>#[|=]|^\d+[.)]/.test(text))
        ? "events"
        : undefined;
  const [first, after] = map;
  // Beside events, what counts in another way is a note.
  if (as === undefined || (as === "events" && hasItems(lines, first))) return false;
  const { start, end } = lines.line(first);
  const at = start + lines.text.slice(start, end).search(/\S/);
  const opening = /^<[^<>]*>/.exec(lines.text.slice(at, end))?.[0] ?? "<";
  problems.tell(
    as === "statements" ? true : as,
    "not-an-item",
    { start: at, end: at + opening.length },
    `This ${name === "table" ? "table" : "list"} is HTML, so that nothing in it is read: an item begins with ${as === "events" ? "its number, a full stop" : "a hyphen"} and a space.`,
    {
      title: "Make items of it",
      edits: [
        {
          range: { start, end: lines.line(after - 1).end },
          text: texts.map((text, i) => `${as === "events" ? `${i + 1}.` : "-"} ${text}`).join(lines.newline),
        },
      ],
      // Steps of a lesson count too, and what is defined may be a note.
      ...(as === "events" || name === "dl" || name === "table" ? { unsure: true as const } : {}),
    },
  );
  return true;
}
