import { Relation } from "../match/relation";
import type { Item, Section } from "../unit/unit";
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
      piles: section.piles.map((pile) => ({
        ...pile,
        members: pile.members.filter((member) => member.item !== item),
      })),
    };
    return withForms(changed, section);
  });
  return { ...request, sections, relation: new Relation(request.relation.pairs.filter((pair) => pair !== item)) };
}
