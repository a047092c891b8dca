import { Random, upTo } from "../base/seed";
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

/**
 * Chooses `take` items by the seed, spread evenly over the groups (sections) that they come from, and keeps the order in which
 * they stand. All of them where `take` is undefined or not smaller.
 */
export function takeSpread<Item>(groups: readonly (readonly Item[])[], take: number | undefined, seed: string): Item[] {
  const all = groups.flat();
  if (take === undefined || take >= all.length) return all;
  const random = new Random(`take/${seed}`);
  const queues = groups.map((group) => random.shuffle(group));
  const turns = random.shuffle(upTo(queues.length));
  const taken = new Set<Item>();
  for (let round = 0; taken.size < take; round++) {
    for (const turn of turns) {
      const item = queues[turn]?.[round];
      if (item !== undefined && taken.size < take) taken.add(item);
    }
  }
  return all.filter((item) => taken.has(item));
}
