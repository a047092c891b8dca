import { de } from "./de";
import { en } from "./en";
import { es } from "./es";
import { fr } from "./fr";
import { pt } from "./pt";
import type { MaterialWords, PaperWords, SlipWords, StationWords } from "./shapes";

export type { MaterialWords, SlipWords, StationWords } from "./shapes";

const words = { en, es, fr, de, pt } satisfies Record<string, PaperWords>;

/** Languages that papers have words in. */
export const paperLanguages = Object.keys(words) as (keyof typeof words)[];

function own(lang: string): PaperWords | undefined {
  const primary = paperLanguages.find((each) => each === lang.toLowerCase().split("-")[0]);
  return primary && words[primary];
}

/** Whether papers have words in a language (BCP 47); where not, they are English, and the guide says so. */
export function hasPaperWords(lang: string): boolean {
  return own(lang) !== undefined;
}

/** The words of slips in the language that explains (BCP 47), else English. */
export function slipWords(lang: string): SlipWords {
  return (own(lang) ?? en).slips;
}

/** In a language that learners read directions in (BCP 47), else English. */
export function materialWords(lang: string): MaterialWords {
  return (own(lang) ?? en).materials;
}

/** In the language of the directions on the card (BCP 47), else English. */
export function stationWords(lang: string): StationWords {
  return (own(lang) ?? en).stations;
}
