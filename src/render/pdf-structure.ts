import { type PDFDocument, PDFHexString, PDFName, type PDFPage, type PDFRef, PDFString } from "pdf-lib";
import type { Sheet } from "../page/sheet";
import type { Marked, PageContent } from "./pdf-content";

/*
 * The structure tree: a document of sections, a page each, of paragraphs and figures in reading order.
 */

export interface WrittenPage {
  readonly sheet: Sheet;
  readonly page: PDFPage;
  readonly content: PageContent;
}

export function writeStructure(document: PDFDocument, pages: readonly WrittenPage[]): void {
  const { context, catalog } = document;
  const root = context.nextRef();
  const whole = context.nextRef();
  const sections: PDFRef[] = [];
  const parents: (number | PDFRef)[] = [];

  pages.forEach(({ sheet, page, content }, index) => {
    const section = context.nextRef();
    const elements = content.marked.map((marked, mcid) =>
      context.register(context.obj({ Type: "StructElem", P: section, Pg: page.ref, K: mcid, ...describe(marked) })),
    );
    context.assign(
      section,
      context.obj({
        Type: "StructElem",
        S: "Sect",
        P: whole,
        T: PDFHexString.fromText(sheet.label),
        Lang: PDFString.of(sheet.lang),
        K: elements,
      }),
    );
    sections.push(section);
    parents.push(index, context.register(context.obj(elements)));
    page.node.set(PDFName.of("StructParents"), context.obj(index));
    page.node.set(PDFName.of("Tabs"), PDFName.of("S"));
  });

  context.assign(whole, context.obj({ Type: "StructElem", S: "Document", P: root, K: sections }));
  context.assign(
    root,
    context.obj({
      Type: "StructTreeRoot",
      K: [whole],
      ParentTree: context.register(context.obj({ Nums: parents })),
      ParentTreeNextKey: pages.length,
    }),
  );
  catalog.set(PDFName.of("StructTreeRoot"), root);
  catalog.set(PDFName.of("MarkInfo"), context.obj({ Marked: true }));
}

function describe(marked: Marked): Record<string, string | PDFString | PDFHexString> {
  if (marked.type === "picture") return { S: "Figure", Alt: PDFHexString.fromText(marked.alt) };
  return marked.lang ? { S: "P", Lang: PDFString.of(marked.lang) } : { S: "P" };
}
