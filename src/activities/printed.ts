import { pictureSize } from "../base/picture";
import type { Range } from "../base/range";
import type { Run } from "../base/run";
import { answerKey, type MatchKey } from "../match/relation";
import type { CardFace, CardPicture } from "../page/cards";
import type { SourcedWords } from "../page/document";
import type { Answer, Phrase, Picture } from "../unit/unit";
import type { Press } from "./contract";

/** Words, a picture, or a picture over its words, as they stand on cards, boards and lists. */
export interface Printed {
  /** Empty for a picture alone. */
  readonly runs: readonly Run[];
  readonly picture?: Picture;
  /** As printed; of a picture alone the alternative text, or its path where that is empty. */
  readonly text: string;
  readonly key: MatchKey;
  readonly source: Range;
  /** BCP 47 */
  readonly lang: string;
}

export function toPrinted(answer: Answer, lang: string): Printed {
  return {
    runs: answer.runs,
    ...(answer.picture ? { picture: answer.picture } : {}),
    text: answer.text,
    key: answerKey(answer),
    source: answer.range,
    lang,
  };
}

/** Equal for what looks alike on paper. */
export function looksLike({ picture, text }: Pick<Printed, "picture" | "text">): string {
  return picture ? `${picture.path}\u0000${text}` : text;
}

/** What of it makes a deal's code: all that can be seen. */
export function printOf({ runs, picture }: Printed): unknown {
  return [picture?.path ?? "", runs];
}

const wordsAsJson = new WeakMap<readonly Run[], string>();

/** The same as JSON. Most words are the very ones of the last reading. */
export function printJson({ runs, picture }: Pick<Printed, "runs" | "picture">): string {
  let words = wordsAsJson.get(runs);
  if (words === undefined) {
    words = JSON.stringify(runs);
    wordsAsJson.set(runs, words);
  }
  return `[${JSON.stringify(picture?.path ?? "")},${words}]`;
}

/** As it is set on a card. A picture that cannot be read leaves its alternative text. */
export function cardFace({ runs, picture, text, source, lang }: Printed, press: Press): CardFace {
  const drawn = cardPicture(picture, press);
  if (drawn) return { runs, lang, source, picture: drawn };
  return { runs: runs.length > 0 || !picture ? runs : [{ text }], lang, source };
}

/** As it is named in a list: a picture alone by its alternative text. */
export function listed({ runs, text, source, lang }: Printed): SourcedWords & { readonly runs: readonly Run[] } {
  return { runs: runs.length > 0 ? runs : [{ text: `[${text}]`, italic: true }], source, lang };
}

/** As it is told in a list: a picture by its alternative text, before the words that stand with it. */
export function told({ runs, picture }: Pick<Phrase, "runs" | "picture">): readonly Run[] {
  if (!picture) return runs;
  return [{ text: `[${picture.alt}]`, italic: true }, ...(runs.length > 0 ? [{ text: " " }] : []), ...runs];
}

/** A picture as cards draw it; undefined where there is none that can be read. */
export function cardPicture(
  picture: Picture | undefined,
  { pictures }: Pick<Press, "pictures">,
): CardPicture | undefined {
  const bytes = picture && pictures.get(picture.path);
  const size = bytes && pictureSize(bytes);
  return picture && size ? { key: picture.path, alt: picture.alt, ratio: size.width / size.height } : undefined;
}

/** What a deal's record keeps of it. */
export function recorded({ runs, picture, lang }: Printed): unknown {
  return { runs, lang, ...(picture ? { picture: picture.path } : {}) };
}

/** By how many words a text is shorter than all of some texts, or longer: one that stands out among them. */
export function standsOut(
  text: Pick<Phrase, "text" | "runs">,
  among: readonly Pick<Phrase, "text" | "runs">[],
): number {
  if (among.length === 0) return 0;
  const lengths = among.map(wordCount);
  return Math.max(0, Math.min(...lengths) - wordCount(text), wordCount(text) - Math.max(...lengths));
}

const counts = new WeakMap<readonly Run[], number>();

/** Words of a text as it is written: what a mended letter does not change. */
export function wordCount({ text, runs }: Pick<Phrase, "text" | "runs">): number {
  const known = counts.get(runs);
  if (known !== undefined) return known;
  const count = countIn(text.trim());
  counts.set(runs, count);
  return count;
}

function countIn(text: string): number {
  if (odd.test(text)) return text.split(/\s+/u).length;
  let count = 1;
  for (let at = text.indexOf(" "); at >= 0; at = text.indexOf(" ", at + 1)) count++;
  return count;
}

/** Any white space but single spaces. */
const odd = /[^\S ]| {2}/u;
