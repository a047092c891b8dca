import { parseArgs } from "node:util";
import { version } from "../../package.json";
import { type Command, help, isCommand, say, UsageError, usage } from "./usage";

/** Exit codes: 0 nothing at or above the threshold, 1 findings, 2 the call or a file could not be used. */
async function main(): Promise<number> {
  const [first, ...rest] = process.argv.slice(2);
  if (isCommand(first)) return run(first, rest);
  if (first === "--help" || first === "-h" || first === "help") {
    const [about] = rest;
    if (about !== undefined && !isCommand(about)) throw new UsageError(`There is no command “${about}”.`);
    return answer(about === undefined ? usage : help[about]);
  }
  if (first === "--version" || first === "-v") return answer(`${version}\n`);
  throw new UsageError(first === undefined ? "Say what to do." : `There is no command “${first}”.`);
}

/** Loads a command only when it is called for: help and version need no engine. */
async function run(command: Command, args: readonly string[]): Promise<number> {
  const { values, positionals } = parse(args, options[command]);
  if (values["help"] === true) return answer(help[command]);
  if (command === "check") {
    const { check } = await import("./check");
    return check(positionals, { format: values["format"], failOn: values["fail-on"] });
  }
  if (command === "find" || command === "reprint") {
    const pieces = await import("./find");
    return pieces[command](positionals, values["in"]);
  }
  const { make } = await import("./make");
  const { out, only, trial, merge } = values;
  return make(positionals, { out, only, trial, merge });
}

type Options = NonNullable<NonNullable<Parameters<typeof parseArgs>[0]>["options"]>;

const options: Readonly<Record<Command, Options>> = {
  check: {
    help: { type: "boolean", short: "h" },
    format: { type: "string" },
    "fail-on": { type: "string" },
  },
  make: {
    help: { type: "boolean", short: "h" },
    out: { type: "string" },
    only: { type: "string" },
    trial: { type: "boolean" },
    merge: { type: "boolean" },
  },
  find: { help: { type: "boolean", short: "h" }, in: { type: "string" } },
  reprint: { help: { type: "boolean", short: "h" }, in: { type: "string" } },
};

interface Call {
  readonly values: Readonly<Record<string, unknown>>;
  readonly positionals: readonly string[];
}

function parse(args: readonly string[], known: Options): Call {
  let call: Call;
  try {
    call = parseArgs({ args: [...args], options: known, allowPositionals: true, strict: true });
  } catch (error) {
    throw new UsageError(plainFault(error));
  }
  // Such as a variable of a script that is not set: the folder would be the one that the script stands in.
  const empty = ["out", "in", "only"].find((name) => call.values[name] === "");
  if (empty !== undefined) throw new UsageError(`--${empty} lacks its value.`);
  return call;
}

/** What Node says of a call, in a sentence of ours; with the option that it names. */
function plainFault(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  const code = "code" in error ? error.code : undefined;
  const named = /'[^']*?(-[^'\s]*)(?: <[^']*)?'/.exec(error.message)?.[1];
  if (code === "ERR_PARSE_ARGS_UNKNOWN_OPTION" && named)
    return `There is no option “${named}”. A file whose name begins with a hyphen stands behind “--”.`;
  if (code === "ERR_PARSE_ARGS_INVALID_OPTION_VALUE" && named)
    return / does not take /.test(error.message) ? `${named} takes no value.` : `${named} lacks its value.`;
  return error.message;
}

function answer(text: string): number {
  process.stdout.write(text);
  return 0;
}

// A reader that has seen enough, such as `head`, is no fault.
process.stdout.on("error", ({ code, message }: NodeJS.ErrnoException) => {
  if (code === "EPIPE") process.exit();
  say(`The standard output cannot be written: ${code === "ENOSPC" ? "the disk is full" : message}.`);
  process.exit(2);
});

main().then(
  (code) => {
    process.exitCode = code;
  },
  (error: unknown) => {
    if (error instanceof UsageError) say(`${error.message}\n\n${usage}`);
    else say(error instanceof Error ? error.message : String(error));
    process.exitCode = 2;
  },
);
