import type { Severity } from "../base/finding";
import type { Reading } from "../make/workshop";
import { namedFiles } from "./named-files";
import { type FileReport, settingsReports, unitReport } from "./report";
import { countText, styleFor, type TextStyle } from "./text";
import { openEngine, readUnitFile } from "./units";
import { FileError, say, UsageError } from "./usage";
import { type Writer, writers } from "./written";

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
  const writer = writers[format](print, style);
  const workshop = await openEngine();
  const gathered = new Gathered(writer);
  for (const file of await namedFiles(files)) {
    try {
      gathered.add(file, await readUnitFile(workshop, file));
    } catch (error) {
      if (!(error instanceof FileError)) throw error;
      gathered.addUnread(file, error.message);
      say(error.message);
    }
  }
  const { unread, severities } = gathered.end(style);
  if (unread > 0) return 2;
  return severities.some((severity) => failing[failOn].includes(severity)) ? 1 : 0;
}

/** What is kept of the files that were read: of a reading nothing but what is said of it. */
export class Gathered {
  private files = 0;
  private unread = 0;
  private readonly severities: Severity[] = [];
  /** By their paths: each is told once, however many units it is about. */
  private readonly settings = new Map<string, Reading["elsewhere"][number]>();

  constructor(private readonly writer: Writer) {}

  add(file: string, reading: Reading): void {
    this.files++;
    for (const each of reading.elsewhere) this.settings.set(each.path, each);
    const report = unitReport(file, reading);
    this.tell(report);
    this.writer.add(report);
  }

  addUnread(file: string, error: string): void {
    this.files++;
    this.unread++;
    this.writer.addUnread(file, error);
  }

  /** Writes what is left. */
  end({ paint }: TextStyle): { readonly unread: number; readonly severities: readonly Severity[] } {
    const { files, unread, severities } = this;
    const settings = settingsReports([{ elsewhere: [...this.settings.values()] }]);
    for (const report of settings) this.tell(report);
    const counts = countText(
      severities.map((severity) => ({ severity })),
      paint,
    );
    const total = `${files} files: ${counts}${unread === 0 ? "" : `, ${unread} not read`}`;
    this.writer.end(settings, files > 1 ? total : undefined);
    return { unread, severities };
  }

  private tell({ findings }: FileReport): void {
    for (const { severity } of findings) this.severities.push(severity);
  }
}

const failing: Readonly<Record<"error" | "warning", readonly Severity[]>> = {
  error: ["error"],
  warning: ["error", "warning"],
};

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
