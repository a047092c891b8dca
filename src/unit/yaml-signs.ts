import { keyed, type Line, type Mend } from "./yaml-mend";

/*
 * What YAML reads without a word, and otherwise than it was meant.
 */

/** Options that hold names or texts: only in these a number sign or an asterisk was surely meant as written. */
export const textOptions: ReadonlySet<string> = new Set([
  ...["from", "title", "decoys", "distractors", "names", "piles", "directions", "allow", "stations"],
]);

/** `---` and `...` end a YAML text, and everything below them is lost. */
export function separators(text: string, lines: readonly Line[]): Mend[] {
  return lines.flatMap(({ start, text: line }): Mend[] => {
    const sign = /^(?:---|\.\.\.)(?=[ \t]*$)/.exec(line)?.[0];
    const next = start + line.length + 1;
    if (!sign || text.slice(0, start).trim() === "" || text.slice(next).trim() === "") return [];
    return [
      {
        start,
        end: start + sign.length,
        message: `“${sign}” ends the options here, so that those below are not read.`,
        title: "Take the line out",
        edits: [{ start, end: next, text: "" }],
      },
    ];
  });
}

/** Names and texts that YAML cuts off at a number sign, or takes for a reference of its own. */
export function silentTraps(lines: readonly Line[]): Mend[] {
  let option = "";
  const base = lines.find(({ text }) => /^[ \t]*[^\s#]/.test(text))?.text.search(/\S/) ?? 0;
  const told = new Set<number>();
  return lines.flatMap(({ start, text }, i) => {
    const [, , key, value = ""] = keyed.exec(text) ?? [];
    if (key && text.search(/\S/) <= base) option = key;
    if (!textOptions.has(option) || value === "" || told.has(i)) return [];
    // What stands above a list is a comment.
    const list = /^[ \t]*-(?:[ \t]|$)/.test(lines[i + 1]?.text ?? "") && !/^[ \t]*-/.test(text);
    const heading = option === "from" && !list ? headingIn(value, start + text.lastIndexOf(value)) : undefined;
    if (heading) return [heading];
    const further = key ? goesOn(lines, i, value) : [];
    for (let n = 1; n <= further.length; n++) told.add(i + n);
    if (further.length > 0) return wrapped(start + text.lastIndexOf(value), value, further);
    return elementsOf(value).flatMap(({ at, written }): Mend[] => {
      const why = misreadSign(written);
      if (!why) return [];
      const from = start + text.lastIndexOf(value) + at;
      const end = from + written.length;
      return [
        {
          start: from,
          end,
          message: `${why} In quotation marks it stays as written.`,
          title: "Put it in quotation marks",
          edits: [{ start: from, end, text: JSON.stringify(written) }],
        },
      ];
    });
  });
}

/** `from: ## Roda`: the signs of its heading make a comment of a section's name. */
function headingIn(value: string, start: number): Mend | undefined {
  const name = /^#{2,6}[ \t]+(\S.*?)(?:[ \t]+#+)?$/u.exec(value)?.[1];
  if (name === undefined) return undefined;
  const end = start + value.length;
  const put = /^\p{L}[\p{L}\p{M}\p{N} -]*$/u.test(name) ? name : JSON.stringify(name);
  return {
    start,
    end,
    message: `YAML reads “${value}” as a comment: a section is named without the signs of its heading.`,
    title: `Write “${name}”`,
    edits: [{ start, end, text: put }],
  };
}

/** The lines below that belong to a bare value. */
function goesOn(lines: readonly Line[], at: number, value: string): Line[] {
  if (/^["'[{|>]/.test(value)) return [];
  const indent = lines[at]?.text.search(/\S/) ?? 0;
  const found: Line[] = [];
  for (const line of lines.slice(at + 1)) {
    const [, , key, rest = ""] = keyed.exec(line.text) ?? [];
    if (key || rest === "" || line.text.search(/\S/) <= indent || /^\s*-(?:\s|$)/.test(line.text)) break;
    found.push(line);
  }
  return found;
}

/** A bare value of several lines that YAML cuts off at a number sign in one of them. */
function wrapped(from: number, value: string, further: readonly Line[]): Mend[] {
  const parts = [value, ...further.map(({ text }) => text.trim())].map(withoutComment).filter((part) => part !== "");
  const last = further.at(-1);
  const why = parts.map(misreadSign).find((each) => each !== undefined);
  if (!why || !last) return [];
  const end = last.start + last.text.trimEnd().length;
  return [
    {
      start: from,
      end,
      message: `${why} In quotation marks it stays as written.`,
      title: "Put it in quotation marks",
      edits: [{ start: from, end, text: JSON.stringify(parts.join(" ")) }],
    },
  ];
}

function misreadSign(written: string): string | undefined {
  const cut = /(?:^|[ \t])(#.*)$/u.exec(written)?.[1];
  if (cut) return `YAML reads “${cut}” as a comment.`;
  const sign = /^(?:[*&]|!(?!!))/.exec(written)?.[0];
  if (!sign) return undefined;
  const what = sign === "*" ? "a reference (alias)" : sign === "&" ? "a mark to refer to (anchor)" : "a type (tag)";
  return `YAML reads “${written.split(/[ \t]/)[0]}” as ${what}.`;
}

/** Numbers that are hardly meant as YAML reads them: `0x1F`, `0o17`, `1e3`, and `1.000`, which is one. */
const otherNumber = /^[-+]?(?:0x[\da-f]+|0o[0-7]+|[\d.]+e[-+]?\d+|\d{1,3}\.000)$/i;

/** What YAML reads a number as, where that shows in other digits; with the fix that writes those that were meant. */
export function otherDigits(
  written: string,
  value: number,
): { readonly message: string; readonly put: string } | undefined {
  if (!otherNumber.test(written) || String(value) === written) return undefined;
  const put = /^\d+\.\d+$/.test(written) ? written.replace(".", "") : String(value);
  return { message: `YAML reads ${written} as ${value}.`, put };
}

/** A number sign that surely belongs to the name: a comment has a space behind it, or several before it. */
const ownSign = /(?:^|[^ \t])[ \t]#(?=[^\s#])|[ \t]#(?=\d)|^#(?=[^\s#])/u;

/** Bare values of a line: the elements of a list in brackets, else the value itself; comments left out. */
function elementsOf(value: string): { readonly at: number; readonly written: string }[] {
  const list = value.startsWith("[");
  const found: { at: number; written: string }[] = [];
  let at = list ? 1 : 0;
  const text = withoutComment(value);
  const stop = list && text.endsWith("]") ? text.length - 1 : text.length;
  while (at < stop) {
    while (/[ \t]/.test(text.charAt(at))) at++;
    const quote = /^(?:"(?:[^"\\]|\\.)*"|'(?:[^']|'')*')/.exec(text.slice(at))?.[0];
    const comma = list ? text.indexOf(",", at + (quote?.length ?? 0)) : -1;
    const end = comma < 0 ? stop : comma;
    const written = text.slice(at, end).trimEnd();
    if (written !== "" && !/^["'[{|>]/.test(written)) found.push({ at, written });
    at = end + 1;
  }
  return found;
}

function withoutComment(value: string): string {
  for (const match of value.matchAll(/(?:^|[ \t]+)#/gu)) {
    const space = value.slice(Math.max(0, match.index - 1));
    const own = ownSign.exec(space.slice(0, match[0].length + 2));
    const quotes = value.slice(0, match.index).replace(/\\"/g, "").split('"').length % 2 === 0;
    if (!own && !quotes) return value.slice(0, match.index).trimEnd();
  }
  return value;
}
