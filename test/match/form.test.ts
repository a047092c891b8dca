import assert from "node:assert/strict";
import { isForm, raised } from "../../src/match/form";
import { readUnit } from "../../src/unit/read";

/** Whether the tie of a statement is read as one that begins a sentence. */
function opens(item: string): boolean {
  const [section] = readUnit(`## A\n\n${item}\n`).sections;
  const [tie] = [...(section?.statements ?? []), ...(section?.pairs ?? []), ...(section?.events ?? [])].flatMap(
    ({ ties }) => ties,
  );
  assert.ok(tie, item);
  return tie.opens ?? false;
}

describe("a form at the beginning of a sentence", () => {
  it("is the form with a capital, and no other word", () => {
    for (const [written, form] of [
      ["Meço", "meço"],
      ["meço", "meço"],
      ["Étais", "étais"],
      ["İçerim", "içerim"],
      ["Ilıyor", "ılıyor"],
      ["Ходжу", "ходжу"],
    ] as const)
      assert.ok(isForm({ text: written, opens: true }, form), written);
    for (const [written, form] of [
      ["Mede", "meço"],
      ["MEÇO", "meço"],
      ["meço", "Meço"],
      ["Meco", "meço"],
      ["", "meço"],
    ] as const)
      assert.ok(!isForm({ text: written, opens: true }, form), written);
    assert.ok(!isForm({ text: "Meço" }, "meço"), "within a sentence a capital makes another word");
    assert.ok(isForm({ text: "meço" }, "meço"));
  });

  it("is where an item begins, after a sentence's end, a colon, an opening quotation mark", () => {
    for (const item of [
      "- [x] [Meço](#medir) o quadro.",
      "- [ ] **[Meço](#medir)** o quadro.",
      "- [x] Chove. [Meço](#medir) o quadro.",
      "- [x] «Chove!» [Meço](#medir) o quadro.",
      "- [x] Ela diz: [meço](#medir) o quadro.",
      "- [x] Ela diz: «[Meço](#medir) o quadro.»",
      "- [x] Ela diz «[Meço](#medir) o quadro».",
      '- [x] "[Meço](#medir) o quadro", diz ela.',
      "- [x] ¿[Mido](#medir) la rueda?",
      "- [x] — [Meço](#medir) o quadro.",
      "- a roda = [Meço](#medir) a roda.",
      "1. [Meço](#medir) o quadro.",
      "- [x] Chove.\n  [Meço](#medir) o quadro.",
    ])
      assert.ok(opens(item), item);
    for (const item of [
      "- [x] Eu [meço](#medir) o quadro.",
      "- [x] Eu, que [meço](#medir) tudo, rio.",
      "- [x] Ela diz «sim» e [mede](#medir) o quadro.",
      "- [x] Eu e a Inês - [medimos](#medir) o quadro.",
      "- [x] As 3.5 rodas que [meço](#medir) são boas.",
    ])
      assert.ok(!opens(item), item);
  });

  it("gets its capital by the language", () => {
    assert.equal(raised("meço", "pt"), "Meço");
    assert.equal(raised("içerim", "tr"), "İçerim");
    assert.equal(raised("mede", "und"), "Mede");
    assert.equal(raised("mede", "pt-XX-notatag"), "Mede");
    assert.equal(raised("", "pt"), "");
  });
});
