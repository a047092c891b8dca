export {
  type Assignment,
  type AssignmentPuzzle,
  isAssignment,
  proveAssignment,
  unclearClues,
} from "./assignment";
export {
  alternates,
  balancedOrder,
  countKeys,
  type DealtKeys,
  drawKeys,
  isRegular,
  type KeyRule,
} from "./balanced-order";
export { type Shortage, shortageIn } from "./matching";
export { type RunsLimits, runs, runsDistribution, runsLimits } from "./runs";
