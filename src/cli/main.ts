import { parseArgs } from "node:util";
import { check } from "./check";
import { make } from "./make";
import { say, UsageError, usage } from "./usage";

/** Exit codes: 0 nothing at or above the threshold, 1 findings, 2 the call or a file could not be used. */
async function main(): Promise<number> {
  const [command, ...rest] = process.argv.slice(2);
  if (command === "check") {
    const { values, positionals } = parse(rest, { format: { type: "string" }, "fail-on": { type: "string" } });
    return check(positionals, { format: values["format"], failOn: values["fail-on"] });
  }
  if (command === "make") {
    const { values, positionals } = parse(rest, {
      out: { type: "string" },
      only: { type: "string" },
      trial: { type: "boolean" },
      merge: { type: "boolean" },
    });
    return make(positionals, {
      out: values["out"],
      only: values["only"],
      trial: values["trial"],
      merge: values["merge"],
    });
  }
  if (command === "--help" || command === "help") {
    process.stdout.write(usage);
    return 0;
  }
  throw new UsageError(command === undefined ? "Say what to do." : `There is no command “${command}”.`);
}

type Options = NonNullable<Parameters<typeof parseArgs>[0]>["options"];

function parse(
  args: readonly string[],
  options: NonNullable<Options>,
): { values: Record<string, unknown>; positionals: string[] } {
  try {
    return parseArgs({ args: [...args], options, allowPositionals: true, strict: true });
  } catch (error) {
    throw new UsageError(error instanceof Error ? error.message : String(error));
  }
}

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
