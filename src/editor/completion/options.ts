import activity from "../../../schemas/activity.schema.json";
import frontMatter from "../../../schemas/front-matter.schema.json";
import settings from "../../../schemas/settings.schema.json";
import stations from "../../../schemas/stations.schema.json";
import { kinds as registered } from "../../activities/kinds";
import type { OptionSchema } from "../../activities/options";

/*
 * What may be written in an activity block, a plan of stations, the front matter and a `cutwork.yml`, read from the schemas:
 * the one source for completion and hover.
 */

/** One value that can be offered, as YAML text. */
export interface OptionValue {
  readonly text: string;
  readonly description?: string;
}

export interface Option {
  readonly key: string;
  /** Markdown. */
  readonly description: string;
  /** YAML text. */
  readonly default?: string;
  /** Whole values: choices first, then examples. */
  readonly values: readonly OptionValue[];
  /** Values of a list's items, empty where no list is taken or its items are free. */
  readonly items: readonly OptionValue[];
  /** A list is one way to write it. */
  readonly list: boolean;
  /** Names that the unit gives are values: of its sections and those of other units, of piles, of activities. */
  readonly names?: NameKind;
}

export type NameKind = "sections" | "piles" | "activities";

/** The part of JSON Schema that says something about what to offer. */
interface Schema {
  readonly description?: string;
  readonly type?: string;
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly "x-enum-descriptions"?: readonly string[];
  readonly "x-example-descriptions"?: readonly string[];
  readonly "x-values"?: string;
  readonly default?: unknown;
  readonly examples?: readonly unknown[];
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly items?: Schema;
  readonly $ref?: string;
}

type Properties = Readonly<Record<string, Schema>>;

const common: Properties = activity.properties;
const front: Properties = frontMatter.properties;
const kinds = new Map<string, Properties>(registered.map(({ name, schema }) => [name, propertiesOf(schema)]));

function propertiesOf(schema: OptionSchema): Properties {
  return Object.fromEntries(Object.entries(schema.properties).filter(isProperty));
}

function isProperty(entry: [string, unknown]): entry is [string, Schema] {
  return typeof entry[1] === "object" && entry[1] !== null;
}

/** Options of an activity block; those of every kind where `make` is missing or unknown. */
export function activityOptions(make: string | undefined): readonly Option[] {
  const own = make === undefined ? undefined : kinds.get(make);
  if (!own) return optionsOf(Object.assign({}, ...kinds.values(), common));
  // A kind may say of a common option what it means there; `make` is described once for all kinds.
  const said = Object.entries(own).filter(([key, { $ref }]) => key !== "make" && $ref === undefined);
  return optionsOf({ ...own, ...common, ...Object.fromEntries(said) });
}

const severities = frontMatter.properties.severities.additionalProperties;

/** How much a finding may matter. */
export const severityValues: readonly Required<OptionValue>[] = severities.enum.map((text, index) => ({
  text,
  description: severities["x-enum-descriptions"][index] ?? "",
}));

export function frontMatterOptions(): readonly Option[] {
  return optionsOf(front);
}

export function settingsOptions(): readonly Option[] {
  return optionsOf(settings.properties);
}

export function stationsOptions(): readonly Option[] {
  return optionsOf(stations.properties);
}

function optionsOf(properties: Properties): readonly Option[] {
  return Object.entries(properties).map(([key, written]) => {
    const schema = resolved(written);
    const branches = [schema, ...(schema.anyOf ?? []), ...(schema.oneOf ?? [])];
    const lists = branches.filter(({ type }) => type === "array");
    const names = branches.map((branch) => branch["x-values"] ?? branch.items?.["x-values"]).find(isNameKind);
    const option = {
      key,
      description: schema.description ?? "",
      values: once([...branches.flatMap(choices), ...described(schema.examples, schema["x-example-descriptions"])]),
      items: once(lists.flatMap(({ items }) => (items ? choices(items) : []))),
      list: lists.length > 0,
      ...(names === undefined ? {} : { names }),
    };
    return schema.default === undefined ? option : { ...option, default: yaml(schema.default) };
  });
}

function isNameKind(value: unknown): value is NameKind {
  return value === "sections" || value === "piles" || value === "activities";
}

/** Follows `FILE.schema.json#/properties/NAME`, the only kind of reference between properties. */
function resolved(schema: Schema): Schema {
  const [, file, name = ""] = schema.$ref?.match(/^(.+)\.schema\.json#\/properties\/([^/]+)$/) ?? [];
  const target = file === "activity" ? common[name] : file === "front-matter" ? front[name] : undefined;
  return target ? resolved(target) : schema;
}

function choices(schema: Schema): readonly OptionValue[] {
  if (schema.const !== undefined) return described([schema.const], schema.description ? [schema.description] : []);
  if (schema.type === "boolean") return [{ text: "true" }, { text: "false" }];
  return described(schema.enum, schema["x-enum-descriptions"]);
}

function described(values: readonly unknown[] = [], descriptions: readonly string[] = []): readonly OptionValue[] {
  return values.map((value, index) => {
    const description = descriptions[index];
    return description === undefined ? { text: yaml(value) } : { text: yaml(value), description };
  });
}

function once(values: readonly OptionValue[]): readonly OptionValue[] {
  const first = new Map<string, OptionValue>();
  for (const value of values) if (!first.has(value.text)) first.set(value.text, value);
  return [...first.values()];
}

/** A value as YAML on one line. */
export function yaml(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(yamlIn).join(", ")}]`;
  if (typeof value === "string") return yamlText(value, false);
  if (typeof value === "object" && value !== null) {
    const entries = Object.entries(value).map(([key, inner]) => `${yamlText(key, true)}: ${yamlIn(inner)}`);
    return `{ ${entries.join(", ")} }`;
  }
  return JSON.stringify(value);
}

/** A value inside brackets or braces. */
function yamlIn(value: unknown): string {
  return typeof value === "string" ? yamlText(value, true) : yaml(value);
}

/** A text as YAML reads it back as that text: bare where possible, else in double quotes. `flow`: inside `[...]`. */
export function yamlText(text: string, flow: boolean): string {
  const misread =
    text === "" ||
    text !== text.trim() ||
    /^[-?:,[\]{}#&*!|>'"%@`=]/.test(text) ||
    /:(\s|$)|\s#|\p{Cc}/u.test(text) ||
    /^(~|null|true|false|yes|no|on|off|y|n)$/i.test(text) ||
    (/^[-+.]?\d/.test(text) && !/\p{L}/u.test(text)) ||
    /^[-+]?(0[xob][\da-f_]+|[\d.]+e[-+]?\d+|\.(inf|nan))$/i.test(text) ||
    (flow && /[,[\]{}]/.test(text));
  return misread ? JSON.stringify(text) : text;
}
