import fc from "fast-check";
import { below, randomFrom, shuffled } from "../../prove/instances";
import type { Article } from "../../support/dictd";
import { same, type Written } from "./written";

/*
 * Sections that a dictionary makes hard: a random draw of 18 articles shares a translation one time in 20 or 50 only, so sets
 * are drawn that do.
 */

/** Words that Markdown reads as words and nothing else. */
const plain = /^[\p{L}(¿][\p{L}\p{M} '’‐\-.()?!]*$/u;
const mostAnswers = 3;

export interface Section {
  readonly make: "tiles" | "loop";
  readonly pairs: readonly Written[];
  readonly grid: "auto" | "2 x 2" | "2 x 3" | "3 x 3";
  readonly turn: "free" | "fixed";
  /** `blank`: fewer pairs than the grid has inner edges, so that some of these are blank. */
  readonly fill: "words" | "blank";
  /** Whether learners are told rows and columns. */
  readonly frame: "told" | "untold";
  readonly seed: number;
}

const innerEdges = { "2 x 2": 4, "2 x 3": 7, "3 x 3": 12, auto: 17 } as const;

/** Draws of sections from the articles of a dictionary. */
export function draws(articles: readonly Article[]): fc.Arbitrary<Section> {
  const usable = articles.flatMap(({ head, answers }) => {
    const kept = answers.filter((answer) => plain.test(answer)).slice(0, mostAnswers);
    return plain.test(head) && kept.length > 0 ? [{ head, answers: kept }] : [];
  });
  const sets = hardSets(usable);
  return fc
    .record({
      sets: fc.array(fc.tuple(fc.nat(sets.length - 1), fc.nat(), fc.integer({ min: 2, max: 9 })), { maxLength: 5 }),
      make: fc.constantFrom(...Array.from({ length: 7 }, () => "tiles" as const), "loop" as const),
      spare: fc.nat(5),
      fill: fc.constantFrom("words" as const, "words" as const, "words" as const, "blank" as const),
      /** Draws the other articles, the order of all, and which of their answers is printed. */
      chance: fc.noShrink(fc.nat()),
      frame: fc.constantFrom("told" as const, "told" as const, "told" as const, "untold" as const),
      swapped: fc.boolean(),
      grid: fc.constantFrom("3 x 3" as const, "3 x 3" as const, "2 x 2" as const, "2 x 3" as const, "auto" as const),
      turn: fc.constantFrom("free" as const, "free" as const, "fixed" as const),
      seed: fc.integer({ min: 1, max: 1000 }),
    })
    .map((draw) => {
      const { make, grid, turn, frame, seed } = draw;
      // A loop has no edges, and `auto` leaves none blank.
      const fill = grid === "auto" || make === "loop" ? "words" : draw.fill;
      const more = fill === "blank" ? -1 - draw.spare : draw.spare;
      const count = Math.max(1, Math.min(18, innerEdges[grid] + more));
      const drawn = draw.sets.flatMap(([kind, which, most]) => {
        const list = sets[kind] ?? [];
        const set = list[which % list.length] ?? [];
        // Large sets from any place on.
        const start = which % set.length;
        return [...set.slice(start), ...set.slice(0, start)].slice(0, most);
      });
      const random = randomFrom(draw.chance);
      const chosen = new Set(drawn.slice(0, count));
      while (chosen.size < count) chosen.add(below(random, usable.length));
      const pairs = shuffled(random, [...chosen]).flatMap((place): Written[] => {
        const article = usable[place];
        if (!article) return [];
        const first = below(random, article.answers.length);
        const answers = [...article.answers.slice(first), ...article.answers.slice(0, first)];
        return [draw.swapped ? { left: answers, right: [article.head] } : { left: [article.head], right: answers }];
      });
      return { make, pairs, grid, turn, fill, frame, seed };
    });
}

/** Sets of articles, by their places, of every kind that a dictionary has. */
function hardSets(articles: readonly Article[]): number[][][] {
  const places = (texts: (article: Article) => readonly string[]): Map<string, number[]> => {
    const found = new Map<string, number[]>();
    articles.forEach((article, i) => {
      for (const key of new Set(texts(article).map(same))) found.set(key, [...(found.get(key) ?? []), i]);
    });
    return found;
  };
  const byAnswer = places(({ answers }) => answers);
  const byHead = places(({ head }) => [head]);
  const several = (found: ReadonlyMap<string, number[]>): number[][] =>
    [...found.values()].filter((set) => set.length > 1);
  const others = (article: Article, i: number): number[][] =>
    article.answers.map((answer) => (byAnswer.get(same(answer)) ?? []).filter((other) => other !== i));
  /** a–b–c: an article that shares one answer with one article and another answer with another. */
  const chains = articles.flatMap((article, i) => {
    const [first, second] = others(article, i).filter((list) => list.length > 0);
    const ends = [first?.[0], second?.find((other) => !first?.includes(other))];
    const [a, c] = ends;
    return a === undefined || c === undefined ? [] : [[a, i, c]];
  });
  /** A term that is the answer of another one. */
  const steps = articles.flatMap(({ answers }, i) => {
    const next = answers.flatMap((answer) => byHead.get(same(answer)) ?? []).filter((other) => other !== i);
    return next.length > 0 ? [[i, ...next]] : [];
  });
  /** One word in both languages. */
  const alike = articles.flatMap(({ head, answers }, i) =>
    answers.some((answer) => same(answer) === same(head)) ? [[i]] : [],
  );
  return [several(byAnswer), several(byAnswer), chains, steps, alike, several(byHead)].filter(
    (kind) => kind.length > 0,
  );
}
