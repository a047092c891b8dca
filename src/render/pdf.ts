import { PDFDocument, PDFHexString, type PDFImage, PDFName, type PDFPage, PrintScaling } from "pdf-lib";
import { pictureSize } from "../base/picture";
import type { Sheet } from "../page/sheet";
import type { Typeface } from "../text/typeface";
import { Digest } from "./digest";
import { decimal, pointsPerMm } from "./measure";
import { type PageContent, type PlacedPicture, pageContent } from "./pdf-content";
import { embedFont, FontUse } from "./pdf-font";
import { writeStructure } from "./pdf-structure";

export interface PdfInfo {
  /** Shown in the reader's title bar. */
  readonly title: string;
  /** BCP 47, of the document as a whole. */
  readonly lang: string;
}

/**
 * Sheets as a PDF file, a page each, in true size: the file asks the reader's print dialogue not to scale. Text stays
 * text, in reading order. The same input gives the same bytes.
 *
 * Rejects with a RangeError where a sheet shows a picture that is not in `pictures` or is neither a PNG nor a JPEG, and
 * with pdf-lib's error where its data are damaged.
 */
export async function renderPdf(
  sheets: readonly Sheet[],
  typeface: Typeface,
  pictures: ReadonlyMap<string, Uint8Array>,
  info: PdfInfo,
): Promise<Uint8Array> {
  const document = await PDFDocument.create({ updateMetadata: false });
  const digest = new Digest().add(info.title).add(info.lang);
  const embedded = await embedPictures(document, sheets, pictures, digest);

  const fonts = new FontUse(typeface.faces);
  for (const sheet of sheets) {
    for (const item of sheet.items) if (item.type === "text") fonts.note(typeface.shape(item.runs));
  }

  const pages = sheets.map((sheet) => {
    const content = pageContent(sheet, typeface, fonts, embedded);
    const page = document.addPage([points(sheet.width), points(sheet.height)]);
    digest.add(`${sheet.width} ${sheet.height} ${sheet.label} ${sheet.lang}`).add(content.operators);
    return { sheet, page, content };
  });

  const { context } = document;
  const fontReferences = fonts.all().map((use) => ({ use, reference: embedFont(context, use, digest) }));
  for (const { page, content } of pages) {
    page.node.set(PDFName.of("Contents"), context.register(context.flateStream(content.operators)));
    for (const { use, reference } of fontReferences) page.node.setFontDictionary(PDFName.of(use.resource), reference);
    placePictures(page, content, embedded);
  }

  writeStructure(document, pages);
  describe(document, sheets, info);
  const id = PDFHexString.of(digest.hex().toUpperCase());
  context.trailerInfo.ID = context.obj([id, id]);
  return document.save({ useObjectStreams: true, addDefaultPage: false, updateFieldAppearances: false });
}

function points(mm: number): number {
  return Number(decimal(mm * pointsPerMm));
}

interface EmbeddedPicture extends PlacedPicture {
  readonly image: PDFImage;
}

async function embedPictures(
  document: PDFDocument,
  sheets: readonly Sheet[],
  pictures: ReadonlyMap<string, Uint8Array>,
  digest: Digest,
): Promise<ReadonlyMap<string, EmbeddedPicture>> {
  const embedded = new Map<string, EmbeddedPicture>();
  for (const item of sheets.flatMap((sheet) => sheet.items)) {
    if (item.type !== "picture" || embedded.has(item.key)) continue;
    const bytes = pictures.get(item.key);
    if (!bytes) throw new RangeError(`There is no picture "${item.key}".`);
    const size = pictureSize(bytes);
    if (!size) throw new RangeError(`The picture "${item.key}" is neither a PNG nor a JPEG.`);
    const image = size.type === "png" ? await document.embedPng(bytes) : await document.embedJpg(bytes);
    digest.add(bytes);
    embedded.set(item.key, { image, resource: `I${embedded.size + 1}`, orientation: size.orientation });
  }
  return embedded;
}

function placePictures(page: PDFPage, content: PageContent, embedded: ReadonlyMap<string, EmbeddedPicture>): void {
  for (const key of content.pictures) {
    const picture = embedded.get(key);
    if (picture) page.node.setXObject(PDFName.of(picture.resource), picture.image.ref);
  }
}

/** Title, language, page labels, and how a reader should show and print the file. */
function describe(document: PDFDocument, sheets: readonly Sheet[], info: PdfInfo): void {
  const { context, catalog } = document;
  document.setTitle(info.title, { showInWindowTitleBar: true });
  document.setLanguage(info.lang);
  document.setCreator("Cutwork");
  document.setProducer("Cutwork");
  catalog.getOrCreateViewerPreferences().setPrintScaling(PrintScaling.None);
  const labels = sheets.flatMap((sheet, index) => [index, { P: PDFHexString.fromText(sheet.label) }]);
  catalog.set(PDFName.of("PageLabels"), context.obj({ Nums: labels }));
}
