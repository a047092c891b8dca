import { readdir } from "node:fs/promises";
import path from "node:path";
import { leftovers } from "../make/leftovers";
import { BlockedError, type MadeFile, type MakeOptions, type Workshop } from "../make/workshop";
import { namedFiles } from "./named-files";
import { type FileReport, settingsReports, unitReport } from "./report";
import { findingLines, proofLines, styleFor } from "./text";
import { openEngine, readUnitFile, unitName } from "./units";
import { FileError, say, UsageError } from "./usage";
import { writeWhole } from "./write";

export interface MakeCall {
  readonly out: unknown;
  readonly only: unknown;
  readonly trial: unknown;
  readonly merge: unknown;
}

/** `cutwork make`: writes all files of each unit or none of it; resolves to the exit code. */
export async function make(files: readonly string[], call: MakeCall): Promise<number> {
  if (files.length === 0) throw new UsageError("Name the units to make.");
  const units = await namedFiles(files);
  refuseClashes(units);
  const out = path.resolve(typeof call.out === "string" ? call.out : "out");
  const only = typeof call.only === "string" ? call.only : undefined;
  const options = { ...(only === undefined ? {} : { only }), trial: call.trial === true, merge: call.merge === true };
  const workshop = await openEngine();
  let worst = 0;
  for (const file of units) {
    try {
      worst = Math.max(worst, await makeUnit(workshop, file, out, options));
    } catch (error) {
      if (!(error instanceof FileError)) throw error;
      say(error.message);
      worst = 2;
    }
  }
  return worst;
}

/** Makes one unit; resolves to 1 where it has errors. Rejects with a FileError where a file cannot be read or written. */
async function makeUnit(workshop: Workshop, file: string, out: string, options: MakeOptions): Promise<0 | 1> {
  const reading = await readUnitFile(workshop, file, out);
  const report = unitReport(file, reading);
  const style = styleFor(process.stderr);
  const { only } = options;
  if (only !== undefined && !reading.activities.some(({ make: kind, title }) => kind === only || title === only)) {
    throw new FileError(`${file} has no activity or kind “${only}”.`);
  }
  const refuse = (reports: readonly FileReport[]): 1 => {
    for (const line of reports.flatMap((each) => findingLines(each, style))) say(line);
    say(`${file}: nothing was made; mend what stands above first.`);
    return 1;
  };
  // Sheets made without a setting that was meant would be other sheets.
  const wrongSettings = settingsReports([reading]).filter(({ findings }) =>
    findings.some(({ severity }) => severity === "error"),
  );
  if (wrongSettings.length > 0) return refuse(wrongSettings);
  let made: readonly MadeFile[];
  try {
    made = await workshop.make(reading, options);
  } catch (error) {
    if (!(error instanceof BlockedError)) throw error;
    return refuse([{ ...report, findings: error.findings }]);
  }
  await writeWhole(out, made);
  const shown = path.relative(process.cwd(), out) || ".";
  const lines = [
    `${file}:`,
    ...proofLines(report),
    ...made.map(({ name, bytes }) => `  ${path.join(shown, name)} (${kilobytes(bytes)})`),
  ];
  process.stdout.write(`${lines.join("\n")}\n`);
  const warnings = workshop.concerning(reading, "warning", only);
  for (const line of findingLines({ ...report, findings: warnings }, style)) say(line);
  const present = await readdir(out).catch(() => []);
  for (const left of leftovers(reading.file.name, present, made, options)) say(`  ${path.join(shown, left)}`);
  return 0;
}

/** Two units of one name would write over each other's files. */
function refuseClashes(files: readonly string[]): void {
  const taken = new Map<string, string>();
  for (const file of files) {
    const name = unitName(file).normalize("NFC").toLowerCase();
    const other = taken.get(name);
    if (other !== undefined) {
      throw new UsageError(
        `${other} and ${file} would be written to the same files; make them into different folders.`,
      );
    }
    taken.set(name, file);
  }
}

function kilobytes(bytes: Uint8Array): string {
  return `${Math.max(1, Math.round(bytes.length / 1024))} KB`;
}
