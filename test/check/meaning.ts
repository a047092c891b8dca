import { readUnit } from "../../src/unit/read";
import type { Unit } from "../../src/unit/unit";

/** What a unit says, without places: equal for two texts that mean the same. */
export function meaning(text: string): unknown {
  const unit: Unit = readUnit(text);
  const texts = (items: readonly { text: string }[]): string[] => items.map((item) => item.text);
  return {
    front: unit.front.entries.map(({ key, value }) => [key, value]),
    sections: unit.sections.map(({ name, pairs, statements, events, piles, tables }) => ({
      name,
      pairs: pairs.map(({ left, right, examples, orders, by, ties }) => ({
        left: left.answers.map(({ runs, picture, parts }) => [runs, picture?.path, texts(parts)]),
        right: right.answers.map(({ runs, picture }) => [runs, picture?.path]),
        examples: texts(examples),
        orders: orders.map(({ parts }) => parts),
        by: by?.code,
        ties: ties.map(({ text: said, column, person, section }) => [said, column, person, section]),
      })),
      statements: statements.map(({ truth, runs, correction, by, ties }) => [
        truth,
        runs,
        correction?.text,
        by?.code,
        ties.length,
      ]),
      events: events.map(({ runs, free, by }) => [runs, texts(free), by?.code]),
      piles: piles.map((pile) => [
        pile.name,
        pile.members.map(({ shape, item }) => [shape, "text" in item ? item.text : item.left.answers[0].text]),
      ]),
      tables: tables.map(({ columns, persons, forms }) => [
        texts(columns),
        texts(persons),
        forms.map((row) => row.map((form) => form?.text)),
      ]),
    })),
    activities: unit.activities.map(({ options, section }) => [
      options.entries.map(({ key, value }) => [key, value]),
      section,
    ]),
    silences: unit.silences.map(({ code, reason }) => [code, reason]),
  };
}

/** The items of a unit in short, for tests of what a fix makes of a trap. */
export function items(text: string): string[] {
  return readUnit(text).sections.flatMap(({ name, pairs, statements, events, piles, tables }) => [
    `## ${name}`,
    ...pairs.flatMap(({ left, right, by, examples }) => [
      `${left.answers[0].picture ? "picture " : ""}${left.answers[0].text} = ${right.answers[0].text}${by ? ` by ${by.code}` : ""}`,
      ...examples.map((example) => `  as in ${example.text}`),
    ]),
    ...statements.map(
      ({ truth, text: said, correction }) =>
        `${truth ? "true" : "false"}: ${said}${correction ? ` but ${correction.text}` : ""}`,
    ),
    ...events.flatMap((event, i) => [`${i + 1}: ${event.text}`, ...event.free.map((free) => `  any ${free.text}`)]),
    ...piles.map((pile) => `pile ${pile.name}`),
    ...tables.map(({ persons, columns }) => {
      const names = (heads: typeof persons): string => heads.map(({ text: said }) => said).join(", ");
      return `forms ${names(persons)} of ${names(columns)}`;
    }),
  ]);
}
