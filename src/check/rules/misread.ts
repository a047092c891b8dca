import activitySchema from "../../../schemas/activity.schema.json";
import frontSchema from "../../../schemas/front-matter.schema.json";
import type { Fix, Report } from "../../base/finding";
import type { Range } from "../../base/range";
import type { Entry } from "../../unit/unit";
import { quoted } from "./quoted-name";

type Facts = Readonly<Record<string, unknown>>;

function factsOf(value: unknown): Facts {
  return typeof value === "object" && value !== null ? { ...value } : {};
}

/** A property of a schema; where it refers to one of the common schemas, that one. */
export function resolved(property: unknown): Facts {
  const facts = factsOf(property);
  const [, file, name = ""] = /^([\w-]+)\.schema\.json#\/properties\/(\w+)$/.exec(String(facts["$ref"] ?? "")) ?? [];
  if (!file) return facts;
  const properties: Facts = file === "activity" ? activitySchema.properties : frontSchema.properties;
  return resolved(properties[name]);
}

/** The forms that a property may have. */
function formsOf(property: Facts): Facts[] {
  const any = property["anyOf"];
  return Array.isArray(any) ? any.map(factsOf) : [property];
}

/** Texts that YAML takes for something else: `12`, `true`, `null`, `a: b`, `{a}`. Each with a fix that quotes it alone. */
export function misreadTexts(entry: Entry, property: Facts, text: string): Report[] {
  const { value } = entry;
  const forms = formsOf(property);
  if (Array.isArray(value)) {
    const list = forms.find(({ type }) => type === "array");
    if (!list) return [];
    return value.flatMap((each, i) => misread(each, entry.items[i], factsOf(list["items"]), text));
  }
  const inner = factsOf(property["additionalProperties"]);
  if (property["type"] === "object" && typeof value === "object" && value !== null) {
    return Object.entries(value).flatMap(([name, each]) =>
      formsOf(inner).flatMap((form) => misread(each, placeIn(entry.valueRange, name, text), form, text)),
    );
  }
  return forms.flatMap((form) => misread(value, entry.valueRange, form, text));
}

/** The place of a name's value in a mapping, where it stands on one line with its name. */
function placeIn({ start, end }: Range, name: string, text: string): Range | undefined {
  const line = /^[ \t]*([\w-]+):[ \t]+(\S.*?)[ \t]*$/gmu;
  for (const match of text.slice(start, end).matchAll(line)) {
    const at = start + match.index + match[0].lastIndexOf(match[2] ?? "");
    if (match[1] === name) return { start: at, end: at + (match[2] ?? "").length };
  }
  return undefined;
}

function misread(value: unknown, range: Range | undefined, form: Facts, text: string): Report[] {
  if (form["type"] !== "string" || typeof value === "string" || Array.isArray(value) || !range) return [];
  const written = text.slice(range.start, range.end);
  // Quotation marks mend nothing where the text would not be one that is possible.
  const pattern = form["pattern"];
  const possible = typeof pattern !== "string" || new RegExp(pattern, "u").test(written);
  if (written === "" || /[\r\n]/.test(written) || /^["']/.test(written) || !possible) return [];
  return [
    {
      range,
      message: `YAML reads ${written} as ${kindOf(value)}, not as a text. In quotation marks it stays as written.`,
      fixes: [
        { title: "Put it in quotation marks", edits: [{ range, text: JSON.stringify(written) }], preferred: true },
      ],
    },
  ];
}

function kindOf(value: unknown): string {
  if (typeof value === "number") return "a number";
  if (typeof value === "boolean") return "yes or no (true, false)";
  return value === null ? "nothing (null)" : "a name with a value (a mapping)";
}

/** A list without its brackets: `classes: 24, 27`. */
export function bareList(entry: Entry, property: Facts, text: string): Report[] {
  const { key, value, valueRange: range } = entry;
  const forms = formsOf(property);
  const list = forms.find(({ type }) => type === "array");
  const written = text.slice(range.start, range.end);
  if (!list || forms.some(({ type }) => type === "string") || !["string", "number"].includes(typeof value)) return [];
  // Where one value may be meant as well, only commas tell.
  if (written === "" || /["'[\]{}#:\r\n]/.test(written) || (forms.length > 1 && !written.includes(","))) return [];
  const items = factsOf(list["items"]);
  const parts = written.split(items["type"] === "integer" ? /[\s,;]+/ : /[,;]/).map((part) => part.trim());
  const choices = items["enum"];
  const fits = (part: string): boolean =>
    Array.isArray(choices)
      ? choices.includes(part)
      : items["type"] === "integer"
        ? /^\d+$/.test(part) &&
          Number(items["minimum"] ?? 0) <= Number(part) &&
          Number(part) <= Number(items["maximum"] ?? Number.POSITIVE_INFINITY)
        : part !== "";
  const distinct = list["uniqueItems"] !== true || new Set(parts).size === parts.length;
  const enough =
    Number(list["minItems"] ?? 0) <= parts.length &&
    parts.length <= Number(list["maxItems"] ?? Number.POSITIVE_INFINITY);
  if (!parts.every(fits) || !distinct || !enough) return [];
  const inside = parts.map((part) => (items["type"] === "string" ? quoted(part) : part)).join(", ");
  return [
    {
      range,
      message: `“${key}” is a list, and a list stands in brackets.`,
      fixes: [{ title: "Put it in brackets", edits: [{ range, text: `[${inside}]` }], preferred: true }],
    },
  ];
}

/** What may stand between numbers of a list, and words behind them, that change none. */
const spoken = /^\[?\s*["']?\d+["']?(?:\s+\p{L}+)?(?:\s*[,;&]?\s*["']?\d+["']?(?:\s+\p{L}+)?)*\s*[,;]?\s*\]?$/u;

/**
 * A list of whole numbers in other words: `26 children`, `[18; 22]`, `18 and 22`, `["26"]`, `{7a: 26, 7b: 24}`. Undefined where the
 * numbers are parts of words, of ranges or of fractions.
 */
export function spokenNumbers(entry: Entry, property: Facts, text: string): Fix | undefined {
  const list = formsOf(property).find(({ type }) => type === "array");
  const items = factsOf(list?.["items"]);
  const { value, valueRange: range } = entry;
  if (!list || items["type"] !== "integer" || value === null || value === "") return undefined;
  const written = text.slice(range.start, range.end);
  const named = typeof value === "object" && !Array.isArray(value) ? Object.values(value) : undefined;
  if (!named && /[#:{}\r\n]|\p{L}\.?\s+\p{L}|\d[\p{L}.]\d?|\p{L}\d|\d\s*[-–—]\s*\d|[-–—]\s*\d/u.test(written))
    return undefined;
  const numbers = named ?? (written.match(/\d+/g) ?? []).map(Number);
  const [low, high] = [Number(items["minimum"] ?? 0), Number(items["maximum"] ?? Number.POSITIVE_INFINITY)];
  const fits = (each: unknown): boolean => Number.isInteger(each) && low <= Number(each) && Number(each) <= high;
  const most = Number(list["maxItems"] ?? Number.POSITIVE_INFINITY);
  if (numbers.length === 0 || numbers.length > most || !numbers.every(fits)) return undefined;
  const wanted = `[${numbers.join(", ")}]`;
  if (wanted === written) return undefined;
  const fix = { title: `Write “${wanted}”`, edits: [{ range, text: wanted }] };
  return spoken.test(written) ? { ...fix, preferred: true } : fix;
}
