/** A call that cannot be understood. The message is a sentence. */
export class UsageError extends Error {}

export const usage = `cutwork check FILE… [--format text|json] [--fail-on error|warning]
    Reads units, proves their puzzles and prints what is wrong. “-” is standard input.
cutwork make FILE… [--out DIR] [--only KIND-OR-TITLE] [--trial] [--merge]
    Writes the PDFs and the pieces file, into the folder “out” where --out names no other.
      --trial  one set of everything      --merge  one file a stock for the whole unit

Exit: 0 nothing found, 1 findings, 2 the call or a file could not be used.
`;

/** A line to standard error. */
export function say(line: string): void {
  process.stderr.write(`${line}\n`);
}
