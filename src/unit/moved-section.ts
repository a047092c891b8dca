import type { Steps } from "../base/steps";
import { movedAnswer, movedClaim, movedEvent, movedPhrase, movedPlain, movedRange, movedWhole } from "./moved";
import { saysTheSame } from "./section-memory";
import type {
  ActivityBlock,
  Item,
  Pair,
  Pile,
  PileMember,
  Problem,
  Section,
  Silence,
  Statement,
  StoryEvent,
} from "./unit";

/*
 * A section at another place, with what was read of it: nothing but ranges differs.
 */

/** Items between two pauses. */
const atOnce = 50;

/** The same section, `by` further down. An item of a pile stays the very item that it is among those of the section. */
export function* movingSection(section: Section, by: number): Steps<Section, undefined> {
  const pairs: Pair[] = [];
  const statements: Statement[] = [];
  const events: StoryEvent[] = [];
  for (const [i, pair] of section.pairs.entries()) {
    if (i % atOnce === atOnce - 1) yield;
    pairs.push(movedWhole(pair, by));
  }
  for (const [i, statement] of section.statements.entries()) {
    if (i % atOnce === atOnce - 1) yield;
    statements.push(movedClaim(statement, by));
  }
  for (const [i, event] of section.events.entries()) {
    if (i % atOnce === atOnce - 1) yield;
    events.push(movedEvent(event, by));
  }
  const own = { pairs, statements, events };
  const moved = {
    name: section.name,
    heading: movedRange(section.heading, by),
    range: movedRange(section.range, by),
    ...own,
    piles: section.piles.length === 0 ? [] : movedPiles(section, own, by),
    tables: section.tables.map(({ range, columns, persons, forms }) => ({
      range: movedRange(range, by),
      columns: columns.map((column) => movedPhrase(column, by)),
      persons: persons.map((person) => movedPhrase(person, by)),
      forms: forms.map((row) => row.map((form) => form && movedAnswer(form, by))),
    })),
    plain: section.plain.map(({ range, block, nested }) => ({
      ...movedPlace({ range, block }, by),
      nested: nested.map((each) => movedPlace(each, by)),
    })),
  };
  saysTheSame(moved, section);
  return moved;
}

const movedPlace = ({ range, block }: Pick<Item, "range" | "block">, by: number) => ({
  range: movedRange(range, by),
  block: movedRange(block, by),
});

function movedPiles(
  section: Section,
  { pairs, statements, events }: Pick<Section, "pairs" | "statements" | "events">,
  by: number,
): Pile[] {
  const places = new Map<object, number>();
  for (const list of [section.pairs, section.statements, section.events]) {
    for (const [i, item] of list.entries()) places.set(item, i);
  }
  const found = <Item extends object>(item: Item, moved: readonly Item[]): Item =>
    moved[places.get(item) ?? -1] ?? item;
  const member = (each: PileMember): PileMember => {
    if (each.shape === "pair") return { shape: "pair", item: found(each.item, pairs) };
    if (each.shape === "statement") return { shape: "statement", item: found(each.item, statements) };
    if (each.shape === "event") return { shape: "event", item: found(each.item, events) };
    return { shape: "text", item: movedPlain(each.item, by) };
  };
  return section.piles.map(({ name, heading, members }) => ({
    name,
    heading: movedRange(heading, by),
    members: members.map(member),
  }));
}

/** `sections`: by how many sections more stand above it. */
export function movedActivity(block: ActivityBlock, by: number, sections: number): ActivityBlock {
  const { options } = block;
  return {
    fence: movedRange(block.fence, by),
    body: movedRange(block.body, by),
    options: {
      ...options,
      range: movedRange(options.range, by),
      entries: options.entries.map((entry) => ({
        ...entry,
        keyRange: movedRange(entry.keyRange, by),
        valueRange: movedRange(entry.valueRange, by),
        items: entry.items.map((item) => movedRange(item, by)),
      })),
    },
    section: block.section + sections,
  };
}

export function movedProblem(problem: Problem, by: number): Problem {
  return {
    ...problem,
    range: movedRange(problem.range, by),
    fixes: problem.fixes.map((fix) => ({
      ...fix,
      edits: fix.edits.map(({ range, text }) => ({ range: movedRange(range, by), text })),
    })),
  };
}

export function movedSilence(silence: Silence, by: number): Silence {
  return { ...silence, range: movedRange(silence.range, by), scope: movedRange(silence.scope, by) };
}
