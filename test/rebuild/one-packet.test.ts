import assert from "node:assert/strict";
import { paperPages } from "../support/guide";
import { ordering, sentenceUnit } from "./unit";

/* Nothing is changed or taken next where there is one packet. */

const another = {
  en: "and take another one",
  es: "y coged otro",
  fr: "prenez-en une autre",
  de: "nehmt ein anderes",
  pt: "tirem outro",
} as const;

const guide = async (lines: readonly string[], explains: string, options = ""): Promise<string> =>
  (await paperPages(sentenceUnit(lines, options, `teaches: pt\nexplains: ${explains}\nclasses: [4]\n`))).join(" ");

describe("rebuild of one packet", () => {
  for (const [lang, words] of Object.entries(another))
    it(`has no further packet to take (${lang})`, async () => {
      const [one, two] = [await guide(ordering.slice(3, 4), lang), await guide(ordering.slice(3, 5), lang)];
      assert.ok(two.includes(words), two);
      assert.ok(!one.includes(words), one);
    });

  it("is told of as one, with one bag for each set", async () => {
    const one = await guide(ordering.slice(3, 4), "en");
    assert.match(one, /Learners lay the cards of the packet so that they make a sentence\. /);
    assert.match(one, /the pieces, a bag or envelope for each set/);
    assert.match(
      await guide(ordering.slice(3, 5), "en", "packet: 2"),
      /of the packet so that they make 2 sentences\. /,
    );
    const two = await guide(ordering.slice(3, 5), "en");
    assert.match(two, /then change the packet: 2 sentences in 2 packets/);
    assert.match(two, /2 bags or envelopes a set, one for each packet/);
  });
});
