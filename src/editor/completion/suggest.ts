import type { Section } from "../../unit/unit";
import {
  activityOptions,
  frontMatterOptions,
  type Option,
  type OptionValue,
  settingsOptions,
  stationsOptions,
  yamlText,
} from "./options";
import { blockAt, listValue, otherKeys, plainValue, spotAt, type ValueSpot, type YamlBlock } from "./spot";

/** One thing to offer at a place. Offsets are UTF-16 units of the unit's text. */
export interface Suggestion {
  readonly label: string;
  readonly kind: "option" | "value" | "section" | "unit" | "pile" | "activity";
  readonly insert: string;
  /** What it is, in a few words; may be empty. */
  readonly detail: string;
  /** Markdown. */
  readonly documentation: string;
  readonly start: number;
  readonly end: number;
  /** More can be offered once this is in. */
  readonly more: boolean;
}

/** The names that can be offered. They may come from a reading before the last keystroke. */
export interface Known {
  /** In order. */
  readonly sections: readonly Pick<Section, "name" | "range" | "piles">[];
  /** Titles of the unit's activities. */
  readonly activities?: readonly string[];
  /** Other units, by their path as `from` writes it, with their sections' names where they were looked up. */
  readonly units?: ReadonlyMap<string, readonly string[] | undefined>;
}

/** What can be written at the offset; empty in prose. */
export function suggestAt(
  text: string,
  offset: number,
  known: Known,
  block: YamlBlock | undefined = blockAt(text, offset),
): readonly Suggestion[] {
  const spot = block && spotAt(text, block, offset);
  if (!block || !spot) return [];
  const options = optionsIn(text, block);
  const place = { text, block, known };
  if (spot.at === "key") {
    const present = otherKeys(text, block, offset);
    return options
      .filter(({ key }) => !present.includes(key))
      .map((option) => ({
        label: option.key,
        kind: "option",
        insert: spot.colon ? option.key : `${option.key}: `,
        detail: "",
        documentation: describe(option),
        start: spot.start,
        end: spot.end,
        more: !spot.colon && valuesFor(option, undefined, place).length > 0,
      }));
  }
  const option = options.find(({ key }) => key === spot.key);
  if (!option) return [];
  return valuesFor(option, spot, place).map((offer) => ({
    label: offer.label,
    kind: offer.kind,
    insert: offer.text,
    detail: offer.detail ?? "",
    documentation: offer.description ?? "",
    start: spot.start,
    end: spot.end,
    more: offer.kind === "unit",
  }));
}

/** What is to be looked up of other units for the offset: their names, and the sections of the one at `path`. */
export function unitsAt(text: string, offset: number): { readonly path?: string } | undefined {
  const block = blockAt(text, offset);
  const spot = block && spotAt(text, block, offset);
  if (!block || spot?.at !== "value") return undefined;
  const option = optionsIn(text, block).find(({ key }) => key === spot.key);
  if (option?.names !== "sections") return undefined;
  const path = foreignPath(spot);
  return path === undefined ? {} : { path };
}

function foreignPath({ typed }: ValueSpot): string | undefined {
  return /^(.+\.unit\.md)\s*#/u.exec(typed)?.[1];
}

/** The option whose key stands at the offset. */
export function optionAt(
  text: string,
  offset: number,
  block: YamlBlock | undefined = blockAt(text, offset),
): { option: Option; start: number; end: number } | undefined {
  const spot = block && spotAt(text, block, offset);
  if (!block || spot?.at !== "key" || !spot.colon) return undefined;
  const key = text.slice(spot.start, spot.end);
  const option = optionsIn(text, block).find((each) => each.key === key);
  return option && { option, start: spot.start, end: spot.end };
}

/** What the option or the value at the offset is, in Markdown, and its place; undefined for a value that says itself what it is. */
export function explainAt(
  text: string,
  offset: number,
  block: YamlBlock | undefined = blockAt(text, offset),
): { markdown: string; start: number; end: number } | undefined {
  const found = optionAt(text, offset, block);
  if (found)
    return { markdown: `**${found.option.key}**\n\n${describe(found.option)}`, start: found.start, end: found.end };
  const spot = block && spotAt(text, block, offset);
  if (!block || spot?.at !== "value") return undefined;
  const { key, start, end } = spot;
  const written = text.slice(start, end).replace(/^(["'])(.*)\1$/, "$2");
  const option = optionsIn(text, block).find((each) => each.key === key);
  const value = [...(option?.values ?? []), ...(option?.items ?? [])].find((each) => each.text === written);
  if (!value?.description) return undefined;
  return { markdown: `**${key}: ${written}**\n\n${value.description}`, start, end };
}

/** An option in Markdown: what it does, its values, its default. */
export function describe(option: Option): string {
  const values = option.values.length > 0 ? option.values : option.items;
  const lines = values.map(({ text, description }) => `- \`${text}\`${description ? `: ${description}` : ""}`);
  return [option.description, lines.join("\n"), option.default === undefined ? "" : `Default: \`${option.default}\``]
    .filter(Boolean)
    .join("\n\n");
}

function optionsIn(text: string, block: YamlBlock): readonly Option[] {
  switch (block.kind) {
    case "front":
      return frontMatterOptions();
    case "stations":
      return stationsOptions();
    case "settings":
      return settingsOptions();
    case "activity":
      return activityOptions(plainValue(text, block, "make"));
  }
}

interface Offer extends OptionValue {
  readonly kind: "value" | "section" | "unit" | "pile" | "activity";
  readonly label: string;
  readonly detail?: string;
  /** The name that it stands for, as YAML reads it. */
  readonly name?: string;
}

interface Place {
  readonly text: string;
  readonly block: YamlBlock;
  readonly known: Known;
}

function valuesFor(option: Option, spot: ValueSpot | undefined, place: Place): readonly Offer[] {
  const item = spot?.item ?? false;
  const own = (item ? option.items : [...option.values, ...option.items.map(asList)]).map(
    (value): Offer => ({ ...value, kind: "value", label: value.text }),
  );
  const others = spot?.others ?? [];
  const offers = [...once(own), ...namesFor(option, spot, place)];
  return offers.filter(({ label, name }) => !others.includes(name ?? label));
}

function namesFor({ names }: Option, spot: ValueSpot | undefined, place: Place): readonly Offer[] {
  const { known } = place;
  const written = (name: string): string => {
    if (spot?.quote === '"') return JSON.stringify(name);
    return spot?.quote === "'" ? `'${name.replaceAll("'", "''")}'` : yamlText(name, spot?.flow ?? false);
  };
  const offer = (kind: Offer["kind"], name: string, label = name, detail = ""): Offer => ({
    kind,
    name,
    label,
    text: written(name),
    ...(detail === "" ? {} : { detail }),
  });
  switch (names) {
    case "sections": {
      const path = spot && foreignPath(spot);
      if (path !== undefined)
        return unique(known.units?.get(path) ?? []).map((name) => offer("section", `${path}#${name}`, name, path));
      const own = unique(known.sections.map(({ name }) => name)).map((name) => offer("section", name));
      return [...own, ...[...(known.units?.keys() ?? [])].map((unit) => unitOffer(unit, offer))];
    }
    case "piles":
    case "activities": {
      const kind = names === "piles" ? "pile" : "activity";
      const all = names === "piles" ? pilesFor(place) : unique(known.activities ?? []);
      if (spot?.item) return all.map((name) => offer(kind, name));
      const whole = `[${all.map((name) => yamlText(name, true)).join(", ")}]`;
      return all.length > 1 ? [{ kind, label: whole, text: whole }] : [];
    }
    default:
      return [];
  }
}

/** The path up to the number sign; the section comes next, so a quotation mark that is needed is not closed yet. */
function unitOffer(path: string, offer: (kind: "unit", name: string) => Offer): Offer {
  const open = offer("unit", `${path}#`);
  return { ...open, label: path, text: open.text.replace(/#(["'])$/, "#") };
}

/** Piles of the sections that the block takes; of all sections where it takes none that is known. */
function pilesFor({ text, block, known: { sections } }: Place): readonly string[] {
  const from = listValue(text, block, "from");
  const own = sections.findLast(({ range }) => range.start <= block.start);
  const named = from.length > 0 ? sections.filter(({ name }) => from.includes(name)) : own ? [own] : [];
  const piles = (named.length > 0 ? named : sections).flatMap((section) => section.piles);
  return unique(piles.map(({ name }) => name));
}

function unique(names: readonly string[]): readonly string[] {
  return [...new Set(names)];
}

/** An item where a whole value is wanted. */
function asList({ text, description }: OptionValue): OptionValue {
  return { text: `[${text}]`, ...(description === undefined ? {} : { description }) };
}

function once(offers: readonly Offer[]): readonly Offer[] {
  return offers.filter(({ label }, index) => offers.findIndex((other) => other.label === label) === index);
}
