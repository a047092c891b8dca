import assert from "node:assert/strict";
import { leftovers } from "../../src/make/leftovers";
import type { MadeFile, MakeOptions } from "../../src/make/workshop";
import { readUnitText, testWorkshop, unitOf, word } from "../support/units";

const two = `${unitOf(12, "title: One", "---\nclasses: [4]\n---\n\n")}\n${unitOf(4, "title: Two\nseed: 2").replace("## Words", "## More")}`;
const edited = two.replace(`- ${word(0)}a = ${word(0)}o`, "- mended = neu");

/** A folder in which a unit is made again and again: what each make says of what lies there. */
class Folder {
  private readonly files = new Map<string, Uint8Array>();

  constructor(...others: readonly string[]) {
    for (const name of others) this.files.set(name, new Uint8Array());
  }

  async make(text: string, options: MakeOptions = {}): Promise<string[]> {
    const before = this.files.get("unit.pieces.json");
    const reading = await readUnitText(text, before ? { pieces: new TextDecoder().decode(before) } : {});
    const made: readonly MadeFile[] = await (await testWorkshop()).make(reading, options);
    for (const { name, bytes } of made) this.files.set(name, bytes);
    return leftovers("unit", [...this.files.keys()], made, options);
  }

  delete(name: string): void {
    assert.ok(this.files.delete(name), name);
  }
}

const stale = ["guide", "labels"].map(
  (name) => `unit.${name}.pdf is of an earlier print; make the whole unit to renew it.`,
);

describe("PDFs of earlier prints", () => {
  it("are the guide and the labels after a make of one activity that was edited, until the whole unit is made", async () => {
    const folder = new Folder();
    assert.deepEqual(await folder.make(two), []);
    assert.deepEqual(await folder.make(two, { only: "One" }), []);
    assert.deepEqual(await folder.make(edited, { only: "One" }), stale);
    // Also when the deal has been current for a while, and only what was written before it is taken back.
    assert.deepEqual(await folder.make(edited, { only: "One" }), stale);
    assert.deepEqual(await folder.make(two, { only: "One" }), []);
    await folder.make(edited, { only: "One" });
    assert.deepEqual(await folder.make(edited), []);
    folder.delete("unit.guide.pdf");
    assert.deepEqual(await folder.make(two, { only: "One" }), stale.slice(1));
  });

  it("are not those of a folder where no guide was made", async () => {
    const folder = new Folder();
    assert.deepEqual(await folder.make(two, { only: "One" }), []);
    assert.deepEqual(await folder.make(two, { only: "Two" }), []);
  });

  it("are those of each activity beside merged ones, and the other way round", async () => {
    const gone = (name: string): string =>
      `unit.${name}.pdf is of an earlier print and is not renewed any more; delete it.`;
    const folder = new Folder();
    await folder.make(two);
    const apart = ["One.card", "One.paper", "Two.card", "Two.paper"];
    assert.deepEqual(await folder.make(two, { merge: true }), apart.map(gone));
    for (const name of apart) folder.delete(`unit.${name}.pdf`);
    assert.deepEqual(await folder.make(two), ["card", "paper"].map(gone));
    assert.deepEqual(
      await folder.make(two, { only: "One" }),
      ["card", "paper"].map((name) => `unit.${name}.pdf is of an earlier print; make the whole unit and delete it.`),
    );
    // A title that is no longer there leaves its files.
    for (const name of ["card", "paper"]) folder.delete(`unit.${name}.pdf`);
    assert.deepEqual(await folder.make(two.replace("title: Two", "title: Three")), ["Two.card", "Two.paper"].map(gone));
  });

  it("are none of other units, and no other files", async () => {
    const folder = new Folder(
      "unit.b.pieces.json",
      "unit.b.card.pdf",
      "unit.b.guide.pdf",
      "unity.card.pdf",
      "other.pieces.json",
      "other.guide.pdf",
      "unit.notes.pdf",
      "unit.unit.md",
    );
    assert.deepEqual(await folder.make(two), []);
  });
});
