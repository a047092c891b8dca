import assert from "node:assert/strict";
import fc from "fast-check";
import { NotWritten, type OutputFolder, writeWhole } from "../../src/make/whole-files";

/** A folder in memory in which the operation with a given number fails. */
class ShakyFolder implements OutputFolder {
  readonly files: Map<string, string>;
  private operations = 0;
  unmade = 0;

  constructor(
    files: Readonly<Record<string, string>>,
    private readonly failAt = Number.POSITIVE_INFINITY,
  ) {
    this.files = new Map(Object.entries(files));
  }

  get count(): number {
    return this.operations;
  }

  get content(): Record<string, string> {
    return Object.fromEntries([...this.files].sort());
  }

  async names(): Promise<readonly string[]> {
    this.step();
    return [...this.files.keys()];
  }

  async write(name: string, bytes: Uint8Array): Promise<void> {
    // A full disk leaves half a file behind.
    this.files.set(name, "half");
    this.step();
    this.files.set(name, new TextDecoder().decode(bytes));
  }

  async rename(from: string, to: string): Promise<void> {
    this.step();
    const content = this.files.get(from);
    if (content === undefined) throw new Error("not found");
    this.files.delete(from);
    this.files.set(to, content);
  }

  async remove(name: string): Promise<void> {
    this.step();
    if (!this.files.delete(name)) throw new Error("not found");
  }

  async unmake(): Promise<void> {
    this.unmade++;
  }

  private step(): void {
    if (this.operations++ === this.failAt) throw new Error("EBUSY: resource busy");
  }
}

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const files = [
  { name: "a.pdf", bytes: bytes("new a") },
  { name: "b.pdf", bytes: bytes("new b") },
  { name: "c.json", bytes: bytes("new c") },
];
const before = { "a.pdf": "old a", "c.json": "old c", "mine.txt": "mine" };
const after = { "a.pdf": "new a", "b.pdf": "new b", "c.json": "new c", "mine.txt": "mine" };

describe("writing files whole or not at all", () => {
  it("replaces, adds, leaves the rest alone and no temporary file behind", async () => {
    const folder = new ShakyFolder(before);
    await writeWhole(folder, files);
    assert.deepEqual(folder.content, after);
    assert.equal(folder.unmade, 0);
  });

  it("puts everything back, whichever step fails", async () => {
    const whole = new ShakyFolder(before);
    await writeWhole(whole, files);
    let failures = 0;
    for (let failAt = 0; failAt < whole.count; failAt++) {
      const folder = new ShakyFolder(before, failAt);
      try {
        await writeWhole(folder, files);
      } catch (error) {
        assert.ok(error instanceof NotWritten);
        assert.deepEqual(folder.content, before, `step ${failAt}`);
        assert.equal(folder.unmade, 1, "a folder made for it goes too");
        failures++;
        continue;
      }
      // Only the clearing away of former files may fail without an error.
      const { content } = folder;
      for (const [name, text] of Object.entries(after)) assert.equal(content[name], text);
    }
    // Three writes, a listing, and five renames.
    assert.equal(failures, 9);
  });

  it("says which file it was and why", async () => {
    const folder = new ShakyFolder({}, 1);
    await assert.rejects(writeWhole(folder, files), (error: unknown) => {
      assert.ok(error instanceof NotWritten);
      assert.equal(error.file, "b.pdf");
      assert.match(error.message, /EBUSY/);
      return true;
    });
  });

  it("stops when it is told to, with nothing changed", async () => {
    const folder = new ShakyFolder(before);
    const stop = (name: string): void => {
      if (name === "b.pdf") throw new Error("cancelled");
    };
    await assert.rejects(writeWhole(folder, files, stop), /cancelled/);
    assert.deepEqual(folder.content, before);
  });

  it("holds for any files and any failing step", async () => {
    const name = fc.constantFrom("a", "b", "c", "d", "e");
    await fc.assert(
      fc.asyncProperty(
        fc.dictionary(name, fc.string()),
        fc.uniqueArray(name),
        fc.nat(40),
        async (had, made, failAt) => {
          const folder = new ShakyFolder(had, failAt);
          const start = folder.content;
          const failed = await writeWhole(
            folder,
            made.map((each) => ({ name: each, bytes: bytes(`new ${each}`) })),
          ).then(
            () => false,
            () => true,
          );
          if (failed) assert.deepEqual(folder.content, start);
          else for (const each of made) assert.equal(folder.content[each], `new ${each}`);
        },
      ),
    );
  });
});
