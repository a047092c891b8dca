import assert from "node:assert/strict";
import { applyEdits, readUnitText } from "../support/units";

/* What is offered where a character cannot be printed leaves a unit that can. */

const unit = (lines: readonly string[], activity: string): string =>
  `---\nteaches: pt\nexplains: en\n---\n\n## Workshop\n\n${lines.join("\n")}\n\n\`\`\`activity\n${activity}\n\`\`\`\n`;

/** What the fixes of the first character make of a text, by their titles; none of them leads to an error. */
async function offers(text: string): Promise<Record<string, string>> {
  const { findings } = await readUnitText(text);
  const finding = findings.find(({ code }) => code === "missing-glyph");
  assert.ok(finding);
  const errors = (all: typeof findings): string[] =>
    all.filter(({ severity }) => severity === "error").map(({ code }) => code);
  const made: Record<string, string> = {};
  for (const { title, edits } of finding.fixes) {
    const after = applyEdits(text, edits);
    assert.deepEqual(errors((await readUnitText(after)).findings), errors(findings).slice(1), title);
    made[title] = after;
  }
  return made;
}

describe("a character that cannot be printed", () => {
  const wheel = "- A roda | gira. = The wheel turns.";

  it("is taken out of a sentence and of all its accepted orders at once", async () => {
    const orders = ["- Hoje ☀ | o sino | toca ☀ muito. = a", "  - O sino | toca ☀ muito | hoje ☀.", wheel];
    const text = unit(orders, "make: rebuild");
    assert.deepEqual(await offers(text), { "Take “☀” out": text.replaceAll(" ☀", "") });
  });

  it("is written otherwise in all of them", async () => {
    const orders = ["- ａgora | o sino | toca. = a", "  - O sino | toca | ａgora.", wheel];
    const text = unit(orders, "make: rebuild");
    assert.deepEqual(await offers(text), {
      "Write “a” instead": text.replaceAll("ａ", "a"),
      "Take “ａ” out": text.replaceAll("ａ", ""),
    });
  });

  it("is written otherwise unasked only where the text around has what stands for it", async () => {
    for (const [text, sure] of [
      ["roda，mola", true],
      ["ключ，міст", true],
      ["车，（红）", false],
      ["ａ roda", true],
      ["ａ міст", false],
    ] as const) {
      const read = await readUnitText(unit([`- [x] ${text}`, "- [ ] O sino voa."], "make: sort"));
      const fixes = read.findings.flatMap(({ code, fixes }) => (code === "missing-glyph" ? fixes : []));
      const like = fixes.filter(({ title }) => title.startsWith("Write “"));
      assert.ok(like.length > 0, text);
      assert.ok(
        like.every(({ preferred = false }) => preferred === sure),
        text,
      );
    }
  });

  it("takes its space along, but none that a bullet or another word needs", async () => {
    const taken = async (line: string): Promise<string | undefined> => {
      const text = unit([line, "- [x] A roda gira.", "- [ ] O sino voa.", "- [ ] A mola ri."], "make: sort");
      return Object.values(await offers(text))[0]?.split("\n")[7];
    };
    assert.equal(await taken("- [x] ☀ O sol brilha."), "- [x] O sol brilha.");
    assert.equal(await taken("- [x] ☀O sol brilha."), "- [x] O sol brilha.");
    assert.equal(await taken("- [x] O ☀ sol brilha."), "- [x] O sol brilha.");
    assert.equal(await taken("- [x] O ☀sol brilha."), "- [x] O sol brilha.");
    assert.equal(await taken("- [x] O sol☀ brilha."), "- [x] O sol brilha.");
    assert.equal(await taken("- [x] O sol brilha ☀"), "- [x] O sol brilha");
  });

  it("stays where a part of a sentence would be empty", async () => {
    assert.deepEqual(await offers(unit(["- ☀ | o sino | toca. = a", wheel], "make: rebuild")), {});
    assert.deepEqual(
      await offers(unit(["- o sino | ☀ | toca. = a", "  - ☀ | o sino | toca.", wheel], "make: rebuild")),
      {},
    );
  });

  it("leaves the translation of a sentence to a finding of its own", async () => {
    const text = unit(["- O sol ☀ | brilha. = The sun ☀ shines.", wheel], "make: rebuild");
    assert.deepEqual(await offers(text), { "Take “☀” out": text.replace("sol ☀", "sol") });
  });

  const pairs = ["- roda = wheel", "- mola = spring", "- cabo = cable", "- sino = bell"];
  const decoys = (list: string): string => unit(pairs, `make: tiles\ngrid: 2 x 2\ndecoys: ${list}`);

  it("is taken out of a word in a list, which stays a word", async () => {
    const title = "Take “☀” out";
    assert.deepEqual(await offers(decoys("[sol ☀, luz]")), { [title]: decoys("[sol, luz]") });
    assert.deepEqual(await offers(decoys('["☀ sol", luz]')), { [title]: decoys("[sol, luz]") });
    assert.deepEqual(await offers(decoys("[☀ 12, luz]")), { [title]: decoys('["12", luz]') });
    assert.deepEqual(await offers(decoys("[☀-sol, luz]")), { [title]: decoys('["-sol", luz]') });
    const board = unit(pairs, "make: board\ngrid: 2 x 3\nclue: gloss\ndistractors: [☀ sol, ovo]");
    assert.deepEqual(await offers(board), { [title]: board.replace("☀ ", "") });
  });

  it("stays where nothing would be left of that word, or one that is there already or has a partner", async () => {
    for (const list of ["[☀, luz]", '["☀", luz]', "[☀ luz, luz]", "[☀ roda, luz]", "[wheel☀]"])
      assert.deepEqual(await offers(decoys(list)), {}, list);
  });

  it("is taken out of a title, unless that is all of it", async () => {
    const titled = (title: string): string => unit(pairs, `make: tiles\ngrid: 2 x 2\ntitle: ${title}`);
    assert.deepEqual(await offers(titled("Sol ☀")), { "Take “☀” out": titled("Sol") });
    assert.deepEqual(await offers(titled('"☀: sol"')), { "Take “☀” out": titled('": sol"') });
    assert.deepEqual(await offers(titled('"☀"')), {});
  });

  it("stays in a title of several lines, behind which a comment may be read with it", async () => {
    assert.deepEqual(await offers("---\ntitle: The café\n - ☀ #5 = ☀\n---\n"), {});
    assert.deepEqual(await offers("---\ntitle: The café\n - ☀ #5 = ☀\n\n"), {});
  });
});
