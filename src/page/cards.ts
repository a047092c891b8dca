/* Rectangular cards on sheets: sizes, places, cut lines, backs, and the words on them. */
export { backBox, backClearance, backsOf, type Duplex, type PlacedBack } from "./cards/backs";
export { inset, type Padding, turned } from "./cards/box";
export { cutPiecesOf, cutsOf } from "./cards/cuts";
export {
  type CardFace,
  type CardPicture,
  type CardSetting,
  cardRows,
  type FitLimits,
  fitCards,
  fittingCards,
  heightWithPicture,
  linesOn,
  setCard,
} from "./cards/fit";
export {
  type CardGrid,
  type CardLimits,
  cardCuts,
  largestCards,
  type PlacedCard,
  packGrid,
  packStrips,
  placeGrid,
  placesByPage,
} from "./cards/grid";
export { type CardRows, lowered, packRows, type SharedRows, shareRows } from "./cards/rows";
