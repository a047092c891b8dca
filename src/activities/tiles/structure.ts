import { Recent } from "../../base/recent";
import { fold } from "../../match/fold";
import type { Relation } from "../../match/relation";
import type { Pair } from "../../unit/unit";
import type { DealRequest } from "../contract";
import { looksLike, wordCount } from "../printed";
import { pairsOf } from "../supply";
import type { TilesOptions } from "./options";

/*
 * What an arrangement and its proof hang on: number and order of the pairs, which of their texts are the same to a learner,
 * which print alike, and of how many words they are; not how they are spelt. Two requests of one structure are dealt alike, so that mending a word asks
 * for no new search.
 */

/** Numbers for texts, in the order in which they are met. */
class Numbers {
  private readonly known = new Map<string, number>();

  of(text: string): number {
    const number = this.known.get(text) ?? this.known.size;
    this.known.set(text, number);
    return number;
  }
}

/** Numbers as a text, two units of UTF-16 for each: the same for the same numbers in the same order. */
class Sequence {
  private readonly units: number[] = [];

  add(number: number): void {
    this.units.push(number & 0xffff, number >>> 16);
  }

  get text(): string {
    return new TextDecoder("utf-16le").decode(Uint16Array.from(this.units));
  }
}

interface Structure {
  /** Stands for the structure of all pairs; the same number for the same structure. */
  readonly id: number;
  readonly keys: Numbers;
  readonly prints: Numbers;
  readonly indices: ReadonlyMap<Pair, number>;
}

const sides = ["left", "right"] as const;

const structures = new WeakMap<Relation, Structure>();
const ids = new Recent<number>(64);
let lastId = 0;

function structureOf(relation: Relation): Structure {
  const known = structures.get(relation);
  if (known) return known;
  const keys = new Numbers();
  const prints = new Numbers();
  const told = new Sequence();
  for (const [i, pair] of relation.pairs.entries()) {
    for (const side of sides) {
      const own = relation.keys[i]?.[side] ?? [];
      told.add(own.length);
      for (const key of own) told.add(keys.of(key));
      const [printed] = pair[side].answers;
      told.add(prints.of(looksLike(printed)));
      told.add(wordCount(printed));
    }
  }
  const id = ids.get(told.text, () => ++lastId);
  const structure = { id, keys, prints, indices: new Map(relation.pairs.map((pair, i) => [pair, i])) };
  structures.set(relation, structure);
  return structure;
}

/** A pair's place among those of a relation. */
export function indexOf(relation: Relation, pair: Pair): number | undefined {
  return structureOf(relation).indices.get(pair);
}

const keys = new WeakMap<DealRequest, { readonly options: TilesOptions; readonly key: string | undefined }>();

/** Equal for requests that are dealt alike; undefined where a section's pairs are not among those of the relation. */
export function structureKey(request: DealRequest, options: TilesOptions): string | undefined {
  const known = keys.get(request);
  if (known?.options === options) return known.key;
  const key = keyOf(request, options);
  keys.set(request, { options, key });
  return key;
}

function keyOf({ relation, sections }: DealRequest, options: TilesOptions): string | undefined {
  const { id, keys, prints, indices } = structureOf(relation);
  const places: string[] = [];
  for (const pairs of sections.map(pairsOf)) {
    const [first] = pairs;
    const start = first ? indices.get(first) : 0;
    if (start === undefined) return undefined;
    places.push(`${start}+${pairs.length}`);
  }
  const { decoys } = options;
  const named =
    typeof decoys === "object"
      ? decoys.map((text) => `${keys.of(fold(text))} ${prints.of(looksLike({ text }))}`)
      : String(decoys);
  return JSON.stringify([id, places, { ...options, decoys: named }]);
}
