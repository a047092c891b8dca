import assert from "node:assert/strict";
import { readdirSync, readFileSync } from "node:fs";
import { kinds } from "../../src/activities/kinds";
import { planUnit } from "../../src/activities/plan";
import { planStations } from "../../src/activities/stations";
import { settingsBlock } from "../../src/editor/completion/spot";
import { describe as describeOption, optionAt, suggestAt } from "../../src/editor/completion/suggest";
import { settingsOffersAt } from "../../src/editor/language/codes";
import { offersAt } from "../../src/editor/language/complete";
import { readUnit } from "../../src/unit/read";
import snippets from "../../syntaxes/cutwork.snippets.json";
import grammar from "../../syntaxes/cutwork.tmLanguage.json";
import { snippetText } from "./snippets";

/*
 * Completion, hover and snippets against the schemas as they lie in their folder: a further kind, option or value that the
 * editor does not know fails here.
 */

type Schema = Readonly<Record<string, unknown>>;

const schemaOf = (name: string): Schema => JSON.parse(readFileSync(`schemas/${name}.schema.json`, "utf8"));
const propertiesOf = (name: string): Readonly<Record<string, Schema>> =>
  (schemaOf(name)["properties"] ?? {}) as Readonly<Record<string, Schema>>;

/** A property, or the one that it refers to. */
function followed(property: Schema): Schema {
  const [, file, name] = /^(.*)\.schema\.json#\/properties\/(.*)$/.exec(String(property["$ref"])) ?? [];
  return file !== undefined && name !== undefined ? followed(propertiesOf(file)[name] ?? {}) : property;
}

/** All values that a schema names, wherever in it. */
function valuesIn(schema: unknown): readonly string[] {
  if (Array.isArray(schema)) return schema.flatMap(valuesIn);
  if (typeof schema !== "object" || schema === null) return [];
  return Object.entries(schema).flatMap(([key, value]) => {
    if (key === "enum" && Array.isArray(value)) return value.map(String);
    if (key === "const") return [String(value)];
    if (key === "type" && value === "boolean") return ["true", "false"];
    return key === "examples" || key.startsWith("x-") ? [] : valuesIn(value);
  });
}

const others = ["activity", "front-matter", "settings", "stations"];
const named = readdirSync("schemas")
  .map((file) => file.replace(".schema.json", ""))
  .filter((name) => !others.includes(name))
  .sort();

/** A unit with a block of options, the cursor at its `‸`. */
interface Place {
  readonly name: string;
  readonly properties: Readonly<Record<string, Schema>>;
  around(body: string): string;
  /** It is YAML as a whole. */
  readonly whole?: true;
}

const fenced = (word: string, start: string) => (body: string) =>
  `## A\n\n- a = b\n\n\`\`\`${word}\n${start}${body}\n\`\`\`\n`;
const places: readonly Place[] = [
  ...named.map((name) => ({
    name,
    properties: { ...propertiesOf("activity"), ...propertiesOf(name) },
    around: fenced("activity", `make: ${name}\n`),
  })),
  { name: "stations", properties: propertiesOf("stations"), around: fenced("stations", "") },
  { name: "settings", properties: propertiesOf("settings"), around: (body) => `${body}\n`, whole: true },
  { name: "front matter", properties: propertiesOf("front-matter"), around: (body) => `---\n${body}\n---\n` },
];

function labelsAt(marked: string, whole = false): readonly string[] {
  const offset = marked.indexOf("‸");
  const text = marked.replace("‸", "");
  const block = whole ? settingsBlock(text) : undefined;
  const offers = whole ? settingsOffersAt(text, offset) : offersAt(text, offset, readUnit(text));
  return [
    ...suggestAt(text, offset, { sections: [] }, block).map(({ insert }) => insert),
    ...offers.map(({ label }) => label),
  ];
}

describe("what the schemas say", () => {
  it("is of the kinds that are registered", () => {
    assert.deepEqual(kinds.map(({ name }) => name as string).sort(), named);
    assert.deepEqual([...valuesIn(propertiesOf("activity")["make"])].sort(), named);
    const told = propertiesOf("activity")["make"]?.["x-enum-descriptions"];
    assert.equal(Array.isArray(told) ? told.length : 0, named.length, "each is described");
  });

  it("is coloured: the grammar knows the kinds", () => {
    const kind = /\((.*?)\)\(\?=/.exec(grammar.repository.kind.match.slice("^(make)".length))?.[1];
    assert.deepEqual(kind?.replace(/^.*\(/, "").split("|").sort(), named);
  });

  for (const { name, properties, around, whole } of places) {
    const options = Object.entries(properties).filter(([key]) => key !== "make");

    it(`${name}: every option is offered and explained`, () => {
      const offered = labelsAt(around("‸"), whole);
      for (const [key, property] of options) {
        assert.ok(offered.includes(`${key}: `), key);
        const text = around(`${key}: x`);
        const block = whole ? settingsBlock(text) : undefined;
        const found = optionAt(text, text.indexOf(`${key}: x`) + 1, block);
        const { description } = followed(property);
        assert.ok(typeof description === "string" && description.length > 10, key);
        assert.ok(found && describeOption(found.option).startsWith(description), key);
      }
    });

    it(`${name}: every value of an option is offered`, () => {
      for (const [key, property] of options) {
        const spots = [`${key}: ‸`, `${key}: [‸]`, `${key}:\n  - ‸`, `${key}:\n  unused-pairs: ‸`, `${key}:\n  ‸`];
        const offered = spots
          .flatMap((spot) => labelsAt(around(spot), whole))
          .flatMap((label) => label.split(/[[\]{}:,"\s]+/));
        const words = valuesIn(followed(property)).flatMap((value) => value.split(" "));
        for (const word of words) assert.ok(offered.includes(word), `${key}: ${word} among ${offered.join(" ")}`);
      }
    });
  }
});

describe("snippets of activities", () => {
  const bodies = Object.values(snippets).map(({ prefix, body }) => ({ prefix, text: snippetText(body) }));

  it("there is one for each kind, with options as they may be", () => {
    for (const { name, schema } of kinds) {
      const found = bodies.find(({ prefix }) => prefix === name);
      assert.ok(found, name);
      const unit = readUnit(`## A\n\n- a = b\n\n${found.text}\n`);
      const [block] = unit.activities;
      const [activity] = planUnit(unit).activities;
      assert.ok(block && activity, name);
      assert.equal(activity.kind?.name, name);
      assert.deepEqual(activity.faults, [], name);
      for (const { key } of block.options.entries.slice(1)) assert.ok(key in schema.properties, key);
      assert.ok(block.options.entries.length > 1, `${name} shows no option of its own`);
    }
  });

  it("the one for any activity lets choose among all kinds", () => {
    const choices = /\$\{1\|([^|]*)\|\}/.exec(snippets.Activity.body.join("\n"))?.[1]?.split(",") ?? [];
    assert.deepEqual([...choices].sort(), named);
  });

  it("the choices in them are values of the option", () => {
    for (const { name, schema } of kinds) {
      const body = Object.values(snippets)
        .find(({ prefix }) => prefix === name)
        ?.body.join("\n");
      for (const [, key = "", choices = ""] of body?.matchAll(/^([a-z]+): \$\{\d+\|([^|]*)\|\}/gm) ?? []) {
        const property = JSON.stringify(schema.properties[key]);
        for (const choice of choices.split(","))
          assert.ok(property.includes(`"${choice}"`) || property.includes(choice), `${key}: ${choice}`);
      }
    }
  });

  it("there is one for the front matter, and one for stations", () => {
    const front = bodies.find(({ prefix }) => prefix === "front");
    assert.ok(front);
    const unit = readUnit(`${front.text}\n## A\n\n- a = b\n`);
    assert.deepEqual(unit.problems, []);
    const plan = planUnit(unit);
    assert.deepEqual(plan.faults, []);
    assert.ok(plan.facts.title && plan.facts.classes.length > 0);
    const stations = bodies.find(({ prefix }) => prefix === "stations");
    assert.ok(stations);
    const with2 = readUnit(`## A\n\n- a = b\n\n\`\`\`activity\nmake: tiles\n\`\`\`\n\n${stations.text}\n`);
    const [planned] = planStations(with2, planUnit(with2));
    assert.ok(planned?.rotation);
    assert.deepEqual([planned.faults, planned.unknown], [[], []]);
  });
});
