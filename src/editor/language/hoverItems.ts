import { contains, type Range } from "../../base/range";
import { fold } from "../../match/fold";
import { isForm } from "../../match/form";
import type { FormsTable, Item, Section, StoryEvent, Unit } from "../../unit/unit";
import { list, plain } from "./hover";
import { columnOf, tiesOf } from "./names/mentions";

/** What an item counts as, in Markdown, and its place. */
export interface Explained {
  readonly markdown: string;
  readonly start: number;
  readonly end: number;
}

/** The statement, event, card or form at an offset; undefined elsewhere. Of pairs more is to be said. */
export function itemExplained(unit: Unit, offset: number): Explained | undefined {
  const section = unit.sections.find(({ range }) => contains(range, offset));
  return (
    section &&
    (statementAt(section, offset) ??
      eventAt(section, offset) ??
      cardAt(section, offset) ??
      section.tables.map((table) => formAt(unit, section, table, offset)).find((found) => found !== undefined))
  );
}

function statementAt(section: Section, offset: number): Explained | undefined {
  for (const item of section.statements) {
    const { truth, correction, mark, range, text } = item;
    if (contains({ start: mark.start, end: range.end }, offset)) {
      const put = correction ? ` It is put right by “${plain(correction.text)}”.` : "";
      return explained(item, section, `**A statement that is ${truth ? "true" : "false"}.**${put}`, {
        start: mark.start,
        end: range.end,
      });
    }
    if (correction && contains(correction.range, offset))
      return { markdown: `**What is right** instead of “${plain(text)}”.`, ...correction.range };
  }
  return undefined;
}

function eventAt(section: Section, offset: number): Explained | undefined {
  const { events } = section;
  const index = events.findIndex(({ range, free }) =>
    [{ range }, ...free].some((each) => contains(each.range, offset)),
  );
  const event: StoryEvent | undefined = events[index];
  if (!event) return undefined;
  const bullet = event.free.find(({ range }) => contains(range, offset));
  const place = `event ${index + 1} of ${events.length}`;
  if (bullet) {
    const order = event.free.length > 1 ? `, in any order among the ${event.free.length} that stand there` : "";
    return explained(bullet, section, `**It follows ${place}**${order}.`, bullet.range);
  }
  const count = event.free.length;
  const after =
    count > 1 ? ` What stands under it follows it, in any order.` : count > 0 ? " One more follows it." : "";
  return explained(
    event,
    section,
    `**${place.replace(/^e/, "E")}** of the story, by its place in the list.${after}`,
    event.range,
  );
}

function cardAt(section: Section, offset: number): Explained | undefined {
  for (const { members } of section.piles)
    for (const { shape, item } of members)
      if (shape === "text" && contains(item.range, offset))
        return explained(item, section, "**A card.**", item.range, fold(item.text));
  return undefined;
}

function formAt(unit: Unit, { name }: Section, table: FormsTable, offset: number): Explained | undefined {
  for (const [row, forms] of table.forms.entries())
    for (const [column, form] of forms.entries()) {
      if (!form || !contains(form.range, offset)) continue;
      const [person, verb] = [table.persons[row]?.text ?? "", table.columns[column]?.text ?? ""];
      const tied = tiesOf(unit).filter((tie) => {
        const at = columnOf(unit, tie);
        const other = at && unit.sections[at.section]?.tables[at.table];
        return other === table && at?.column === column && (tie.person ?? person) === person && isForm(tie, form.text);
      });
      const words =
        tied.length === 0 ? "" : ` ${tied.length === 1 ? "One word is" : `${tied.length} words are`} tied to it.`;
      const markdown = `**${plain(form.text)}** is the form of “${plain(verb)}” for “${plain(person)}” in “${plain(name)}”.${words}`;
      return { markdown, start: form.range.start, end: form.range.end };
    }
  return undefined;
}

/** With the piles that it belongs to, a card with the `same` text to all under which that stands, and who wrote it. */
function explained(item: Item, { piles }: Section, what: string, { start, end }: Range, same?: string): Explained {
  const names = piles.flatMap(({ name, members }) =>
    members.some((each) =>
      each.shape === "text" && same !== undefined
        ? fold(each.item.text) === same
        : each.item.range.start === item.range.start,
    )
      ? [`“${plain(name)}”`]
      : [],
  );
  const on = names.length === 0 ? "" : ` Its pile${names.length > 1 ? "s are" : " is"} ${list(names)}.`;
  const by = item.by ? ` Written by ${plain(item.by.code)}.` : "";
  return { markdown: `${what}${on}${by}`, start, end };
}
