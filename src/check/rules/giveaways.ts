import type { Claim } from "../../activities/statements";

/** Words that claim much, and such as claim little. The English ones that sources name are all, only, never, always; usually, generally. */
interface Words {
  readonly strong: readonly string[];
  readonly soft: readonly string[];
}

const words: Readonly<Record<string, Words>> = {
  en: { strong: ["all", "only", "never", "always", "every", "none"], soft: ["usually", "generally", "often"] },
  es: {
    strong: ["todo", "todos", "toda", "todas", "solo", "sólo", "solamente", "nunca", "siempre", "ninguno", "ninguna"],
    soft: ["normalmente", "generalmente", "a menudo", "a veces"],
  },
  fr: {
    strong: ["tout", "tous", "toute", "toutes", "seulement", "jamais", "toujours", "aucun", "aucune"],
    soft: ["d'habitude", "d’habitude", "généralement", "souvent", "parfois"],
  },
  de: {
    strong: ["alle", "alles", "nur", "nie", "niemals", "immer"],
    soft: ["meistens", "gewöhnlich", "normalerweise", "oft", "manchmal"],
  },
  pt: {
    strong: ["todo", "todos", "toda", "todas", "só", "apenas", "nunca", "sempre", "nenhum", "nenhuma"],
    soft: ["geralmente", "normalmente", "muitas vezes", "às vezes"],
  },
};

export interface Giveaway {
  readonly words: readonly string[];
  /** What statements with such a word all are. */
  readonly truth: boolean;
  readonly claims: readonly Claim[];
}

/** Kinds of telling words that stand in several statements, all of them false (strong words) or all of them true (soft ones). */
export function giveawaysOf(claims: readonly Claim[], lang: string): Giveaway[] {
  const known = words[lang.toLowerCase().split("-")[0] ?? ""];
  if (!known) return [];
  return ([false, true] as const).flatMap((truth): Giveaway[] => {
    const list = truth ? known.soft : known.strong;
    const hits = claims.flatMap((claim) => {
      const word = list.find((each) => holds(claim.text, each));
      return word === undefined ? [] : [{ claim, word }];
    });
    if (hits.length < 2 || hits.some(({ claim }) => claim.truth !== truth)) return [];
    return [{ truth, words: [...new Set(hits.map(({ word }) => word))], claims: hits.map(({ claim }) => claim) }];
  });
}

function holds(text: string, word: string): boolean {
  const low = text.normalize("NFC").toLowerCase();
  for (let at = low.indexOf(word); at >= 0; at = low.indexOf(word, at + 1)) {
    if (!/\p{L}/u.test(low.charAt(at - 1)) && !/\p{L}/u.test(low.charAt(at + word.length))) return true;
  }
  return false;
}
