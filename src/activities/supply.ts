import { Random, upTo } from "../base/seed";
import { keysOf, type PairKeys } from "../match/relation";
import { originOf } from "../unit/section-memory";
import type { FormsTable, Pair, Phrase, Section } from "../unit/unit";

/** A pair that stands for a cell of a forms table. */
export interface FormPair extends Pair {
  readonly form: { readonly table: FormsTable; readonly row: number; readonly column: number };
}

export function isFormPair(pair: Pair): pair is FormPair {
  return "form" in pair;
}

/** Cells of a section's forms tables as pairs: “medir, nós” = “medimos”. Empty cells give none. */
export function formPairs(section: Section): FormPair[] {
  return section.tables.flatMap((table) =>
    table.forms.flatMap((forms, row) =>
      forms.flatMap((form, column): FormPair[] => {
        const verb = table.columns[column];
        const person = table.persons[row];
        if (!form || !verb || !person) return [];
        const range = form.range;
        const left = { range, answers: [{ ...prompt(verb, person), range, parts: [] }] as const };
        return [
          {
            range,
            block: range,
            ties: [],
            examples: [],
            orders: [],
            left,
            right: { range, answers: [form] },
            form: { table, row, column },
          },
        ];
      }),
    ),
  );
}

function prompt(verb: Phrase, person: Phrase): Pick<Phrase, "runs" | "text"> {
  return { runs: [...verb.runs, { text: ", " }, ...person.runs], text: `${verb.text}, ${person.text}` };
}

const supplied = new WeakMap<Section, readonly Pair[]>();

/** The pairs of a section: those that are written, then those of its forms tables. The same objects at each call. */
export function pairsOf(section: Section): readonly Pair[] {
  const known = supplied.get(section);
  if (known) return known;
  const pairs = [...section.pairs, ...formPairs(section)];
  supplied.set(section, pairs);
  return pairs;
}

const keyed = new WeakMap<Section, readonly PairKeys[]>();

/** The keys of a section's pairs, in the order of `pairsOf`. They are looked up once, wherever the section moves to. */
export function keysIn(section: Section): readonly PairKeys[] {
  const origin = originOf(section);
  const known = keyed.get(origin);
  if (known) return known;
  const keys = pairsOf(section).map(keysOf);
  keyed.set(origin, keys);
  return keys;
}

/** A changed section, whose forms stay the very pairs that they are: whoever compares pairs meets them in a changed relation too. */
export function withForms(section: Section, before: Section): Section {
  supplied.set(section, [...section.pairs, ...pairsOf(before).filter(isFormPair)]);
  return section;
}

/** How often earlier deals used each item; one that is not named, never. */
export type Uses<Item> = ReadonlyMap<Item, number>;

/**
 * All items in an order by the seed that takes one of each group (section) in turn; those that fewer deals used come before those
 * that more did.
 */
export function spread<Item>(groups: readonly (readonly Item[])[], random: Random, uses?: Uses<Item>): Item[] {
  const shuffled = random.shuffle(groups.map((group) => random.shuffle(group)));
  const used = (item: Item): number => uses?.get(item) ?? 0;
  const counts = [...new Set(shuffled.flat().map(used))].sort((a, b) => a - b);
  const order: Item[] = [];
  for (const count of counts) {
    const queues =
      counts.length === 1 ? shuffled : shuffled.map((queue) => queue.filter((item) => used(item) === count));
    const longest = Math.max(0, ...queues.map((queue) => queue.length));
    for (let round = 0; round < longest; round++)
      for (const queue of queues) if (round < queue.length) order.push(queue[round] as Item);
  }
  return order;
}

/**
 * Chooses `take` items by the seed, spread evenly over the groups (sections) that they come from, and keeps the order in which
 * they stand; those that fewer deals used come first. All of them where `take` is undefined or not smaller.
 */
export function takeSpread<Item>(
  groups: readonly (readonly Item[])[],
  take: number | undefined,
  seed: string,
  uses?: Uses<Item>,
): Item[] {
  const all = groups.flat();
  if (take === undefined || take >= all.length) return all;
  const taken = new Set(spread(groups, new Random(`take/${seed}`), uses).slice(0, take));
  return all.filter((item) => taken.has(item));
}

/**
 * A choice for each of several versions: the first as `takeSpread` makes it, each further one of items that the versions before
 * it used least. `choose` gets the seed of a version, which is the plain one for the first.
 */
export function chooseForVersions<Item>(
  versions: number,
  seed: number,
  choose: (seed: string, uses: Uses<Item>) => readonly Item[],
): (readonly Item[])[] {
  const uses = new Map<Item, number>();
  return upTo(versions).map((i) => {
    const chosen = choose(i === 0 ? String(seed) : `${seed}/${i + 1}`, uses);
    for (const item of chosen) uses.set(item, (uses.get(item) ?? 0) + 1);
    return chosen;
  });
}
