import assert from "node:assert/strict";
import { gzipSync } from "node:zlib";
import { indexNumber, readArticles } from "../../support/dictd";

describe("dictionaries in dictd's format", () => {
  it("number places in base 64, most significant digit first", () => {
    assert.deepEqual(["A", "B", "/", "BA", "CgE"].map(indexNumber), [0, 1, 63, 64, 2 * 4096 + 32 * 64 + 4]);
    assert.ok(Number.isNaN(indexNumber("B-")));
  });

  it("are read by bytes: heads without sounds and notes, answers of all senses once each", () => {
    const about = "An invented dictionary\n";
    const first = "óleo /ˈɔlju/ <n, masc>\n1. oil, grease\n2. oil\n";
    const second = "a roda\nthe wheel\n";
    const at = (text: string) =>
      "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/"[Buffer.byteLength(text)];
    const index = [
      `00databaseinfo\tA\t${at(about)}`,
      `oleo\t${at(about)}\t${at(first)}`,
      `óleo\t${at(about)}\t${at(first)}`,
      `roda\tB${String.fromCharCode(65 + Buffer.byteLength(about + first) - 64)}\t${at(second)}`,
      "",
    ];
    assert.ok(Buffer.byteLength(about + first) >= 64 && Buffer.byteLength(about + first) < 90);
    assert.deepEqual(readArticles(index.join("\n"), gzipSync(about + first + second)), [
      { head: "óleo", answers: ["oil", "grease"] },
      { head: "a roda", answers: ["the wheel"] },
    ]);
  });
});
