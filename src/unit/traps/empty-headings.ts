import type { LineIndex, Range } from "../../base/range";
import type { Problems } from "../problems";

/**
 * Headings without a text, which name nothing: no pile, or no section that another can be told from. Those of a rank that stand
 * one after the other are taken out together, since what follows one would be the other's; where nothing with a name stands above
 * them, a name is what is missing.
 */
export class EmptyHeadings {
  private rank: "section" | "pile" = "section";
  /** The last headings, of one rank, that have no text, as whole lines. */
  private above: readonly Range[] = [];
  /** A section with a name has begun. */
  private named = false;

  constructor(
    private readonly lines: LineIndex,
    private readonly problems: Problems,
  ) {}

  /** Looks at each heading below the first rank in turn: `tag` is its element in HTML. */
  see(line: number, tag: string, content: string): void {
    const rank = tag === "h2" ? "section" : "pile";
    const above = rank === this.rank ? this.above : [];
    this.rank = rank;
    this.above = [];
    if (content !== "") {
      this.named ||= rank === "section";
      return;
    }
    const range = this.lines.line(line);
    this.above = [...above, { start: range.start, end: this.lines.start(line + 1) }];
    const title = above.length > 0 ? "Take it out, with those above it" : "Take it out";
    const edits = this.above.map((place) => ({ range: place, text: "" }));
    const message = `This heading has no text, so that its ${rank} has no name.`;
    const fixes = this.named ? [{ title, edits, drops: true } as const] : [];
    this.problems.tell(rank === "pile" ? "piles" : true, "not-a-heading", range, message, ...fixes);
  }
}
