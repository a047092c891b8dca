import type { Rule } from "../../../base/finding";
import { clueFitsTwo } from "./clues";
import type { BoardContext } from "./context";
import { boardTooSmall } from "./text";
import { tooFewWords } from "./words";

export const rules: readonly Rule<BoardContext>[] = [tooFewWords, clueFitsTwo, boardTooSmall];
