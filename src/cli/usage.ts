/** A call that cannot be understood. The message is a sentence. */
export class UsageError extends Error {}

/** A file that cannot be read or written. The message is a sentence that names it; other files go on. */
export class FileError extends Error {}

const commands = ["check", "make", "find", "reprint"] as const;

export type Command = (typeof commands)[number];

export function isCommand(word: string | undefined): word is Command {
  return commands.some((command) => command === word);
}

const synopses: Readonly<Record<Command, string>> = {
  check: "cutwork check FILE… [--format text|json|sarif] [--fail-on error|warning]",
  make: "cutwork make FILE… [--out DIR] [--only KIND-OR-TITLE] [--trial] [--merge]",
  find: "cutwork find MARK… [--in DIR]",
  reprint: "cutwork reprint MARK… [--in DIR]",
};

const exits = "Exit: 0 nothing at or above the threshold, 1 findings, 2 the call or a file could not be used.";

const named = `FILE is a unit, a folder (all units in it and below it, but not in hidden ones), or a name with “*” and “?”, “**” for any
folders, where no shell has put names in its place.`;

export const usage = `${synopses.check}
    Reads units, proves their puzzles and prints what is wrong. “-” is standard input.
${synopses.make}
    Writes the PDFs and the pieces file, into the folder “out” where --out names no other.
${synopses.find}
    Says what the piece with this mark is, where it was printed and where it belongs.
${synopses.reprint}
    Prints lost pieces again, the same in text, size and mark, also those of an earlier print.
cutwork --version
cutwork COMMAND --help
    Says more about a command.

${exits}
`;

export const help: Readonly<Record<Command, string>> = {
  check: `${synopses.check}

Reads units, proves their puzzles and prints what is wrong. “-” is standard input. A file that cannot be read is reported, and
the others are checked all the same.

${named}

  --format text   (default) for people and problem matchers: FILE:LINE:COLUMN SEVERITY CODE MESSAGE, below it the source;
                  coloured in a terminal, or where FORCE_COLOR is set, but never where NO_COLOR is set
  --format json   for programs: findings with fixes, ranges as in the Language Server Protocol, and the proofs:
                  for each deal its status (one, several, none, unsettled), count and second solution; for a loop also
                  smaller, whose status says whether some cards can close a circle while others are left over (some, with
                  its cards by their places in the full circle, or none)
  --format sarif  for programs: a log in the Static Analysis Results Interchange Format, version 2.1.0
  --fail-on error     (default) exit with 1 where there is an error
  --fail-on warning   exit with 1 where there is a warning or an error

Exit: 0 nothing at or above the threshold, 1 findings, 2 the call or a file could not be used.
`,
  make: `${synopses.make}

Writes the PDFs and the pieces file of units. All files of a unit are written or none; a unit with errors is not made, and the
others are made all the same. “-” is standard input.

${named}

  --out DIR             the folder to write into, “out” by default; it is made where it is missing
  --only KIND-OR-TITLE  only the activities of one kind, or the one of a title
  --trial               one set of everything
  --merge               one file a stock for the whole unit

Exit: 0 all made, 1 a unit has errors, 2 the call or a file could not be used.
`,
  find: `${synopses.find}

Looks in the pieces files (NAME.pieces.json) of a folder for the mark that is printed on a piece. Case, hyphens and spaces do
not count. Says the unit, activity, level and version, what the piece shows, where it was printed and where it belongs. Of a
deal code alone, the first six characters, says what was printed and how many sets of it.

  --in DIR  the folder that the PDFs were written to, “out” by default

Exit: 0 found, 1 a mark is not known, 2 the call or a file could not be used.
`,
  reprint: `${synopses.reprint}

Writes reprint.MARK.card.pdf into the folder, with just these pieces: the same text, size and mark as on the sheet that they
were cut from, also where the unit has changed since. Where a mark is not known, nothing is written.

  --in DIR  the folder that the PDFs were written to, “out” by default

Exit: 0 written, 1 a mark is not known, 2 the call or a file could not be used.
`,
};

/** A line to standard error. */
export function say(line: string): void {
  process.stderr.write(`${line}\n`);
}
