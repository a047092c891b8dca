import { activityOptions, frontMatterOptions, type Option, type OptionValue, yamlText } from "./options";
import { blockAt, otherKeys, plainValue, spotAt, type ValueSpot, type YamlBlock } from "./spot";

/** One thing to offer at a place. Offsets are UTF-16 units of the unit's text. */
export interface Suggestion {
  readonly label: string;
  readonly kind: "option" | "value" | "section";
  readonly insert: string;
  /** Markdown. */
  readonly documentation: string;
  readonly start: number;
  readonly end: number;
  /** More can be offered once this is in. */
  readonly more: boolean;
}

/** What can be written at the offset; empty in prose. `sections` are the names of the unit's sections, in order. */
export function suggestAt(text: string, offset: number, sections: readonly string[]): readonly Suggestion[] {
  const block = blockAt(text, offset);
  const spot = block && spotAt(text, block, offset);
  if (!block || !spot) return [];
  const options = optionsIn(text, block);
  if (spot.at === "key") {
    const present = otherKeys(text, block, offset);
    return options
      .filter(({ key }) => !present.includes(key))
      .map((option) => ({
        label: option.key,
        kind: "option",
        insert: spot.colon ? option.key : `${option.key}: `,
        documentation: describe(option),
        start: spot.start,
        end: spot.end,
        more: !spot.colon && valuesFor(option, undefined, sections).length > 0,
      }));
  }
  const option = options.find(({ key }) => key === spot.key);
  if (!option) return [];
  return valuesFor(option, spot, sections).map(({ kind, label, text: insert, description }) => ({
    label,
    kind,
    insert,
    documentation: description ?? "",
    start: spot.start,
    end: spot.end,
    more: false,
  }));
}

/** The option whose key stands at the offset. */
export function optionAt(text: string, offset: number): { option: Option; start: number; end: number } | undefined {
  const block = blockAt(text, offset);
  const spot = block && spotAt(text, block, offset);
  if (!block || spot?.at !== "key" || !spot.colon) return undefined;
  const key = text.slice(spot.start, spot.end);
  const option = optionsIn(text, block).find((each) => each.key === key);
  return option && { option, start: spot.start, end: spot.end };
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
  return block.kind === "front" ? frontMatterOptions() : activityOptions(plainValue(text, block, "make"));
}

interface Offer extends OptionValue {
  readonly kind: "value" | "section";
  readonly label: string;
}

function valuesFor(option: Option, spot: ValueSpot | undefined, sections: readonly string[]): readonly Offer[] {
  const item = spot?.item ?? false;
  const own = (item ? option.items : [...option.values, ...option.items.map(asList)]).map(
    (value): Offer => ({ ...value, kind: "value", label: value.text }),
  );
  const names = option.sections
    ? [...new Set(sections)].map(
        (label): Offer => ({ kind: "section", label, text: yamlText(label, spot?.flow ?? false) }),
      )
    : [];
  const others = spot?.others ?? [];
  return [...once(own), ...names].filter(({ label }) => !others.includes(label));
}

/** An item where a whole value is wanted. */
function asList({ text, description }: OptionValue): OptionValue {
  return { text: `[${text}]`, ...(description === undefined ? {} : { description }) };
}

function once(offers: readonly Offer[]): readonly Offer[] {
  return offers.filter(({ label }, index) => offers.findIndex((other) => other.label === label) === index);
}
