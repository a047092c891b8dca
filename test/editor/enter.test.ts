import assert from "node:assert/strict";
import configuration from "../../syntaxes/language-configuration.json";

/** What Enter at the end of a line writes into the next one. */
function next(line: string): string | undefined {
  const rule = configuration.onEnterRules.find(({ beforeText }) => new RegExp(beforeText).test(line));
  return rule?.action.appendText;
}

describe("Enter at the end of an item", () => {
  for (const [line, wanted] of [
    ["- roda = wheel", "- "],
    ["  * Uma roda.", "* "],
    ["- [x] A roda gira.", "- [ ] "],
    ["1. Ela sai.", "2. "],
    ["39. Ela sai.", "40. "],
    ["40. Ela sai.", "1. "],
    ["1) Ela sai.", "2) "],
    ["10) Ela sai.", "11) "],
    ["40) Ela sai.", "1) "],
    ["-\troda = wheel", "- "],
    ["-\t[x] A roda gira.", "- [ ] "],
    ["*   [ ] A roda gira.", "* [ ] "],
    ["1.\tEla sai.", "2. "],
    ["10)\tEla sai.", "11) "],
    ["- ", undefined],
    ["-\t", undefined],
    ["-   [ ] ", undefined],
    ["2) ", undefined],
    ["A note", undefined],
  ] as const) {
    it(`${line} goes on with ${wanted ?? "nothing"}`, () => assert.equal(next(line), wanted));
  }
});
