import { Relation } from "../match/relation";
import type { Item, Section, Statement } from "../unit/unit";
import type { DealRequest } from "./contract";
import { withForms } from "./supply";

/** The same request without an item: pair, statement, event (with what is free under it) or member of a pile. */
export function withoutItem(request: DealRequest, item: Item): DealRequest {
  const others = <Each extends Item>(items: readonly Each[]): Each[] => items.filter((each) => each !== item);
  const sections = request.sections.map((section) => {
    const changed: Section = {
      ...section,
      pairs: others(section.pairs),
      statements: others(section.statements),
      events: others(section.events).map((event) => ({ ...event, free: others(event.free) })),
      // A heading with nothing under it names no pile.
      piles: section.piles.flatMap((pile) => {
        const members = pile.members.filter((member) => member.item !== item);
        return members.length > 0 || pile.members.length === 0 ? [{ ...pile, members }] : [];
      }),
    };
    return withForms(changed, section);
  });
  return { ...request, sections, relation: new Relation(request.relation.pairs.filter((pair) => pair !== item)) };
}

/** The same request with another statement in place of one. */
export function withItem(request: DealRequest, item: Statement, other: Statement): DealRequest {
  const sections = request.sections.map((section): Section => {
    const piles = section.piles.map((pile) => ({
      ...pile,
      members: pile.members.map((member) =>
        member.shape === "statement" && member.item === item ? { ...member, item: other } : member,
      ),
    }));
    const statements = section.statements.map((each) => (each === item ? other : each));
    return withForms({ ...section, statements, piles }, section);
  });
  return { ...request, sections };
}
