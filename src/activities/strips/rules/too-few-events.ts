import type { Fix, Rule } from "../../../base/finding";
import type { Section } from "../../../unit/unit";
import { setOption } from "../../edits";
import { takingEnough } from "../../enough";
import { tieExample } from "../../form-statements";
import { otherSections } from "../../other-sections";
import { bulletsAsEvents } from "../../plain-bullets";
import { optionPlace, quotedList } from "../../report";
import { fewestEvents } from "../deal";
import type { StripsContext } from "./context";

export const tooFewEvents: Rule<StripsContext> = {
  code: "too-few-events",
  severity: "error",
  counts: true,
  title: "Too few events to put in order",
  why: "Strips need at least three events: two can be in order by chance. Events are numbered items, `1.` `2.` `3.`, with bullets under an event for what may come in any order. Forms of a table get into an event by a tie: `1. Eu [meço](#medir) a roda.` For events that the learners write, leave the section without any and ask for `blanks: 8`.",
  example: {
    wrong: "## The morning\n\n1. A Inês entra.\n2. Ela paga.\n\n```activity\nmake: strips\n```",
    right: "## The morning\n\n1. A Inês entra.\n2. Ela mede um sumo.\n3. Ela paga.\n\n```activity\nmake: strips\n```",
  },
  check: (context) => {
    const { dealt } = context;
    const { request, events, deals, options } = dealt;
    if (deals.length > 0) return [];
    const { block, unit } = request;
    const sections = options.desks === undefined ? request.sections : shortest(request.sections);
    const found = sections.reduce((sum, each) => sum + eventsIn(each), 0);
    // The choice alone is to blame where the sections have enough.
    const taken = options.take !== undefined && found >= fewestEvents;
    const fixes: Fix[] = [];
    const enough = () => takingEnough(context, { fewest: fewestEvents, most: found });
    const others = otherSections(request, (each) => each.events.length >= fewestEvents);
    if (!taken && events.length === 0) {
      for (const { name } of others.slice(0, 3)) {
        fixes.push({
          title: `Take the events of “${name}”`,
          edits: [setOption(block, unit.text, "from", JSON.stringify(name))],
        });
      }
    }
    const bullets = found === 0 ? bulletsAsEvents(unit, sections, fewestEvents) : undefined;
    if (bullets) fixes.unshift({ title: "Number the bullets", edits: bullets.edits });
    const names = quotedList(sections.map(({ name }) => name));
    const message = taken
      ? `Strips need at least ${fewestEvents} events; \`take\` leaves ${options.take} of ${found}.`
      : `Strips need at least ${fewestEvents} events (numbered items); ${names} has ${found === 0 ? "none" : found}${bullets ? `, but ${bullets.count} bullets, which have no order` : ""}.`;
    const form = found === 0 ? tieExample(sections) : undefined;
    const told =
      form === undefined ? "" : ` The forms of a table are no events: put one in an event, as in \`1. … ${form} …\`.`;
    return [
      {
        range: optionPlace(block, ...(taken ? ["take"] : ["from"])),
        message: message + told,
        fixes: taken ? enough : fixes,
      },
    ];
  },
};

function eventsIn({ events }: Section): number {
  return events.reduce((sum, { free }) => sum + 1 + free.length, 0);
}

/** Of sections whose stories lie on desks of their own, the one with the fewest events, or all where none has any. */
function shortest(sections: readonly Section[]): readonly Section[] {
  const told = sections.filter((each) => eventsIn(each) > 0).sort((a, b) => eventsIn(a) - eventsIn(b));
  return told.length > 0 ? told.slice(0, 1) : sections;
}
