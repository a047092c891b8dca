import { LineIndex } from "../../base/range";
import type { Steps } from "../../base/steps";
import { type Env, scan } from "../inline";
import { Problems } from "../problems";
import { SourceText } from "../source-text";
import { bareRemark } from "./bare-remarks";
import { haveOneSign, practisingSigns } from "./doubtful-signs";
import { nearlyPicture, picturePath } from "./links";
import { changedComment, colouredText, looseEmphasis } from "./loose-signs";
import { allMarked, marksOf } from "./marks";
import { unprinted } from "./unprinted";

/** Looks for what may be wrong in a text, one look at each step: expressions are made ready when they are first used, which takes time. */
export function* practisingTraps(): Steps<void, undefined> {
  const text = "the *wheel* of ==brass== <b>turns</b> ~~so~~ – (x) by: K7";
  const source = SourceText.inLines(new LineIndex(text), 0, text);
  const problems = new Problems();
  const env: Env = {};
  const { mask } = scan(text, env);
  yield;
  for (const each of ["2*3*4", "the *wheel*", "<b>turns</b>", "~~so~~", "so[^1]"]) {
    const short = SourceText.inLines(new LineIndex(each), 0, each);
    unprinted(short, scan(each, env).mask, env, problems);
    yield;
  }
  looseEmphasis(source, mask, env, problems);
  yield;
  for (const look of [colouredText, changedComment, bareRemark, picturePath, nearlyPicture]) {
    look(source, mask, problems);
    yield;
  }
  for (const mark of ["[x] The wheel", "✓ The wheel", "F The wheel"]) {
    marksOf([mark]);
    yield;
    allMarked([mark]);
    yield;
  }
  yield* practisingSigns();
  haveOneSign(["the wheel: the bell"], true);
}
