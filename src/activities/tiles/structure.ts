import { Recent } from "../../base/recent";
import { fold } from "../../match/fold";
import type { MatchKey, PairKeys, Relation } from "../../match/relation";
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

  get all(): readonly string[] {
    return [...this.known.keys()];
  }

  of(text: string): number {
    const number = this.known.get(text) ?? this.known.size;
    this.known.set(text, number);
    return number;
  }
}

/**
 * Numbers as a text, two units of UTF-16 for each: the same for the same numbers in the same order. 15 bits a unit, since a decoder
 * takes one surrogate alone for any other.
 */
class Sequence {
  private readonly units: number[] = [];

  add(number: number): void {
    this.units.push(number & 0x7fff, number >>> 15);
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
  /** The places of the pairs with which its groups begin. */
  readonly starts: ReadonlyMap<Pair, number>;
}

/** The pairs of one section, whatever stands in the others. */
interface Shape {
  /** Stands for their answers and words, with numbers of their own for the keys: the same number for the same ones. */
  readonly id: number;
  /** The keys, in the order in which they are met. */
  readonly keys: readonly MatchKey[];
  /** Printed texts that are not written as their keys are. */
  readonly prints: readonly string[];
}

const sides = ["left", "right"] as const;
const shapes = new WeakMap<readonly PairKeys[], Shape>();
const shapeIds = new Recent<number>(500);
const ids = new Recent<number>(64);
let lastId = 0;

function shapeOf(group: readonly PairKeys[], pairs: readonly Pair[]): Shape {
  const known = shapes.get(group);
  if (known) return known;
  const keys = new Numbers();
  const prints: string[] = [];
  const told = new Sequence();
  for (const [i, pair] of pairs.entries()) {
    for (const side of sides) {
      const own = group[i]?.[side] ?? [];
      told.add(own.length);
      for (const key of own) told.add(keys.of(key));
      const [printed] = pair[side].answers;
      const look = looksLike(printed);
      // What prints as its key says prints like another of the same key that does.
      if (look !== own[0]) prints.push(look);
      told.add(look === own[0] ? 0 : 1);
      told.add(wordCount(printed));
    }
  }
  const shape = { id: shapeIds.get(told.text, () => ++lastId), keys: keys.all, prints };
  shapes.set(group, shape);
  return shape;
}

const structures = new WeakMap<Relation, Structure>();

function structureOf(relation: Relation): Structure {
  const known = structures.get(relation);
  if (known) return known;
  const keys = new Numbers();
  const prints = new Numbers();
  const told = new Sequence();
  const starts = new Map<Pair, number>();
  let start = 0;
  for (const group of relation.groups) {
    const pairs = relation.pairs.slice(start, start + group.length);
    if (pairs[0]) starts.set(pairs[0], start);
    start += group.length;
    const shape = shapeOf(group, pairs);
    told.add(shape.id);
    for (const key of shape.keys) told.add(keys.of(key));
    for (const look of shape.prints) told.add(prints.of(look));
  }
  const structure = { id: ids.get(told.text, () => ++lastId), keys, prints, starts };
  structures.set(relation, structure);
  return structure;
}

const places = new WeakMap<Relation, ReadonlyMap<Pair, number>>();

/** A pair's place among those of a relation. */
export function indexOf(relation: Relation, pair: Pair): number | undefined {
  const known = places.get(relation) ?? new Map(relation.pairs.map((each, i) => [each, i]));
  places.set(relation, known);
  return known.get(pair);
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
  const { id, keys, prints, starts } = structureOf(relation);
  const spans: string[] = [];
  for (const pairs of sections.map(pairsOf)) {
    const [first] = pairs;
    const start = first ? (starts.get(first) ?? indexOf(relation, first)) : 0;
    if (start === undefined) return undefined;
    spans.push(`${start}+${pairs.length}`);
  }
  const { decoys } = options;
  const named =
    typeof decoys === "object"
      ? decoys.map((text) => [keys.of(fold(text)), text === fold(text) ? "" : prints.of(looksLike({ text }))].join(" "))
      : String(decoys);
  return JSON.stringify([id, spans, { ...options, decoys: named }]);
}
