import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { tests as spec } from "commonmark-spec";
import MarkdownIt from "markdown-it";
import { parsingBlocks } from "../../src/unit/inline";

const whole = new MarkdownIt("default", { html: true });
whole.core.ruler.enableOnly(["normalize", "block"]);

/** Tokens of a text that is parsed block by block, with another one parsed at each pause. */
function inSteps(text: string): readonly unknown[] {
  const steps = parsingBlocks(text, {});
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    for (const _ of parsingBlocks("# a\n\n- b\n\n> c\n", {}));
  }
}

describe("blocks parsed one after the other", () => {
  const samples = ["am-markt", "bicycle-workshop"].map((name) => readFileSync(`samples/${name}.unit.md`, "utf8"));
  const examples = spec.map(({ markdown }) => markdown);
  for (const [name, texts] of [
    ["samples", samples],
    ["examples of the Markdown specification", examples],
    ["examples one below the other", examples.map((text, i) => `${text}\n\n\n${examples[i + 1] ?? ""}`)],
  ] as const) {
    it(`are those of the whole text: ${name}`, () => {
      assert.ok(texts.length > 0);
      for (const text of texts) assert.deepEqual(inSteps(text), whole.parse(text, {}), text);
    });
  }

  it("pause after each that stands in no other", () => {
    assert.equal([...parsingBlocks("# a\n\n- b\n- c\n\n> d\n\ne\nf\n", {})].length, 5);
  });
});
