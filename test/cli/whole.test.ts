import assert from "node:assert/strict";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync } from "node:fs";
import path from "node:path";
import { unitOf } from "../support/units";
import { Desk } from "./desk";

const digest = (file: string): string => createHash("sha256").update(readFileSync(file)).digest("hex");

/* An export is whole or it is not there, whatever comes in its way. */

describe("what the command line writes", function () {
  this.timeout(60_000);
  let desk: Desk;
  beforeEach(() => {
    desk = new Desk();
  });
  afterEach(() => desk.clear());

  const out = (): string => path.join(desk.folder, "out");
  const content = (): Record<string, string> =>
    Object.fromEntries(
      readdirSync(out(), { withFileTypes: true }).map((entry) => [
        entry.name,
        entry.isFile() ? digest(path.join(out(), entry.name)) : "a folder",
      ]),
    );

  it("is as it was before where the last file cannot take its place", () => {
    desk.write("a.unit.md", unitOf(4, ""));
    assert.equal(desk.cutwork(["make", "a.unit.md"]).code, 0);
    rmSync(path.join(out(), "a.pieces.json"));
    mkdirSync(path.join(out(), "a.pieces.json"));
    const before = content();
    desk.write("a.unit.md", unitOf(4, "seed: 9"));
    const { code, err } = desk.cutwork(["make", "a.unit.md"]);
    assert.deepEqual([code, err], [2, `${path.join(out(), "a.pieces.json")} cannot be written: it is a folder.\n`]);
    assert.deepEqual(content(), before);
  });

  // Elsewhere no signal can be sent: the process is ended there and then.
  const itWithSignals = process.platform === "win32" ? it.skip : it;

  itWithSignals("is as it was before when Ctrl-C comes half way, and the command ends by it", async () => {
    const sections = Array.from({ length: 20 }, (_, i) => unitOf(4, `seed: ${i}`).replace("Words", `Words ${i}`));
    desk.write("a.unit.md", sections.join("\n"));
    const half = (): boolean => {
      const names = existsSync(out()) ? readdirSync(out()) : [];
      // When the file of pieces has taken its place, it is too late.
      return names.filter((name) => name.endsWith(".tmp")).length > 3 && !names.includes("a.pieces.json");
    };
    const interrupted = async (prepare: () => void): Promise<NodeJS.Signals | null> => {
      for (let tries = 20; tries > 0; tries--) {
        rmSync(out(), { recursive: true, force: true });
        prepare();
        const signal = await desk.interrupt(["make", "a.unit.md"], half);
        // On a busy machine all is done before the signal comes.
        if (signal !== null && !existsSync(path.join(out(), "a.pieces.json"))) return signal;
      }
      return null;
    };
    assert.equal(await interrupted(() => undefined), "SIGINT");
    assert.equal(existsSync(out()), false, "nor does the folder stay that was made for it");
    let before: Record<string, string> = {};
    const older = (): void => {
      desk.write("out/a.guide.pdf", "an older one");
      before = content();
    };
    assert.equal(await interrupted(older), "SIGINT");
    assert.deepEqual(content(), before);
  });
});
