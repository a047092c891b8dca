import { kindNamed } from "../../../activities/kinds";
import { type Found, sectionsOf } from "./listed";
import type { Named, World } from "./named";

export type NamedPile = Named & { readonly what: "pile" };

const known = new WeakMap<World, ReadonlyMap<string, readonly NamedPile[]>>();

/**
 * All headings that name the same pile, the first of each section: headings of one name in a section, and in sections that one
 * activity sorts together. In a fixed order, empty where there is none.
 */
export function samePile(world: World, at: Found, name: string): readonly NamedPile[] {
  return classesOf(world).get(keyOf(at, name)) ?? [];
}

function keyOf({ file, section }: Found, name: string): string {
  return JSON.stringify([file, section, name]);
}

function classesOf(world: World): ReadonlyMap<string, readonly NamedPile[]> {
  const already = known.get(world);
  if (already) return already;
  const classes = new Map<string, readonly NamedPile[]>();
  for (const [file, { sections }] of world.units) {
    sections.forEach(({ piles }, section) => {
      piles.forEach(({ name }, pile) => {
        const key = keyOf({ file, section }, name);
        if (!classes.has(key)) classes.set(key, [{ what: "pile", file, section, pile }]);
      });
    });
  }
  for (const [file, { activities }] of world.units) {
    for (const block of activities) {
      if (block.options.entries.some(({ key, value }) => key === "make" && kindNamed(value)?.sortsPiles))
        unite(world, classes, sectionsOf(world, file, block));
    }
  }
  known.set(world, classes);
  return classes;
}

function unite(world: World, classes: Map<string, readonly NamedPile[]>, sections: readonly Found[]): void {
  const names = new Set(sections.flatMap((at) => pilesIn(world, at)));
  for (const name of names) {
    const members = sections.flatMap((at) => classes.get(keyOf(at, name)) ?? []);
    const whole = [...new Set(members)].sort(inOrder);
    for (const { file, section } of whole) classes.set(keyOf({ file, section }, name), whole);
  }
}

function pilesIn(world: World, { file, section }: Found): readonly string[] {
  return world.units.get(file)?.sections[section]?.piles.map(({ name }) => name) ?? [];
}

function inOrder(one: NamedPile, other: NamedPile): number {
  if (one.file !== other.file) return one.file < other.file ? -1 : 1;
  return one.section - other.section || one.pile - other.pile;
}
