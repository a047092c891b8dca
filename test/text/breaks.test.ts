import assert from "node:assert/strict";
import { breaks } from "../../src/text/breaks";

/** The text with a bar wherever a line may end. */
function barred(text: string): string {
  const bounds = [0, ...breaks(text), text.length];
  return bounds
    .slice(1)
    .map((end, i) => text.slice(bounds[i], end))
    .join("|");
}

describe("line breaks", () => {
  const cases: readonly (readonly [string, string])[] = [
    ["after white space, all of it", "um  |disco, |por |favor"],
    ["not at the ends", "  um |disco  "],
    ["not at a no-break space", "10\u00a0km |ab\u202f! |cd\u2011ef"],
    ["after a hyphen, dash or slash between letters", "guarda-|chuva |o/|a |a–|b |1-2 |-3 |24/7 |l'école"],
    ["after a hyphen that follows a decomposed letter", "e\u0301-|a"],
    ["not before a mark that French sets apart, nor after a quotation mark", "Ça |va ? |« Oui » ; |non"],
    ["at a soft hyphen and a zero width space", "Kranken\u00ad|haus |ab\u200b|cd"],
    ["between ideographs and kana", "日|本|語|を|話|す"],
    ["not before closing marks and small kana", "「猫」|が|い|る。|きょ|う|は、|ロー|マ"],
    ["not after opening marks", "私|は|（猫）|で|す"],
    ["between an ideograph and a word", "第|12|課 |abc|語"],
    ["whole characters only", "𠮷|野|葛\u{e0100}|城"],
    ["none in one word", "tigela"],
    ["none in nothing", ""],
    ["Korean at spaces", "한국어를 |해요"],
  ];
  for (const [name, expected] of cases) {
    it(name, () => assert.equal(barred(expected.replaceAll("|", "")), expected));
  }
});
