import type { Proof } from "../prove/proof";

/* What the reference tells of the proofs of a kind. */

/** Something that the prover can say of a deal, told for the reference with a unit that gives it. */
export interface Verdict {
  readonly title: string;
  /** What it says, why, and what to do. Markdown. */
  readonly why: string;
  /** A unit whose first deal gets it; without `unit`, in words. */
  readonly example: string;
  readonly unit?: true;
  readonly says: Partial<Pick<Proof<unknown>, "status" | "count" | "by" | "capped" | "accepted">>;
  /** Findings that come with it. */
  readonly codes: readonly string[];
}

/** An activity of an example. */
export const block = (make: string, ...options: readonly string[]): string =>
  ["", "```activity", `make: ${make}`, ...options, "```"].join("\n");

/** A section of an example. */
export const section = (heading: string, ...lines: readonly string[]): string =>
  `## ${heading}\n\n${lines.join("\n")}\n`;

/** Pairs that have nothing in common. */
export const drinks: readonly string[] = ["- chá = tea", "- leite = milk", "- água = water", "- sumo = juice"];

/** The same, but for two with one gloss. */
export const people: readonly string[] = [
  "- o patrão = the boss",
  "- o chefe = the boss",
  "- a amiga = the friend",
  "- a prima = the cousin",
];
