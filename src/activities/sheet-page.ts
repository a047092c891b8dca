import type { Run } from "../base/run";
import type { Duplex } from "../page/cards";
import type { DocumentPage } from "../page/document";
import { titleBeside } from "../page/furniture";
import { papers } from "../page/paper";
import type { Deal, DealRequest, Press } from "./contract";

/* What stands on the sheets of every activity outside of what is cut, in English; other languages join here. */

export const barLabel = "Print at 100 %: this bar is 100 mm long.";

export function folio(page: number, pages: number): string {
  return pages > 1 ? `sheet ${page + 1} of ${pages}` : "one sheet";
}

/** The folio of a sheet that is printed on both sides; the front says about which edge the printer must turn it. */
export function sideFolio(side: "front" | "back", flip: Duplex, page: number, pages: number): string {
  return side === "front"
    ? `${folio(page, pages)}, front: print both sides, turn on the ${flip} edge`
    : `${folio(page, pages)}, back`;
}

/** Level and version or desk, where there are several, and the deal code. */
export function stateOf({ options }: DealRequest, deal: Pick<Deal, "level" | "version" | "desk" | "code">): string[] {
  const { levels, versions } = options.value;
  const which = deal.desk === undefined ? `version ${deal.version}` : `desk ${deal.desk}`;
  return [
    ...((levels?.length ?? 1) > 1 ? [deal.level] : []),
    ...(versions > 1 || deal.desk !== undefined ? [which] : []),
    deal.code,
  ];
}

export function setLabel(copy: number | undefined): string {
  return copy === undefined ? "master for copying" : `set ${copy + 1}`;
}

/** `set 3`, or `sets 3–6` of copies that follow each other; a master has no numbers. */
export function setsLabel(copies: readonly (number | undefined)[]): string {
  const [first, last] = [copies[0], copies.at(-1)];
  return first === undefined || last === undefined || first === last
    ? setLabel(first)
    : `sets ${first + 1}–${last + 1}`;
}

/** The title line of an activity's sheet, beside what stands right of it. */
export function titleOf({ title, options }: DealRequest, press: Press, state: readonly Run[]): readonly Run[] {
  const { paper, margin } = options.value;
  const whole = [{ text: press.unitTitle, bold: true }, { text: ` · ${title}` }];
  return titleBeside(whole, state, { paper: papers[paper], margin }, press.typeface);
}

/** A page of an activity's papers. `name` says what paper it is. */
export function activityPage(request: DealRequest, press: Press, name: string, state: readonly string[]): DocumentPage {
  const { margin } = request.options.value;
  const paper = papers[request.options.value.paper];
  const line = [{ text: state.join(" · ") }];
  return {
    paper,
    margin,
    title: titleOf(request, press, line),
    state: line,
    barLabel,
    folio,
    label: [`${name}: ${request.title}`, ...state].join(", "),
    lang: request.explains,
  };
}
