import type { Steps } from "../base/steps";
import { haveOneSign } from "./traps/doubtful-signs";
import { allJudged, allMarked } from "./traps/marks";
import { type Border, scriptBorder } from "./traps/two-scripts";
import type { Pair, Pile, StoryEvent } from "./unit";

/** A sign between two sides that is none of a pair's. */
const sign = /\S(?:\s+(?:[|｜¦‖│∣/／→;:\p{Pd}−]|[-=]{1,2}>)\s+|:\s+|\s*\t\s*)\S/u;

/** A short word before others, as an article. */
const leadOf = (text: string): string | undefined => /^(\p{L}{1,4})\s+\S/u.exec(text.trim())?.[1]?.toLowerCase();

/** Whether the letters of a text are Latin ones alone. */
export const isLatin = (text: string): boolean => !/(?!\p{Script=Latin})\p{L}/u.test(text);

const sides = ["left", "right"] as const;

/** What the key is made of. */
const keyed = [
  "mostlyPairs",
  "hasPairs",
  "hasCards",
  "alike",
  "parted",
  "phrased",
  "hasCuts",
  "numbered",
  "hasOnlySmall",
] as const;

/** What the bullets and events of a section are together: what one of them may be meant as hangs on that. Each is found once. */
export class Together {
  private readonly found = new Map<string, unknown>();

  /** How often `ofOneSide` or `ofBothSides` was asked: what hangs on those holds in this section alone. */
  asked = 0;

  /** `texts`: plain bullets. */
  constructor(
    private readonly pairs: readonly Pair[],
    private readonly texts: readonly string[],
    private readonly events: readonly StoryEvent[],
    private readonly piles: readonly Pick<Pile, "members">[],
  ) {}

  get isEmpty(): boolean {
    return [this.pairs, this.texts, this.events, this.piles].every(({ length }) => length === 0);
  }

  get hasPairs(): boolean {
    return this.pairs.length > 0;
  }

  /** Whether most bullets are pairs, or so many that their sign is surely known. */
  get mostlyPairs(): boolean {
    return this.pairs.length > Math.min(2, this.texts.length);
  }

  /** Whether plain bullets are the cards of piles, and none is a pair: what stands above them is hardly one. */
  get hasCards(): boolean {
    return !this.hasPairs && this.piles.some(({ members }) => members.some(({ shape }) => shape === "text"));
  }

  /** Whether all plain bullets have the same sign that may be meant to part a pair, and there are at least three bullets in all. */
  get alike(): boolean {
    const enough = this.pairs.length + this.texts.length > 2;
    return this.once("alike", () => enough && haveOneSign(this.texts, !this.hasPairs));
  }

  /** Whether most plain bullets have a bar or another sign between two sides, as pairs that went wrong have. */
  get parted(): boolean {
    return this.once("parted", () => {
      const count = this.texts.filter((text) => sign.test(text)).length;
      return count > 1 && count * 2 > this.texts.length;
    });
  }

  /** Whether there are some pairs, most of several words on both sides, as words with their articles. */
  get phrased(): boolean {
    return this.once("phrased", () => {
      const several = ({ answers }: Pair["left"]): boolean => /\S\s+\S/.test(answers[0].text);
      const count = this.pairs.filter(({ left, right }) => several(left) && several(right)).length;
      return count > 2 && count * 3 >= this.pairs.length * 2;
    });
  }

  /** Whether the left side of a pair is cut by bars. */
  get hasCuts(): boolean {
    return this.once("hasCuts", () =>
      this.pairs.some(({ left }) => left.answers.some(({ parts }) => parts.length > 1)),
    );
  }

  /** Whether most pairs have a number on one side, and words on the other. */
  get numbered(): boolean {
    return this.once("numbered", () => {
      const isNumber = ({ answers }: Pair["left"]): boolean => /^\p{N}+$/u.test(answers[0].text.trim());
      const count = this.pairs.filter(({ left, right }) => isNumber(left) !== isNumber(right)).length;
      return count > 2 && count * 2 > this.pairs.length;
    });
  }

  /** Whether there is no capital in any pair. */
  get hasOnlySmall(): boolean {
    return this.once("hasOnlySmall", () => {
      const isSmall = ({ answers }: Pair["left"]): boolean => !answers.some(({ text }) => /\p{Lu}/u.test(text));
      return this.pairs.every(({ left, right }) => isSmall(left) && isSmall(right));
    });
  }

  /** Equal for sections whose items may be meant as the same things, but for what `ofOneSide` and `ofBothSides` say. */
  get key(): string {
    return this.once("key", () => keyed.map((what) => this[what]).join(" "));
  }

  /** Finds what the key is made of, one thing at each step. */
  *finding(): Steps<void, undefined> {
    if (this.found.has("key")) return;
    for (const what of keyed) {
      void this[what];
      yield;
    }
  }

  /** Whether all bullets are plain and begin with marks. */
  get marked(): boolean {
    return this.once("marked", () => !this.hasPairs && allMarked(this.texts));
  }

  /** Whether all events begin with marks. */
  get markedStory(): boolean {
    return this.once("markedStory", () => allJudged(this.events.map(({ text }) => text)));
  }

  /**
   * Whether two texts both begin with short words that only left sides begin with here, or only right ones, or both are words that stand
   * in those alone, or have the script of one side: they are of one language, and no pair.
   */
  ofOneSide(one: string, other: string): boolean {
    this.asked++;
    const side = this.sideOf(one);
    if (side !== undefined && side === this.sideOf(other)) return true;
    const hand = this.handOf(one);
    if (hand !== undefined && hand === this.handOf(other)) return true;
    return this.twoScripts && isLatin(one) === isLatin(other);
  }

  /** Whether of two texts the first begins as left sides do here and the second as right ones. */
  beginAsSides(left: string, right: string): boolean {
    this.asked++;
    return this.sideOf(left) === 0 && this.sideOf(right) === 1;
  }

  /** The same, or each has the script of its side alone. */
  ofBothSides(left: string, right: string): boolean {
    if (this.beginAsSides(left, right)) return true;
    const latin = this.pairs[0]?.left.answers.every(({ text }) => isLatin(text));
    return this.twoScripts && isLatin(left) === latin && isLatin(right) !== latin;
  }

  /** Where a text parts into two sides in the scripts of the two sides here. */
  borderIn(text: string): Border | undefined {
    this.asked++;
    const latin = this.pairs[0]?.left.answers.every((answer) => isLatin(answer.text));
    return this.twoScripts && latin !== undefined ? scriptBorder(text, latin) : undefined;
  }

  /** 0 where a text begins with a short word that only left sides begin with, 1 where only right ones do. */
  private sideOf(text: string): number | undefined {
    const [left, right] = this.leads;
    const lead = leadOf(text);
    if (lead === undefined || left?.has(lead) === right?.has(lead)) return undefined;
    return left?.has(lead) ? 0 : 1;
  }

  /** The same where a text is one word, and stands in sides of one hand alone. */
  private handOf(text: string): number | undefined {
    const word = text.trim().toLowerCase();
    if (/\s/.test(word)) return undefined;
    const [left, right] = this.words;
    if (left?.has(word) === right?.has(word)) return undefined;
    return left?.has(word) ? 0 : 1;
  }

  /** All words of left and of right sides, in small letters. */
  private get words(): readonly ReadonlySet<string>[] {
    const of = (side: (typeof sides)[number]): string[] =>
      this.pairs.flatMap((pair) =>
        pair[side].answers.flatMap(({ text }) => text.toLowerCase().match(/\p{L}[\p{L}\p{M}'’-]*/gu) ?? []),
      );
    return this.once("words", () => sides.map((side) => new Set(of(side))));
  }

  /** Short first words of left and of right sides. */
  private get leads(): readonly ReadonlySet<string>[] {
    const of = (side: (typeof sides)[number]): string[] =>
      this.pairs.flatMap((pair) => pair[side].answers.flatMap(({ text }) => leadOf(text) ?? []));
    return this.once("leads", () => sides.map((side) => new Set(of(side))));
  }

  /** Whether there are some pairs, and all sides of one hand are in Latin letters alone, and all of the other in others as well. */
  private get twoScripts(): boolean {
    return this.once("twoScripts", () => {
      const [left = [], right = []] = sides.map((side) =>
        this.pairs.map((pair) => pair[side].answers.every(({ text }) => isLatin(text))),
      );
      return left.length > 2 && left.every((latin, i) => latin === left[0] && latin !== right[i]);
    });
  }

  private once<Value>(what: string, find: () => Value): Value {
    if (!this.found.has(what)) this.found.set(what, find());
    return this.found.get(what) as Value;
  }
}
