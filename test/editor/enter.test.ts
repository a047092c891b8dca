import assert from "node:assert/strict";
import configuration from "../../syntaxes/language-configuration.json";

/** What Enter writes into the next line: at the end of a line, or before more of it. */
function next(line: string, more = ""): string | undefined {
  const rule = configuration.onEnterRules.find(
    ({ beforeText, afterText = "" }: { beforeText: string; afterText?: string }) =>
      new RegExp(beforeText).test(line) && new RegExp(afterText).test(more),
  );
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

describe("Enter right before the words of an item", () => {
  for (const [line, wanted] of [
    ["- ", "- "],
    ["  *\t", "* "],
    ["- [x] ", "- [x] "],
    ["+ [X]", "+ [x] "],
    ["* [ ] ", "* [ ] "],
    ["1. ", "2. "],
    ["39. ", "40. "],
    ["50. ", "1. "],
    ["  9) ", "10) "],
    ["20) ", "1) "],
    ["", undefined],
    ["  ", undefined],
  ] as const) {
    it(`${line}| goes on with ${wanted ?? "nothing"}: an item stays one, as true as it was`, () =>
      assert.equal(next(line, line === "+ [X]" ? " sai." : "sai."), wanted));
  }
});

/* Who parts a sentence in two says no less of the second half; a new statement is false until it is said to be true. */
describe("Enter among the words of a statement", () => {
  for (const [line, more, wanted] of [
    ["- [x] Ela sai.", " Ele fica.", "- [x] "],
    ["  * [X] Ela", " sai.", "* [x] "],
    ["+ [x] Ela sai.", "Ele fica.", "+ [x] "],
    ["- [ ] Ela sai.", " Ele fica.", "- [ ] "],
    ["- [x] Ela sai.", " ", "- [ ] "],
    ["- [x] Ela sai.", " <!-- by: K7 -->", "- [ ] "],
  ] as const) {
    it(`${line}|${more} goes on with ${wanted}`, () => assert.equal(next(line, more), wanted));
  }
});
