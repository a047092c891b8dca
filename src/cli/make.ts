import path from "node:path";
import { BlockedError, type MadeFile } from "../make/workshop";
import { findingLines, proofLines } from "./report";
import { openEngine, readUnitFile } from "./units";
import { say, UsageError } from "./usage";
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
  const out = path.resolve(typeof call.out === "string" ? call.out : "out");
  const only = typeof call.only === "string" ? call.only : undefined;
  const options = { ...(only === undefined ? {} : { only }), trial: call.trial === true, merge: call.merge === true };
  const workshop = await openEngine();
  let code = 0;
  for (const file of files) {
    const reading = await readUnitFile(workshop, file, out);
    if (only !== undefined && !reading.activities.some(({ make: kind, title }) => kind === only || title === only)) {
      throw new UsageError(`${file} has no activity or kind “${only}”.`);
    }
    let made: readonly MadeFile[];
    try {
      made = await workshop.make(reading, options);
    } catch (error) {
      if (!(error instanceof BlockedError)) throw error;
      for (const line of findingLines(file, { ...reading, findings: error.findings })) say(line);
      say(`${file}: nothing was made; mend what stands above first.`);
      code = 1;
      continue;
    }
    await writeWhole(out, made);
    const shown = path.relative(process.cwd(), out) || ".";
    const lines = [
      `${file}:`,
      ...proofLines(reading),
      ...made.map(({ name, bytes }) => `  ${path.join(shown, name)} (${kilobytes(bytes)})`),
    ];
    process.stdout.write(`${lines.join("\n")}\n`);
  }
  return code;
}

function kilobytes(bytes: Uint8Array): string {
  return `${Math.max(1, Math.round(bytes.length / 1024))} KB`;
}
