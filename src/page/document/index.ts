/* Papers: keys, lists, guides, slips, plans. */
export type {
  Align,
  Block,
  Bullets,
  Cell,
  Column,
  Columns,
  Facts,
  Figure,
  Heading,
  PageBreak,
  Paragraph,
  Sized,
  SourcedWords,
  Spacer,
  Steps,
  Table,
  Together,
  Words,
  WritingLines,
} from "./blocks";
export {
  type BoxedBlocks,
  type BoxSetting,
  type DocumentPage,
  heightOfBlocks,
  setDocument,
  setInBox,
  sheetOf,
  textSize,
} from "./document";
export { type Slip, setSlips, setWritingSlips, type WritingSlip } from "./slips";
export { tickBox } from "./table";
