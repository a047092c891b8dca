import type { Severity } from "../base/finding";
import { printable } from "./cells";
import { toJson, unreadJson } from "./json";
import { namedFiles } from "./named-files";
import { type FileReport, type Outcome, settingsReports, unitReport } from "./report";
import { toSarif } from "./sarif";
import { countText, findingLines, proofLines, styleFor, type TextStyle } from "./text";
import { openEngine, readUnitFile } from "./units";
import { FileError, say, UsageError } from "./usage";

/** `cutwork check`: prints findings and proofs; resolves to the exit code. */
export async function check(
  files: readonly string[],
  options: { readonly format: unknown; readonly failOn: unknown },
): Promise<number> {
  const format = choose("--format", options.format ?? "text", ["text", "json", "sarif"]);
  const failOn = choose("--fail-on", options.failOn ?? "error", ["error", "warning"]);
  if (files.length === 0) throw new UsageError("Name the units to check.");
  if (files.indexOf("-") !== files.lastIndexOf("-")) throw new UsageError("Standard input can be read only once.");
  const style = styleFor(process.stdout);
  const workshop = await openEngine();
  const outcomes: Outcome[] = [];
  for (const file of await namedFiles(files)) {
    try {
      const reading = await readUnitFile(workshop, file);
      outcomes.push({ file, reading });
      if (format === "text") print(textLines(unitReport(file, reading), style));
    } catch (error) {
      if (!(error instanceof FileError)) throw error;
      outcomes.push({ file, error: error.message });
      say(error.message);
    }
  }
  const readings = outcomes.flatMap((outcome) => ("reading" in outcome ? [outcome.reading] : []));
  const settings = settingsReports(readings);
  const findings = [...readings, ...settings].flatMap((each) => each.findings);
  if (format === "sarif") print([JSON.stringify(toSarif(outcomes, settings, process.cwd()), null, 2)]);
  else if (format === "json") print([JSON.stringify([...outcomes.map(jsonOf), ...settings.map(toJson)], null, 2)]);
  else {
    for (const report of settings) print(textLines(report, style));
    if (outcomes.length > 1) print([totalLine(outcomes, countText(findings, style.paint))]);
  }
  if (outcomes.some((outcome) => "error" in outcome)) return 2;
  return findings.some(({ severity }) => failing[failOn].includes(severity)) ? 1 : 0;
}

const failing: Readonly<Record<"error" | "warning", readonly Severity[]>> = {
  error: ["error"],
  warning: ["error", "warning"],
};

function textLines(report: FileReport, style: TextStyle): string[] {
  return [
    ...findingLines(report, style),
    `${printable(report.file)}: ${countText(report.findings, style.paint)}`,
    ...proofLines(report),
  ];
}

function jsonOf(outcome: Outcome): unknown {
  return "error" in outcome
    ? unreadJson(outcome.file, outcome.error)
    : toJson(unitReport(outcome.file, outcome.reading));
}

function totalLine(outcomes: readonly Outcome[], counts: string): string {
  const unread = outcomes.filter((outcome) => "error" in outcome).length;
  return `${outcomes.length} files: ${counts}${unread === 0 ? "" : `, ${unread} not read`}`;
}

function print(lines: readonly string[]): void {
  process.stdout.write(`${lines.join("\n")}\n`);
}

function choose<T extends string>(name: string, value: unknown, allowed: readonly T[]): T {
  const found = allowed.find((each) => each === value);
  if (found === undefined) throw new UsageError(`${name} can be ${listed(allowed)}, not “${String(value)}”.`);
  return found;
}

function listed(words: readonly string[]): string {
  return `${words.slice(0, -1).join(", ")} or ${words.at(-1) ?? ""}`;
}
