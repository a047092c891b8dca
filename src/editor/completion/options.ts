import activity from "../../../schemas/activity.schema.json";
import frontMatter from "../../../schemas/front-matter.schema.json";
import tiles from "../../../schemas/tiles.schema.json";

/*
 * What may be written in an activity block and in the front matter, read from the schemas: the one source for completion
 * and hover.
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
  /** Section names of the unit are values. */
  readonly sections: boolean;
}

/** The part of JSON Schema that says something about what to offer. */
interface Schema {
  readonly description?: string;
  readonly type?: string;
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly "x-enum-descriptions"?: readonly string[];
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
const kinds: Readonly<Record<string, Properties>> = { tiles: tiles.properties };

/** Options of an activity block; those of every kind where `make` is missing or unknown. */
export function activityOptions(make: string | undefined): readonly Option[] {
  const own = make === undefined ? undefined : kinds[make];
  const special = own ? [own] : Object.values(kinds);
  // `make` itself is described once for all kinds.
  return optionsOf(Object.assign({}, ...special, common));
}

export function frontMatterOptions(): readonly Option[] {
  return optionsOf(front);
}

function optionsOf(properties: Properties): readonly Option[] {
  return Object.entries(properties).map(([key, written]) => {
    const schema = resolved(written);
    const branches = [schema, ...(schema.anyOf ?? []), ...(schema.oneOf ?? [])];
    const lists = branches.filter(({ type }) => type === "array");
    const option = {
      key,
      description: schema.description ?? "",
      values: once([...branches.flatMap(choices), ...(schema.examples ?? []).map((value) => ({ text: yaml(value) }))]),
      items: once(lists.flatMap(({ items }) => (items ? choices(items) : []))),
      list: lists.length > 0,
      sections: schema["x-values"] === "sections",
    };
    return schema.default === undefined ? option : { ...option, default: yaml(schema.default) };
  });
}

/** Follows `activity.schema.json#/properties/NAME`, the only kind of reference between properties. */
function resolved(schema: Schema): Schema {
  const name = schema.$ref?.match(/#\/properties\/([^/]+)$/)?.[1];
  return (name === undefined ? undefined : common[name]) ?? schema;
}

function choices(schema: Schema): readonly OptionValue[] {
  if (schema.const !== undefined) return [{ text: yaml(schema.const) }];
  if (schema.type === "boolean") return [{ text: "true" }, { text: "false" }];
  return (schema.enum ?? []).map((value, index) => {
    const description = schema["x-enum-descriptions"]?.[index];
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
  if (Array.isArray(value))
    return `[${value.map((item) => (typeof item === "string" ? yamlText(item, true) : yaml(item))).join(", ")}]`;
  if (typeof value === "string") return yamlText(value, false);
  return JSON.stringify(value);
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
