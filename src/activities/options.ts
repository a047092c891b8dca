import type { SchemaError, Validator } from "../base/generated/validators";
import type { Range } from "../base/range";
import type { Entry, Mapping } from "../unit/unit";

/** Options of every activity, as the schema `activity.schema.json` describes them. */
export interface CommonOptions {
  readonly make: string;
  readonly from?: string | readonly string[];
  readonly title?: string;
  readonly seed: number;
  readonly levels?: readonly Level[];
  readonly versions: number;
  readonly copies?: number | "by copier" | Readonly<Record<string, number>>;
  readonly group: number;
  readonly paper: "A4" | "Letter";
  readonly margin: number;
  /** Items to use; as many as fit without it. */
  readonly take?: number;
  /** Blank pieces a set. */
  readonly blanks: number;
  readonly reuse: "once" | "sleeve" | "laminate";
  /** Who cuts the pieces. */
  readonly cutting: "teacher" | "learners";
  readonly minutes?: number;
  /** By BCP 47 tag: a text or steps. */
  readonly directions?: Readonly<Record<string, string | readonly string[]>>;
  readonly allow?: Readonly<Record<string, string>>;
}

export type Level = "gentle" | "hard";

/** The part of a JSON Schema that names options. */
export interface OptionSchema {
  readonly properties: Readonly<Record<string, unknown>>;
}

/** A value that the schema refuses, or a name that it does not know. */
export interface OptionFault {
  readonly entry: Entry;
  readonly error: SchemaError;
}

export interface ResolvedOptions<T> {
  readonly value: T;
  /** Where the activity sets options; a new line goes to the end of it. */
  readonly mapping: Mapping;
  /** The place of an option's value in the unit, where the unit sets it. */
  place(key: string): Range | undefined;
}

/** Checks one mapping against a schema: what holds, and what does not with its entry. A missing key is no entry's fault. */
export function sift(
  mapping: Mapping,
  validate: Validator,
): { good: readonly Entry[]; faults: readonly OptionFault[] } {
  const data = Object.fromEntries(mapping.entries.map((entry) => [entry.key, entry.value]));
  if (validate(data)) return { good: mapping.entries, faults: [] };
  const faults = new Map<Entry, SchemaError>();
  for (const error of validate.errors ?? []) {
    const key = topKey(error);
    const entry = mapping.entries.find((candidate) => candidate.key === key);
    if (!entry) continue;
    const known = faults.get(entry);
    // Of several errors about one value the one that names what is allowed says most.
    if (!known || rank(error) > rank(known)) faults.set(entry, error);
  }
  return {
    good: mapping.entries.filter((entry) => !faults.has(entry)),
    faults: [...faults].map(([entry, error]) => ({ entry, error })),
  };
}

function topKey({ instancePath, params }: SchemaError): string {
  if (instancePath !== "") return (instancePath.split("/")[1] ?? "").replace(/~1/g, "/").replace(/~0/g, "~");
  return String(params["unevaluatedProperty"] ?? params["additionalProperty"] ?? "");
}

function rank({ keyword }: SchemaError): number {
  if (keyword === "uniqueItems") return 3;
  return ["enum", "unevaluatedProperties", "pattern", "const"].includes(keyword) ? 2 : keyword === "anyOf" ? 0 : 1;
}

/** The values of several layers, the first that sets a key winning; `defaults` come last. */
export function resolve<T>(
  layers: readonly (readonly Entry[])[],
  defaults: Readonly<Record<string, unknown>>,
  mapping: Mapping,
  isComplete: (value: unknown) => value is T,
): ResolvedOptions<T> | undefined {
  const places = new Map<string, Range>();
  const value: Record<string, unknown> = { ...defaults };
  for (const layer of [...layers].reverse()) {
    for (const entry of layer) {
      value[entry.key] = entry.value;
      places.set(entry.key, entry.valueRange);
    }
  }
  return isComplete(value) ? { value, mapping, place: (key) => places.get(key) } : undefined;
}

/** The `default` of each property of a schema. */
export function defaultsOf(schema: {
  readonly properties?: Readonly<Record<string, unknown>>;
}): Record<string, unknown> {
  const out: Record<string, unknown> = {};
  for (const [key, property] of Object.entries(schema.properties ?? {})) {
    if (typeof property === "object" && property !== null && "default" in property) out[key] = property.default;
  }
  return out;
}
