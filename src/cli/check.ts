import { findingLines, proofLines, rankOf, toJson, worstIn } from "./report";
import { openEngine, readUnitFile } from "./units";
import { UsageError } from "./usage";

/** `cutwork check`: prints findings and proofs; resolves to the exit code. */
export async function check(
  files: readonly string[],
  options: { readonly format: unknown; readonly failOn: unknown },
): Promise<number> {
  const format = choose("--format", options.format ?? "text", ["text", "json"]);
  const failOn = choose("--fail-on", options.failOn ?? "error", ["error", "warning"]);
  if (files.length === 0) throw new UsageError("Name the units to check.");
  const workshop = await openEngine();
  const readings = [];
  for (const file of files) readings.push({ file, reading: await readUnitFile(workshop, file) });
  if (format === "json") {
    process.stdout.write(
      `${JSON.stringify(
        readings.map(({ file, reading }) => toJson(file, reading)),
        null,
        2,
      )}\n`,
    );
  } else {
    for (const { file, reading } of readings) {
      const lines = [
        ...findingLines(file, reading),
        `${file}: ${countText(reading.findings.length)}`,
        ...proofLines(reading),
      ];
      process.stdout.write(`${lines.join("\n")}\n`);
    }
  }
  const worst = Math.max(...readings.map(({ reading }) => worstIn(reading.findings)));
  return worst >= rankOf(failOn) ? 1 : 0;
}

function countText(count: number): string {
  return count === 0 ? "nothing found" : `${count} ${count === 1 ? "finding" : "findings"}`;
}

function choose<T extends string>(name: string, value: unknown, allowed: readonly T[]): T {
  const found = allowed.find((each) => each === value);
  if (found === undefined) throw new UsageError(`${name} can be ${allowed.join(" or ")}, not “${String(value)}”.`);
  return found;
}
