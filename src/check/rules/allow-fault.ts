import type { Report } from "../../base/finding";
import type { Entry } from "../../unit/unit";

/** What is wrong with the option `allow`, as long as it is its shape: codes without their reasons, or otherwise than as a mapping. */
export function allowFaults({ key, value, valueRange: range }: Entry, text: string): readonly Report[] {
  if (key !== "allow" || value === null || value === "") return [];
  if (typeof value === "object" && !Array.isArray(value)) {
    const written = text.slice(range.start, range.end);
    return Object.entries(value).flatMap(([code, reason]): Report[] => {
      if (reason !== null && reason !== "") return [];
      const at = /[a-z-]+/.test(code) ? written.search(new RegExp(`(?<![\\w-])${code}(?=["']?[ \\t]*:)`)) : -1;
      const place = at < 0 ? range : { start: range.start + at, end: range.start + at + code.length };
      return [{ range: place, message: `“${code}” needs a reason here: why is it meant?` }];
    });
  }
  const said = saidIn(value);
  const form = "what is meant stands in “allow” with its reason, as in “allow: { CODE: reason }”.";
  if (!said) return [{ range, message: `A code alone does not do: ${form}` }];
  const put = said.map(([code, reason]) => `${code}: ${JSON.stringify(reason)}`).join(", ");
  return [
    {
      range,
      message: `This is no mapping: ${form}`,
      fixes: [{ title: `Write “{ ${put} }”`, edits: [{ range, text: `{ ${put} }` }], preferred: true }],
    },
  ];
}

/** Codes with their reasons, where each has one: in a text, or in a list of texts or mappings. */
function saidIn(value: unknown): readonly (readonly [code: string, reason: string])[] | undefined {
  const parts: readonly unknown[] = Array.isArray(value) ? value : [value];
  const said = parts.flatMap((part): (readonly [string, unknown])[] => {
    if (typeof part === "object" && part !== null) return Object.entries(part);
    const [, code = "", reason] = /^([a-z][a-z-]*)\s*:\s*(\S.*)$/u.exec(String(part).trim()) ?? [];
    return [[code, reason]];
  });
  const codes = said.flatMap(([code, reason]): (readonly [string, string])[] =>
    /^[a-z][a-z-]*$/.test(code) && typeof reason === "string" && reason.trim() !== "" ? [[code, reason]] : [],
  );
  const once = new Set(codes.map(([code]) => code)).size === codes.length;
  return codes.length === said.length && codes.length > 0 && once ? codes : undefined;
}
