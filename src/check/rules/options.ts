import activitySchema from "../../../schemas/activity.schema.json";
import frontSchema from "../../../schemas/front-matter.schema.json";
import { removeOption } from "../../activities/edits";
import { kinds } from "../../activities/kinds";
import type { OptionFault, OptionSchema } from "../../activities/options";
import type { PlannedActivity } from "../../activities/plan";
import type { Fix, Report, Rule } from "../../base/finding";
import type { CheckContext } from "../context";
import { nearest } from "../nearest";

export const noKind: Rule<CheckContext> = {
  code: "no-kind",
  severity: "error",
  title: "An activity that does not say what it makes",
  why: "Each `activity` block needs a line `make:` with the kind of activity.",
  example: { wrong: "```activity\ngrid: 3 x 3\n```", right: "```activity\nmake: tiles\ngrid: 3 x 3\n```" },
  check: ({ plan }) =>
    plan.activities
      .filter(({ block }) => !block.options.entries.some(({ key }) => key === "make"))
      .map(({ block }) => ({
        range: { start: block.fence.start, end: Math.max(block.fence.start + 3, block.body.start - 1) },
        message: "This activity does not say what to make. Add a line “make: …”.",
        fixes: kinds.map(({ name }) => ({
          title: `Make ${name}`,
          edits: [{ range: { start: block.body.start, end: block.body.start }, text: `make: ${name}\n` }],
        })),
      })),
};

export const wrongOption: Rule<CheckContext> = {
  code: "wrong-option",
  severity: "error",
  title: "An option that is unknown, or a value that it cannot have",
  why: "The option is left out as if it were not there, so the sheets are not what was asked for. Completion inside the block lists what is possible.",
  example: { wrong: "```activity\nmake: tiles\ngird: 3 x 3\n```", right: "```activity\nmake: tiles\ngrid: 3 x 3\n```" },
  check: ({ unit, plan }) => [
    ...plan.faults.map((fault) => explain(fault, frontSchema)),
    ...plan.activities.flatMap((activity) =>
      activity.faults.map((fault) => explain(fault, schemaOf(activity), { activity, text: unit.text })),
    ),
  ],
};

function schemaOf({ kind }: PlannedActivity): OptionSchema {
  return {
    properties: {
      ...activitySchema.properties,
      ...(kind?.schema.properties ?? {}),
      make: activitySchema.properties.make,
    },
  };
}

function explain(
  { entry, error }: OptionFault,
  schema: OptionSchema,
  where?: { readonly activity: PlannedActivity; readonly text: string },
): Report {
  if (error.keyword === "unevaluatedProperties" || error.keyword === "additionalProperties") {
    const near = nearest(entry.key, Object.keys(schema.properties), true).slice(0, 2);
    const remove = where && removeOption(where.activity.block, where.text, entry.key);
    return {
      range: entry.keyRange,
      message: `There is no option “${entry.key}” here.${near[0] ? ` Did you mean “${near[0]}”?` : ""}`,
      fixes: [
        ...near.map(
          (name, i): Fix => ({
            title: `Change to “${name}”`,
            edits: [{ range: entry.keyRange, text: name }],
            ...(i === 0 ? { preferred: true } : {}),
          }),
        ),
        ...(remove ? [{ title: `Take out “${entry.key}”`, edits: [remove] }] : []),
      ],
    };
  }
  const item = Number(error.instancePath.split("/")[2]);
  const inList = Array.isArray(entry.value) && Number.isInteger(item);
  const range = inList ? (entry.items[item] ?? entry.valueRange) : entry.valueRange;
  const written = inList && Array.isArray(entry.value) ? entry.value[item] : entry.value;
  const choices = valuesFor(schema.properties[entry.key], error);
  const near = typeof written === "string" ? nearest(written, choices) : choices;
  return {
    range: range.end > range.start ? range : entry.keyRange,
    message: `“${entry.key}” cannot be ${shown(written)}: ${need(error, choices)}.`,
    fixes: near.slice(0, 3).map((choice) => ({
      title: `Change to “${choice}”`,
      edits: [
        { range, text: range.end === range.start && range.start === entry.keyRange.end ? `: ${choice}` : choice },
      ],
    })),
  };
}

function shown(value: unknown): string {
  if (value === null || value === "") return "empty";
  return typeof value === "object" ? "this" : `“${String(value)}”`;
}

function need({ keyword, params }: OptionFault["error"], choices: readonly string[]): string {
  const limit = params["limit"];
  if (keyword === "minimum") return `the smallest value is ${String(limit)}`;
  if (keyword === "maximum") return `the largest value is ${String(limit)}`;
  if (keyword === "uniqueItems") return "it stands here twice";
  if (keyword === "minItems" || keyword === "minLength") return "it must not be empty";
  if (keyword === "maxLength" || keyword === "maxItems") return `at most ${String(limit)} are possible`;
  if (choices.length > 0)
    return `it can be ${choices.map((choice) => `“${choice}”`).join(", ")}${keyword === "pattern" ? " and the like" : ""}`;
  if (keyword === "type")
    return `it must be ${{ integer: "a whole number", number: "a number", string: "a text", array: "a list" }[String(params["type"])] ?? String(params["type"])}`;
  return "its form is not one that can be read";
}

/** Values to offer: an enumeration, a constant, or the schema's examples and default. */
function valuesFor(property: unknown, error: OptionFault["error"]): string[] {
  const allowed = error.params["allowedValues"];
  if (Array.isArray(allowed)) return allowed.map(String);
  if (typeof property !== "object" || property === null) return [];
  const values: unknown[] = [];
  if ("enum" in property && Array.isArray(property.enum)) values.push(...property.enum);
  else {
    if ("default" in property) values.push(property.default);
    if ("examples" in property && Array.isArray(property.examples)) values.push(...property.examples);
  }
  return [...new Set(values.map((value) => (Array.isArray(value) ? `[${value.join(", ")}]` : String(value))))];
}

export const unknownSection: Rule<CheckContext> = {
  code: "unknown-section",
  severity: "error",
  title: "A section that the unit does not have",
  why: "`from` names sections by the text of their level-two headings, without formatting, with capitals as written.",
  example: {
    wrong: "## Food\n\n- pão = bread\n\n```activity\nmake: tiles\nfrom: Foods\n```",
    right: "## Food\n\n- pão = bread\n\n```activity\nmake: tiles\nfrom: Food\n```",
  },
  check: ({ unit, plan }) =>
    plan.activities.flatMap(({ unknown }) =>
      unknown.map(({ name, range }) => {
        const near = nearest(
          name,
          unit.sections.map((section) => section.name),
        ).slice(0, 3);
        return {
          range,
          message: `No section is called “${name}”.${near[0] ? ` The nearest is “${near[0]}”.` : ""}`,
          fixes: near.map(
            (found, i): Fix => ({
              title: `Change to “${found}”`,
              edits: [{ range, text: quoted(found) }],
              ...(i === 0 ? { preferred: true } : {}),
            }),
          ),
        };
      }),
    ),
};

/** A YAML scalar for a section's name: bare where YAML reads it as this very text, else in quotation marks. */
export function quoted(name: string): string {
  const bare = /^[\p{L}(][^:#,[\]{}&*!|>'"%@`]*$/u.test(name) && !/^(true|false|null|~|yes|no|on|off)$/i.test(name);
  return bare ? name : JSON.stringify(name);
}

export const noSection: Rule<CheckContext> = {
  code: "no-section",
  severity: "error",
  title: "An activity above the first section",
  why: "Without `from`, an activity is about the section that it stands in. Above the first level-two heading there is none.",
  example: {
    wrong: "```activity\nmake: tiles\n```\n\n## Food",
    right: "```activity\nmake: tiles\nfrom: Food\n```\n\n## Food",
  },
  check: ({ unit, plan }) =>
    plan.activities
      .filter(({ sections, unknown, kind }) => kind && sections.length === 0 && unknown.length === 0)
      .map(({ block }) => ({
        range: { start: block.fence.start, end: Math.max(block.fence.start + 3, block.body.start - 1) },
        message: "This activity stands in no section. Say with “from” whose words it uses.",
        fixes: unit.sections.slice(0, 5).map(({ name }) => ({
          title: `Use “${name}”`,
          edits: [{ range: { start: block.body.end, end: block.body.end }, text: `from: ${quoted(name)}\n` }],
        })),
      })),
};
