import type { Rule } from "../../../base/finding";
import { boardClueFitsTwo } from "./board-clue-fits-two";
import { boardTooFew } from "./board-too-few";
import { boardTooSmall } from "./board-too-small";
import type { BoardContext } from "./context";

export const rules: readonly Rule<BoardContext>[] = [boardTooFew, boardClueFitsTwo, boardTooSmall];
