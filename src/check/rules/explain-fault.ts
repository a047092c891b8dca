import { removeOption } from "../../activities/edits";
import type { OptionFault, OptionSchema } from "../../activities/options";
import type { PlannedActivity } from "../../activities/plan";
import type { Fix, Report } from "../../base/finding";
import type { Range } from "../../base/range";
import { nearest, surelyMeant } from "../nearest";
import { allowFaults } from "./allow-fault";
import { bareList, misreadTexts, resolved, spokenNumbers } from "./misread";

/** What is wrong with one option, with what it could be instead; each text of a list that YAML misreads by itself. */
export function explainFault(
  fault: OptionFault,
  schema: OptionSchema,
  text: string,
  activity?: PlannedActivity,
): readonly Report[] {
  const { entry, error } = fault;
  // Of a value that cannot be read that much is told already.
  if (entry.mended && error.instancePath !== "") return [];
  const silent = allowFaults(entry, text);
  if (silent.length > 0) return silent;
  const property = resolved(schema.properties[entry.key]);
  if (!["uniqueItems", "unevaluatedProperties"].includes(error.keyword)) {
    const found = [...misreadTexts(entry, property, text), ...bareList(entry, property, text)];
    if (found.length > 0) return found;
  }
  const report = explainValue(fault, schema, property, text, activity);
  if (error.keyword !== "type" || typeof report.fixes === "function") return [report];
  const numbers = spokenNumbers(entry, property, text);
  return [numbers ? { ...report, fixes: [numbers, ...(report.fixes ?? [])] } : report];
}

function explainValue(
  { entry, error }: OptionFault,
  schema: OptionSchema,
  property: Readonly<Record<string, unknown>>,
  text: string,
  activity?: PlannedActivity,
): Report {
  if (error.keyword === "unevaluatedProperties" || error.keyword === "additionalProperties") {
    const set = new Set(activity?.block.options.entries.map(({ key }) => key));
    const near = nearest(entry.key, Object.keys(schema.properties), true).slice(0, 2);
    const sure = surelyMeant(entry.key, Object.keys(schema.properties));
    const remove = activity && removeOption(activity.block, text, entry.key);
    return {
      range: entry.keyRange,
      message: `There is no option “${entry.key}” here.${near[0] ? ` Did you mean “${near[0]}”?` : ""}`,
      fixes: [
        // Set a second time it would say nothing.
        ...near
          .filter((name) => !set.has(name))
          .map(
            (name): Fix => ({
              title: `Change to “${name}”`,
              edits: [{ range: entry.keyRange, text: name }],
              ...(name === sure ? { preferred: true } : {}),
            }),
          ),
        ...(remove ? [{ title: `Take out “${entry.key}”`, edits: [remove] }] : []),
      ],
    };
  }
  const within = insideMapping(entry, error, text);
  const item = Number(error.instancePath.split("/")[2]);
  const inList = Array.isArray(entry.value) && Number.isInteger(item);
  const range = within?.range ?? (inList ? (entry.items[item] ?? entry.valueRange) : entry.valueRange);
  const written = within ? within.value : inList && Array.isArray(entry.value) ? entry.value[item] : entry.value;
  if (error.keyword === "uniqueItems" && Array.isArray(entry.value)) {
    // ajv names the two places; the later one goes.
    const later = Math.max(Number(error.params["i"] ?? 0), Number(error.params["j"] ?? 0));
    const before = entry.items[later - 1];
    const again = entry.items[later];
    if (before && again) {
      return {
        range: again,
        message: `“${String(entry.value[later])}” stands in “${entry.key}” twice.`,
        fixes: [
          {
            title: "Take the second out",
            edits: [{ range: { start: before.end, end: again.end }, text: "" }],
            preferred: true,
          },
        ],
      };
    }
  }
  const { choices, open } = valuesFor(property, error, written);
  const bare = typeof written === "string" ? written.replace(/^[“”„«»‘’]+|[“”„«»‘’]+$/gu, "") : undefined;
  const near = bare !== undefined && !open ? nearest(bare, choices) : choices;
  // “Tiles” is surely “tiles”: nothing else is offered.
  const same = near.filter((choice) => choice.toLowerCase() === bare?.trim().toLowerCase());
  const marks =
    bare === undefined || bare === written
      ? ""
      : " Its quotation marks are part of it: to YAML only ' and \" are such.";
  return {
    range: range.end > range.start ? range : entry.keyRange,
    message: `“${within?.key ?? entry.key}” cannot be ${shown(written)}: ${written === null ? "it needs a value" : need(error, choices, open)}.${marks}`,
    fixes: (error.keyword === "uniqueItems" ? [] : same.length > 0 ? same : near).slice(0, 3).map((choice) => ({
      title: `Change to “${choice}”`,
      edits: [
        { range, text: range.end === range.start && range.start === entry.keyRange.end ? `: ${choice}` : choice },
      ],
      ...(same.length > 0 ? { preferred: true } : {}),
    })),
  };
}

function shown(value: unknown): string {
  if (value === null || value === "") return "empty";
  return Array.isArray(value) ? "a list" : typeof value === "object" ? "a mapping" : `“${String(value)}”`;
}

/** The key and value inside of a mapping that an error is about, where it stands plainly in the text. */
function insideMapping(
  { value, valueRange }: OptionFault["entry"],
  { instancePath }: OptionFault["error"],
  text: string,
): { readonly key: string; readonly value: unknown; readonly range: Range } | undefined {
  const key = (instancePath.split("/")[2] ?? "").replace(/~1/g, "/").replace(/~0/g, "~");
  if (typeof value !== "object" || value === null || Array.isArray(value) || !(key in value)) return undefined;
  const own = (value as Readonly<Record<string, unknown>>)[key];
  const written = text.slice(valueRange.start, valueRange.end);
  const before = new RegExp(
    `(?:^|[\\s{,"'])${key.replace(/[\\^$.*+?()[\]{}|/]/g, "\\$&")}["']?\\s*:\\s*["']?`,
    "u",
  ).exec(written);
  if (!before || typeof own === "object") return undefined;
  const start = valueRange.start + before.index + before[0].length;
  const shownAs = String(own);
  return text.startsWith(shownAs, start)
    ? { key, value: own, range: { start, end: start + shownAs.length } }
    : undefined;
}

function need({ keyword, params }: OptionFault["error"], choices: readonly string[], open: boolean): string {
  const limit = params["limit"];
  if (keyword === "minimum") return `the smallest value is ${String(limit)}`;
  if (keyword === "maximum") return `the largest value is ${String(limit)}`;
  if (keyword === "uniqueItems") return "it stands here twice";
  if (keyword === "minItems" || keyword === "minLength") return "it must not be empty";
  if (keyword === "maxLength" || keyword === "maxItems") return `at most ${String(limit)} are possible`;
  const type = {
    integer: "a whole number",
    number: "a number",
    string: "a text",
    array: "a list",
    object: "a mapping",
  }[String(params["type"])];
  if (keyword === "type" && type && (open || choices.length === 0)) return `it must be ${type}`;
  if (choices.length > 0)
    return `it can be ${open ? "of the form " : ""}${choices.map((choice) => `“${choice}”`).join(", ")}`;
  return "its form is not one that can be read";
}

/** `1_000`, `1,000` and `1 000` without what parts their thousands. */
function ungrouped(written: string): string {
  return /^\d{1,3}([_,'’\s])\d{3}(?:\1\d{3})*$/u.test(written) ? written.replace(/\D/g, "") : written;
}

/**
 * What was written, in a form that is possible: `6*5`, `6 х 5` with a Cyrillic letter as `6 x 5`, like an example with as many
 * numbers; `pt_BR` as `pt-BR`; an example by what it stands for, as `Portuguese`.
 */
function reshaped(written: string, facts: Readonly<Record<string, unknown>>): string[] {
  const { pattern, examples, "x-example-descriptions": meanings } = facts;
  if (typeof pattern !== "string" || !Array.isArray(examples)) return [];
  const numbers = written.match(/\d+/g) ?? [];
  const form = examples.map(String).find((each) => numbers.length > 0 && each.match(/\d+/g)?.length === numbers.length);
  let next = 0;
  const counted = form?.replace(/\d+/g, () => numbers[next++] ?? "");
  const names = Array.isArray(meanings) ? meanings.map(String) : [];
  const named = names.indexOf(nearest(written, names, true)[0] ?? written);
  const hyphened = written.replace(/_/g, "-");
  const put = [counted, hyphened, named < 0 ? undefined : String(examples[named])];
  return put
    .filter((each) => each !== undefined && new RegExp(pattern, "u").test(each))
    .slice(0, 1)
    .map(String);
}

/**
 * Values to offer. An enumeration is all there is; of an open range a limit, the number in what was written, or the default is
 * offered, and a schema's examples only for texts: in place of a list or a number they would be somebody else's data.
 */
function valuesFor(
  facts: Readonly<Record<string, unknown>>,
  error: OptionFault["error"],
  written: unknown,
): { readonly choices: string[]; readonly open: boolean } {
  const allowed = error.params["allowedValues"];
  if (Array.isArray(allowed)) return { choices: allowed.map(String), open: false };
  if (Array.isArray(facts["enum"])) return { choices: facts["enum"].map(String), open: false };
  const limit = error.params["limit"];
  if (
    (error.keyword === "minimum" || error.keyword === "maximum") &&
    typeof limit === "number" &&
    error.instancePath.split("/").length === 2
  ) {
    return { choices: [String(limit)], open: true };
  }
  if (facts["type"] === "integer" || facts["type"] === "number") {
    const number = typeof written === "string" ? /\d+(?:\.\d+)?/.exec(ungrouped(written))?.[0] : undefined;
    const [low, high] = [
      Number(facts["minimum"] ?? Number.NEGATIVE_INFINITY),
      Number(facts["maximum"] ?? Number.POSITIVE_INFINITY),
    ];
    if (number !== undefined && Number(number) >= low && Number(number) <= high)
      return { choices: [number], open: true };
    return { choices: facts["default"] === undefined ? [] : [String(facts["default"])], open: true };
  }
  if (facts["type"] !== "string") return { choices: [], open: true };
  const examples = Array.isArray(facts["examples"]) ? facts["examples"] : [];
  const values = facts["default"] === undefined ? examples : [facts["default"], ...examples];
  const meant = typeof written === "string" ? reshaped(written, facts) : [];
  if (meant.length > 0) return { choices: meant, open: true };
  return { choices: [...new Set(values.map(String))], open: true };
}
