import { difficultyText } from "../activities/difficulty";
import type { Finding, Severity } from "../base/finding";
import type { Range } from "../base/range";
import { printable } from "./cells";
import { type Ink, type Paint, paintFor } from "./colour";
import { codeFrame } from "./frame";
import type { FileReport } from "./report";

/** How a report is written to a stream. */
export interface TextStyle {
  readonly paint: Paint;
  /** Cells that a line of a code frame may take. */
  readonly width: number;
}

/** Cells that a code frame may take where nothing says how wide the place is that it goes to. */
const usualWidth = 120;

export function styleFor(stream: { readonly isTTY?: boolean; readonly columns?: number }): TextStyle {
  return { paint: paintFor(stream), width: stream.columns ?? usualWidth };
}

/** Places shown with each finding; one that clashes with a hundred others is understood before. */
const shownPlaces = 5;

/**
 * Findings as text. The first line of each is `file:line:column severity code message`, counted from 1 as editors show it, also
 * when it is coloured; the lines below are indented: the source, then related places.
 */
export function findingLines({ file, lines, findings }: FileReport, { paint, width }: TextStyle): string[] {
  const at = ({ start }: Range): string => {
    const { line, character } = lines.positionAt(start);
    return paint("place", `${printable(file)}:${line + 1}:${character + 1}`);
  };
  const frame = (range: Range, ink: Ink): string[] => codeFrame(lines, range, { paint, ink, width });
  return findings.flatMap(({ range, severity, code, message, related }) => [
    `${at(range)} ${paint(severity, severity)} ${paint("code", code)} ${printable(message)}`,
    ...frame(range, severity),
    ...related
      .slice(0, shownPlaces)
      .flatMap((place) => [`  ${at(place.range)} ${printable(place.message)}`, ...frame(place.range, "strong")]),
    ...(related.length > shownPlaces ? [morePlaces(related.length - shownPlaces)] : []),
  ]);
}

function morePlaces(count: number): string {
  return `  and ${count} more ${count === 1 ? "place" : "places"}`;
}

const names: Readonly<Record<Severity, readonly [one: string, more: string]>> = {
  error: ["error", "errors"],
  warning: ["warning", "warnings"],
  information: ["information", "information"],
  hint: ["hint", "hints"],
};

const severities: readonly Severity[] = ["error", "warning", "information", "hint"];

/** `2 errors, 1 hint`, or that nothing was found. */
export function countText(findings: readonly Pick<Finding, "severity">[], paint: Paint): string {
  const parts = severities.flatMap((severity) => {
    const count = findings.filter((finding) => finding.severity === severity).length;
    const [one, more] = names[severity];
    return count === 0 ? [] : [paint(severity, `${count} ${count === 1 ? one : more}`)];
  });
  return parts.length === 0 ? paint("good", "nothing found") : parts.join(", ");
}

/** One line an activity: what it is, what is proven, and how hard it is. */
export function proofLines({ activities }: FileReport): string[] {
  return activities.map(({ title, summary, deals }) => {
    if (deals.length === 0) return printable(`  ${title}: ${summary}, not dealt`);
    // A level is named where there are two, a version where there are several.
    const levels = new Set(deals.map(({ level }) => level)).size > 1;
    const versions = deals.some(({ version }) => version > 1);
    const states = deals.map(({ level, version, desk, code, copies, proof, smaller, difficulty }) => {
      const sets = copies === "by copier" ? "a master" : `${copies} ${copies === 1 ? "set" : "sets"}`;
      const proven = proof.accepted
        ? `${proof.capped ? "at least " : ""}${proof.count} right ways`
        : words[proof.status];
      // Whether a smaller circle can close is a proof of its own, whatever is known of full ones.
      const early =
        smaller === undefined ? "" : `, ${proof.status === "one" ? "but" : "and"} a smaller circle can close`;
      const hardness = difficulty ? ` (${difficultyText(difficulty)})` : "";
      const which = [
        code,
        ...(levels ? [level] : []),
        ...(versions ? [desk === undefined ? `version ${version}` : `desk ${desk}`] : []),
      ];
      return `${which.join(" ")}, ${sets}: ${proven}${early}${hardness}`;
    });
    return printable(`  ${title}: ${summary}; ${states.join("; ")}`);
  });
}

const words = {
  one: "one solution",
  several: "several solutions",
  none: "no solution",
  unsettled: "not settled",
} as const;
