import { pictureSize } from "../base/picture";
import type { Range } from "../base/range";
import type { Run } from "../base/run";
import { answerKey, type MatchKey } from "../match/relation";
import type { CardFace } from "../page/cards";
import type { SourcedWords } from "../page/document";
import type { Answer, Picture } from "../unit/unit";
import type { Press } from "./contract";

/** Words, a picture, or a picture over its words, as they stand on cards, boards and lists. */
export interface Printed {
  /** Empty for a picture alone. */
  readonly runs: readonly Run[];
  readonly picture?: Picture;
  /** As printed; the alternative text of a picture alone. */
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
  return `${picture?.path ?? ""}\u0000${text}`;
}

/** What of it makes a deal's code: all that can be seen. */
export function printOf({ runs, picture }: Printed): unknown {
  return [picture?.path ?? "", runs];
}

/** As it is set on a card. A picture that cannot be read leaves its alternative text. */
export function cardFace({ runs, picture, text, source, lang }: Printed, press: Press): CardFace {
  const bytes = picture && press.pictures.get(picture.path);
  const size = bytes && pictureSize(bytes);
  if (!picture) return { runs, lang, source };
  if (!size) return { runs: runs.length > 0 ? runs : [{ text }], lang, source };
  return { runs, lang, source, picture: { key: picture.path, alt: picture.alt, ratio: size.width / size.height } };
}

/** As it is named in a list: a picture alone by its alternative text. */
export function listed({ runs, text, source, lang }: Printed): SourcedWords & { readonly runs: readonly Run[] } {
  return { runs: runs.length > 0 ? runs : [{ text: `[${text}]`, italic: true }], source, lang };
}

/** What a deal's record keeps of it. */
export function recorded({ runs, picture, lang }: Printed): unknown {
  return { runs, lang, ...(picture ? { picture: picture.path } : {}) };
}
