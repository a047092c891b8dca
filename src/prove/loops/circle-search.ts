import { sameCircle } from "./circle";
import type { Circle } from "./loops";
import { Paths } from "./paths";

interface Choice {
  readonly mark: number;
  readonly options: readonly number[];
  next: number;
}

/**
 * Now and then the first choices lead where hardly any circle is, and going back one by one from there takes millions. So as
 * long as no new one was met it begins anew where it last came to nothing, after so many choices that did, twice as many each time;
 * the last time it goes on to the end. 2,000 relations of 1,000 cards with 2,000 answers more took 722 choices at most, with one
 * beginning 133,661, and where it looked for the next choice from the first card on, six of them more than 200,000.
 */
const patience = 32;
const mostBeginnings = 6;

/**
 * All full circles of a relation, one step at a time: what is forced is laid at once, and where nothing is forced the card with
 * the fewest ways is tried. Of cards that print alike and have not been touched yet only one is tried, so circles that look the
 * same are met less often, but they may be met again.
 */
export class CircleSearch {
  /** Choices tried. */
  nodes = 0;
  private readonly paths: Paths;
  private readonly choices: Choice[] = [];
  private begun = false;
  private met = false;
  /** Where all that is forced without a choice is laid, and how many choices came to nothing since it was last there. */
  private root = 0;
  private deadEnds = 0;
  private beginnings = 1;
  /** A card of the last choice, and of the last one that came to nothing: the next is looked for from there on. */
  private chosen = 0;
  private from = 0;
  /** A choice has come to nothing since the last look at whether all hangs together; how many paths there were then. */
  private failed = false;
  private looked = Number.POSITIVE_INFINITY;

  /** `follows` names no card after itself. Meeting a circle that is `known` already is nothing new. */
  constructor(
    private readonly follows: readonly (readonly number[])[],
    private readonly look: readonly number[],
    private readonly known?: Circle,
  ) {
    this.paths = new Paths(follows);
  }

  /** Tries one more choice. A circle when that completed one, `undefined` when not, `"end"` when all is searched. */
  step(): Circle | "end" | undefined {
    const { paths } = this;
    if (!this.begun) {
      this.begun = true;
      const possible = paths.layOnly();
      this.root = paths.mark();
      return possible ? this.goOn() : undefined;
    }
    if (this.isAstray()) this.beginAnew();
    const choice = this.choices.at(-1);
    if (!choice) return "end";
    paths.undo(choice.mark);
    const arc = choice.options[choice.next++] ?? -1;
    if (choice.next >= choice.options.length) this.choices.pop();
    this.nodes++;
    this.chosen = paths.from[arc] ?? 0;
    return paths.lay(arc) ? this.goOn() : this.comeToNothing();
  }

  private goOn(): Circle | undefined {
    const { paths } = this;
    if (paths.count === 1) {
      const circle = paths.circle();
      this.met ||= !this.known || !sameCircle(this.look, circle, this.known);
      return circle;
    }
    if (this.isTimeToLook() && !paths.hangTogether()) return this.comeToNothing();
    this.choices.push({ mark: paths.mark(), options: this.choose(), next: 0 });
    return undefined;
  }

  private comeToNothing(): undefined {
    this.failed = true;
    this.deadEnds++;
    this.from = this.chosen;
  }

  private isAstray(): boolean {
    if (this.met || this.choices.length === 0 || this.beginnings === mostBeginnings) return false;
    return this.deadEnds >= patience * 2 ** (this.beginnings - 1);
  }

  private beginAnew(): void {
    this.beginnings++;
    this.deadEnds = 0;
    this.choices.length = 0;
    this.paths.undo(this.root);
    this.choices.push({ mark: this.root, options: this.choose(), next: 0 });
  }

  /** The ways on from a path's last card, or into a path's first, whichever are fewest. */
  private choose(): readonly number[] {
    const { paths } = this;
    const size = this.follows.length;
    let fewest = Number.POSITIVE_INFINITY;
    let chosen: readonly number[] = [];
    // What has one way is laid already, so none has fewer than two.
    for (let i = 0; i < size && fewest > 2; i++) {
      const card = (this.from + i) % size;
      const waysOn = paths.waysOn(card);
      if (waysOn > 0 && waysOn < fewest) {
        fewest = waysOn;
        chosen = this.untouched(paths.out[card] ?? [], paths.to);
      }
      const waysIn = paths.waysIn(card);
      if (waysIn > 0 && waysIn < fewest) {
        fewest = waysIn;
        chosen = this.untouched(paths.into[card] ?? [], paths.from);
      }
    }
    return chosen;
  }

  /** The open ones of some arcs, and of those to untouched cards that print alike the first. */
  private untouched(arcs: readonly number[], end: readonly number[]): number[] {
    const seen = new Set<number>();
    return arcs.filter((arc) => {
      if (!this.paths.isOpen(arc)) return false;
      const card = end[arc] ?? 0;
      if (this.paths.isTouched(card)) return true;
      const look = this.look[card] ?? -1;
      if (seen.has(look)) return false;
      seen.add(look);
      return true;
    });
  }

  /**
   * Looking whether all hangs together takes as long as all paths together, so it is done where a tenth of them was joined since
   * the last look, and after each choice that came to nothing.
   */
  private isTimeToLook(): boolean {
    const paths = this.paths.count;
    if (!this.failed && paths * 10 > this.looked * 9 && paths <= this.looked) return false;
    this.failed = false;
    this.looked = paths;
    return true;
  }
}
