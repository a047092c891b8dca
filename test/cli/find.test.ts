import assert from "node:assert/strict";
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import type { PiecesFile } from "../../src/make/pieces-file";
import { workshopUnit } from "../activities/material";
import { Desk } from "./desk";

/* `find` and `reprint` of the built command, on what `make` wrote. */

describe("finding from the command line", function () {
  this.timeout(60_000);
  let desk: Desk;
  beforeEach(() => {
    desk = new Desk();
  });
  afterEach(() => desk.clear());

  function made(text: string): PiecesFile {
    const { code, err } = desk.cutwork(["make", desk.write("one.unit.md", text)]);
    assert.equal(code, 0, err);
    return JSON.parse(readFileSync(path.join(desk.folder, "out/one.pieces.json"), "utf8"));
  }

  it("says of a deal code what was printed, and levels only where there are several", () => {
    const two = made(
      workshopUnit("tiles", "words", "grid: 2 x 2\nlevels: [gentle, hard]\ncopies: {gentle: 1, hard: 4}"),
    );
    const codes = two.deals.map(({ code }) => code);
    assert.equal(codes.length, 2);
    const { code, out } = desk.cutwork(["find", codes[0]?.toLowerCase() ?? "", codes[1] ?? ""]);
    assert.equal(code, 0);
    const title = two.deals[0]?.activity;
    assert.deepEqual(out.trim().split("\n"), [
      `${codes[0]}: one, “${title}” (tiles, gentle, version 1), 1 set`,
      `${codes[1]}: one, “${title}” (tiles, hard, version 1), 4 sets`,
    ]);
    assert.match(desk.cutwork(["find", two.pieces[0]?.mark ?? ""]).out, /\(tiles, gentle, version 1\)\n/);
    const master = made(workshopUnit("sort", "piles", "copies: by copier"));
    const [deal] = master.deals;
    assert.ok(deal);
    const said = `one, “${deal.activity}” (sort, version 1)`;
    assert.equal(desk.cutwork(["find", deal.code]).out, `${deal.code}: ${said}, a master for copying\n`);
    const [piece] = master.pieces;
    assert.ok(desk.cutwork(["find", piece?.mark ?? ""]).out.startsWith(`${piece?.mark}: ${said}\n`));
    // The tiles have become an earlier print, whose levels are told as before.
    assert.equal(
      desk.cutwork(["find", codes[1] ?? ""]).out,
      `${codes[1]}: one, “${title}” (tiles, hard, version 1), an earlier print\n`,
    );
  });

  it("says where a piece belongs, in words", () => {
    const saidOf = (text: string, index: number): string => {
      const mark = made(text).pieces[index]?.mark ?? "";
      return /^ {2}belongs {2}(.*)$/m.exec(desk.cutwork(["find", mark]).out)?.[1] ?? "";
    };
    const tile = saidOf(workshopUnit("tiles", "words", "grid: 2 x 2"), 2);
    const file: PiecesFile = JSON.parse(readFileSync(path.join(desk.folder, "out/one.pieces.json"), "utf8"));
    const { row, column } = (file.pieces[2]?.solution ?? {}) as { row: number; column: number };
    assert.equal(tile, `row ${row + 1}, column ${column + 1}`);
    assert.match(saidOf(workshopUnit("sort", "piles"), 5), /^“[^”]+”$/);
    assert.match(saidOf(workshopUnit("strips", "events"), 0), /^place \d/);
    assert.match(saidOf(workshopUnit("rebuild", "sentences"), 0), /^packet 1, place \d/);
    const board = saidOf(workshopUnit("board", "words", "grid: 2 x 2"), 0);
    assert.equal(board.split(" · ").length, 4, board);
    const { pieces } = made(workshopUnit("loop", "words"));
    const { out } = desk.cutwork(["find", pieces[0]?.mark ?? ""]);
    assert.ok(out.includes(`\n  belongs  before ${pieces[0]?.solution}\n`), out);
  });

  it("says 1 for a mark that nothing has, and whose its code is", () => {
    const { deals, pieces } = made(workshopUnit("board", "words", "grid: 3 x 3\ncopies: 2"));
    const [deal] = deals;
    assert.ok(deal);
    const whose = `Its code is that of one, “${deal.activity}” (board, version 1), whose marks look like ${pieces[0]?.mark}.`;
    for (const command of ["find", "reprint"]) {
      const { code, err } = desk.cutwork([command, `${deal.code}-AC`]);
      assert.equal(code, 1);
      assert.ok(err.includes(whose), err);
      assert.equal(desk.cutwork([command, "XXXXXX"]).code, 1);
    }
    // A code says what it is, and is nothing to print.
    assert.equal(
      desk.cutwork(["find", deal.code]).out,
      `${deal.code}: one, “${deal.activity}” (board, version 1), 2 sets\n`,
    );
    assert.equal(desk.cutwork(["reprint", deal.code]).code, 1);
    assert.ok(!readdirSync(path.join(desk.folder, "out")).some((name) => name.startsWith("reprint")));
    const again = desk.cutwork(["reprint", pieces[1]?.mark ?? ""]);
    assert.equal(again.out, `${path.join("out", `reprint.${pieces[1]?.mark}.card.pdf`)}: 1 piece\n`);
  });
});
