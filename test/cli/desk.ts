import { spawn, spawnSync } from "node:child_process";
import { closeSync, mkdirSync, mkdtempSync, openSync, realpathSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { text } from "node:stream/consumers";

const command = path.join(__dirname, "../../dist/cli.js");

export interface Outcome {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** An empty folder, in which the built command is called. */
export class Desk {
  readonly folder = realpathSync(mkdtempSync(path.join(tmpdir(), "cutwork-cli-")));

  /** Runs `dist/cli.js`. Nothing of the caller's own wishes about colours reaches it, only those in `env`. */
  cutwork(
    args: readonly string[],
    input: string | Uint8Array = "",
    env: Readonly<Record<string, string>> = {},
  ): Outcome {
    const { NO_COLOR: _, FORCE_COLOR: __, ...inherited } = process.env;
    const { status, stdout, stderr } = spawnSync(process.execPath, [command, ...args], {
      cwd: this.folder,
      input,
      env: { ...inherited, ...env },
      encoding: "utf8",
    });
    return { code: status, out: stdout, err: stderr };
  }

  /** Runs `dist/cli.js` with its standard output into a file that is there. */
  printingTo(file: string, args: readonly string[]): Outcome {
    const output = openSync(file, "w");
    const { status, stderr } = spawnSync(process.execPath, [command, ...args], {
      cwd: this.folder,
      stdio: ["ignore", output, "pipe"],
      encoding: "utf8",
    });
    closeSync(output);
    return { code: status, out: "", err: stderr };
  }

  /** Runs `dist/cli.js` for a reader that closes the pipe after the first bytes, as `head` does. */
  async readStart(args: readonly string[]): Promise<Outcome> {
    const child = spawn(process.execPath, [command, ...args], { cwd: this.folder });
    child.stdout.once("data", () => child.stdout.destroy());
    const ended = new Promise<number | null>((resolve) => child.once("close", resolve));
    const err = await text(child.stderr);
    return { code: await ended, out: "", err };
  }

  /**
   * Runs `dist/cli.js` and presses Ctrl-C while `now` says so; resolves to the signal that ended it, or null where it had ended before:
   * on a busy machine nobody may have looked in time.
   */
  async interrupt(args: readonly string[], now: () => boolean): Promise<NodeJS.Signals | null> {
    const child = spawn(process.execPath, [command, ...args], { cwd: this.folder, stdio: "ignore" });
    const ended = new Promise<NodeJS.Signals | null>((resolve) => child.once("close", (_, signal) => resolve(signal)));
    const look = (): void => {
      if (child.exitCode !== null) return;
      if (!now()) {
        setImmediate(look);
        return;
      }
      // It stands still while somebody looks again.
      child.kill("SIGSTOP");
      if (now()) child.kill("SIGINT");
      child.kill("SIGCONT");
    };
    look();
    return ended;
  }

  /** Writes a file, folders before it included; gives its name back. */
  write(name: string, content: string | Uint8Array): string {
    mkdirSync(path.dirname(path.join(this.folder, name)), { recursive: true });
    writeFileSync(path.join(this.folder, name), content);
    return name;
  }

  clear(): void {
    rmSync(this.folder, { recursive: true, force: true });
  }
}
