import type { Press } from "../../activities/contract";
import type { DocumentPage } from "../../page/document";
import { titleBeside } from "../../page/furniture";
import type { Paper } from "../../page/paper";

/** The page of a paper about the unit as a whole. `name` stands right above and in the label. */
export function unitPage(paper: Paper, margin: number, name: string, lang: string, press: Press): DocumentPage {
  return {
    paper,
    margin,
    title: titleBeside([{ text: press.unitTitle, bold: true }], [{ text: name }], { paper, margin }, press.typeface),
    state: [{ text: name }],
    barLabel: "Print at 100 %: this bar is 100 mm long.",
    folio: (page, pages) => (pages > 1 ? `page ${page + 1} of ${pages}` : "one page"),
    label: (page, pages) => `${press.unitTitle}, ${name}, ${page + 1} of ${pages}`,
    lang,
  };
}
