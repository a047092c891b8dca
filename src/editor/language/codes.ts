import { lineStart } from "../../base/range";
import { allRules } from "../../check/rules";
import { severityValues } from "../completion/options";
import type { Offer } from "./complete";

/** All codes of findings, those that are near first. */
export function codeOffers(
  near: readonly string[],
  insert: (code: string) => string,
): readonly Omit<Offer, "start" | "end">[] {
  const sorted = [...allRules].sort((a, b) => Number(near.includes(b.code)) - Number(near.includes(a.code)));
  return sorted.map(({ code, title, why }) => ({
    label: code,
    kind: "code",
    insert: insert(code),
    detail: title,
    documentation: why,
    more: false,
  }));
}

/** What can stand at the offset under `severities:` in a `cutwork.yml`. */
export function settingsOffersAt(text: string, offset: number): readonly Offer[] {
  const start = lineStart(text, offset);
  const after = /^[^\r\n]*/.exec(text.slice(offset))?.[0] ?? "";
  return severityOffers(text, start, text.slice(start, offset), after, offset, (key) => key === "severities") ?? [];
}

/** Under `severities:` in the front matter, under `allow:` in an activity; on lines of their own or in braces. */
export function severityOffers(
  text: string,
  lineStart: number,
  before: string,
  after: string,
  offset: number,
  counts: (key: string) => boolean = (key) => inYaml(text, lineStart, key),
): readonly Offer[] | undefined {
  const flow = /^(severities|allow)[ \t]*:[ \t]*\{(.*)$/.exec(before);
  const key = flow?.[1] ?? (/^[ \t]+/.test(before) ? keyAbove(text, lineStart) : undefined);
  if (key === undefined || !counts(key)) return undefined;
  const inner = flow ? (flow[2]?.split(",").at(-1) ?? "").trimStart() : before.trimStart();
  const rest = /^[a-z-]*/.exec(after)?.[0] ?? "";
  const value = /^[a-z-]+[ \t]*:[ \t]+([a-z]*)$/.exec(inner);
  if (value) {
    if (key === "allow") return [];
    return severityValues.map(({ text: label, description }) => ({
      label,
      kind: "value",
      insert: label,
      detail: description,
      documentation: "",
      start: offset - (value[1] ?? "").length,
      end: offset + rest.length,
      more: false,
    }));
  }
  if (!/^[a-z-]*$/.test(inner)) return [];
  const colon = /^\s*:/.test(after.slice(rest.length));
  const written = flow?.[2] ?? "";
  const around = flow
    ? [written.slice(0, written.length - inner.length), `,${after.slice(rest.length)}`]
    : besides(text, lineStart);
  const taken = new Set(
    around.flatMap((each) => [...each.matchAll(/(?:^|,)[ \t]*([a-z-]+)[ \t]*:/g)].map(([, code]) => code)),
  );
  const free = codeOffers([], (code) => (colon ? code : `${code}: `)).filter(({ label }) => !taken.has(label));
  return free.map((offer) => ({
    ...offer,
    start: offset - inner.length,
    end: offset + rest.length,
    more: key === "severities" && !colon,
  }));
}

/** The other indented lines around one. */
function besides(text: string, lineStart: number): readonly string[] {
  const isIn = (line: string | undefined): line is string => /^[ \t]+\S/.test(line ?? "");
  const above = text.slice(0, lineStart).split(/\r?\n/).slice(0, -1).reverse();
  const below = text.slice(lineStart).split(/\r?\n/).slice(1);
  return [above, below].flatMap((lines) => {
    const end = lines.findIndex((line) => !isIn(line));
    return lines.slice(0, end < 0 ? undefined : end);
  });
}

/** The key of the mapping that an indented line belongs to. */
function keyAbove(text: string, lineStart: number): string | undefined {
  const above = text.slice(0, lineStart).split(/\r?\n/);
  above.pop();
  while (/^[ \t]+\S/.test(above.at(-1) ?? "")) above.pop();
  return /^(severities|allow)[ \t]*:[ \t]*$/.exec(above.at(-1) ?? "")?.[1];
}

/** `severities` counts in the front matter, `allow` in an activity. */
function inYaml(text: string, lineStart: number, key: string): boolean {
  const above = text.slice(0, lineStart).replace(/^\uFEFF/, "");
  if (key === "severities") return /^---[ \t]*\r?\n/.test(above) && !/\n(---|\.\.\.)[ \t]*\r?\n/.test(above);
  const fences = above.match(/^ {0,3}(?:`{3,}|~{3,}).*$/gmu) ?? [];
  return /activity/.test(fences.at(-1) ?? "");
}

/**
 * What the code or severity at an offset is, in Markdown, and its place; undefined where it is none. `offers` says what can stand at
 * an offset.
 */
export function wordExplained(
  text: string,
  offset: number,
  offers: (at: number) => readonly Offer[],
): { markdown: string; start: number; end: number } | undefined {
  const before = /[a-z-]*$/.exec(text.slice(lineStart(text, offset), offset))?.[0] ?? "";
  const after = /^[a-z-]*/.exec(text.slice(offset))?.[0] ?? "";
  const [start, end, word] = [offset - before.length, offset + after.length, before + after];
  if (word === "") return undefined;
  const found = offers(end).find(({ label, kind }) => label === word && (kind === "code" || kind === "value"));
  return found && { markdown: [`**${word}**: ${found.detail}`, found.documentation].join("\n\n").trim(), start, end };
}
