import assert from "node:assert/strict";
import { paperPages } from "../support/guide";
import { morning, storyUnit } from "./unit";

/* Printed strips have letters, blank ones numbers: directions speak of those that there are. */

const signs = {
  en: ["letters", "numbers"],
  es: ["letras", "números"],
  fr: ["lettres", "numéros"],
  de: ["Buchstaben", "Nummern"],
  pt: ["letras", "números"],
} as const;

/** The step about the slip: the one that speaks of the first and the last strip. */
async function step(lang: string, options: string): Promise<string> {
  const front = `teaches: pt\nexplains: ${lang}\nclasses: [4]\n`;
  const said = (await paperPages(storyUnit(morning, `slip: order\n${options}`, front))).join(" ");
  const [, steps = ""] = new RegExp(`Directions \\(${lang}\\)(.*?)(Directions|Answers|Take care)`).exec(said) ?? [];
  return (
    steps
      .split(/ \d /)
      .find((each) =>
        /first to the last|primera a la última|première à la|ersten bis zum|primeira à última/.test(each),
      ) ?? ""
  );
}

describe("the step about the recording slip", () => {
  for (const [lang, [letters, numbers]] of Object.entries(signs))
    it(`speaks of letters, and of numbers where there are blank strips (${lang})`, async () => {
      const printed = await step(lang, "");
      assert.ok(printed.includes(letters) && !printed.includes(numbers), printed);
      const both = await step(lang, "blanks: 2");
      assert.ok(both.includes(letters) && both.includes(numbers), both);
    });
});

describe("what the guide says of the strips that show their places", () => {
  const events = ["Ela sai.", "Ela rema.", "Ela vê o cais.", "Ela para.", "Ela amarra o barco.", "Ela volta."];
  const help = async (story: readonly string[]): Promise<string> => {
    const lines = story.map((event, i) => `${i + 1}. ${event}`);
    const said = (await paperPages(storyUnit(lines, "levels: [gentle, hard]", "teaches: pt\nexplains: en\n"))).join(
      " ",
    );
    return /In the gentle sets ([^.]*)\./.exec(said)?.[1] ?? "";
  };

  it("names the first and the last only where they are these", async () => {
    assert.equal(await help(events), "the first and the last strip show their places");
    const [first = ""] = events;
    assert.equal(await help([...events, first]), "two strips show their places");
    assert.equal(await help(events.slice(0, 4)), "one strip shows its place");
  });
});
