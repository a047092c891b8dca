import assert from "node:assert/strict";
import { readPrint } from "../support/print";
import { readUnitText, testWorkshop, unitOf } from "../support/units";

const front = (classes: string): string => `---\n${classes}---\n\n`;

/** The texts of the first page of a board's papers. */
async function list(classes: string): Promise<string> {
  const unit = unitOf(12, "title: Bench\nslip: none", front(classes)).replace("make: tiles", "make: board");
  const files = await (await testWorkshop()).make(await readUnitText(unit), {});
  const pages = await readPrint(files.find(({ name }) => name.endsWith(".paper.pdf"))?.bytes ?? new Uint8Array());
  return (
    pages.map(({ texts }) => texts.map(({ text }) => text).join(" ")).find((text) => text.includes("list: Bench")) ?? ""
  );
}

describe("a caller's list", () => {
  it("says for whom it is, also where there is one class", async () => {
    assert.match(await list("classes: [23]\n"), /For 23 learners at 11 boards/);
    assert.match(await list("classes: [23, 8]\n"), /For hour 1 of 2, 23 learners at 11 boards/);
    // Fewer boards, as at a station: then not all of the class sit at one.
    assert.match(await list("classes: [23]\ncopies: 2\n"), /For 23 learners Boards/);
    const unknown = await list("teaches: pt\n");
    assert.match(unknown, /Say each one twice/);
    assert.doesNotMatch(unknown, / For /);
  });
});
