import assert from "node:assert/strict";
import { planUnit } from "../../src/activities/plan";
import { lacksSpaces, tokens, withBars } from "../../src/activities/rebuild/cut";
import { rebuild } from "../../src/activities/rebuild/kind";
import type { DealtRebuild } from "../../src/activities/rebuild/model";
import { readUnit } from "../../src/unit/read";
import { ordering, sentenceUnit } from "./unit";

function dealt(text: string): DealtRebuild {
  const [activity] = planUnit(readUnit(text)).activities;
  assert.ok(activity?.request);
  return rebuild.deal(activity.request);
}

/** The cards of the first sentence as printed, in the order of the sentence. */
function cards(sentence: string, options = "", front = "teaches: pt\n"): string[] {
  const [deal] = dealt(sentenceUnit([`- ${sentence}`, ...ordering], options, front)).deals;
  return (deal?.cards[0] ?? []).map(({ text }) => text);
}

describe("cutting sentences", () => {
  const cut = (text: string): string[] => tokens(text).map(([start, end]) => text.slice(start, end));

  it("cuts at white space and keeps punctuation with its word", () => {
    assert.deepEqual(cut("Quanto custa, senhor?"), ["Quanto", "custa,", "senhor?"]);
    // French and Spanish, also with spaces before marks.
    assert.deepEqual(cut("Ça va ?"), ["Ça", "va ?"]);
    assert.deepEqual(cut("Il dit : « Bonjour ! »"), ["Il", "dit :", "« Bonjour ! »"]);
    assert.deepEqual(cut("¿ Qué tal ?"), ["¿ Qué", "tal ?"]);
    assert.deepEqual(cut("Isto – sim – é"), ["Isto –", "sim –", "é"]);
    assert.deepEqual(cut("un po' d'acqua"), ["un", "po'", "d'acqua"]);
    assert.deepEqual(cut("3 × 4 = 12"), ["3", "×", "4", "=", "12"]);
    assert.deepEqual(cut("a\u00a0b c"), ["a\u00a0b", "c"]);
    assert.deepEqual(cut("… !"), ["… !"]);
    assert.deepEqual(cut("  "), []);
  });

  it("cuts at bars where there are bars, and knows where each part stands", () => {
    const text = sentenceUnit([
      "- l'|école | est là = the school is there",
      "- o *pão* bom = the good bread",
      "- o pão bom = x",
    ]);
    const { sentences } = dealt(text);
    const parts = sentences.map((sentence) => sentence.parts.map(({ text: own }) => own));
    assert.deepEqual(parts, [
      ["l'", "école", "est là"],
      ["o", "pão", "bom"],
      ["o", "pão", "bom"],
    ]);
    for (const part of [...(sentences[0]?.parts ?? []), ...(sentences[2]?.parts ?? [])])
      assert.equal(text.slice(part.source.start, part.source.end), part.text);
    assert.ok(sentences[1]?.parts[1]?.runs.every(({ italic }) => italic));
    assert.equal(text.slice(sentences[1]?.parts[1]?.source.start, sentences[1]?.parts[1]?.source.end), "o *pão* bom");
  });

  it("proposes bars between words of languages without spaces", () => {
    assert.equal(withBars("私は学生です。", "ja")?.replaceAll("|", ""), "私は学生です。");
    assert.ok((withBars("私は学生です。", "ja")?.split("|").length ?? 0) >= 3);
    assert.ok(withBars("私は学生です。", "ja")?.endsWith("です。"));
    assert.ok((withBars("「はい、学生です。」", "ja") ?? "").startsWith("「はい、|"));
    assert.equal(withBars("はい", "ja"), undefined);
    assert.ok(lacksSpaces("สวัสดีครับ") && lacksSpaces("你好") && !lacksSpaces("olá") && !lacksSpaces("안녕하세요"));
  });
});

describe("what cards hide", () => {
  it("nothing, unless asked to", () => {
    assert.deepEqual(cards("Amanhã vou embora. = I leave."), ["Amanhã", "vou", "embora."]);
  });

  it("capitals alone, stops alone", () => {
    assert.deepEqual(cards("Amanhã vou embora. = I leave.", "capitals: hide"), ["amanhã", "vou", "embora."]);
    assert.deepEqual(cards("Amanhã vou, embora. = I leave.", "stops: hide"), ["Amanhã", "vou,", "embora"]);
    assert.deepEqual(cards("¿Dónde vives? = Where?", "stops: hide"), ["Dónde", "vives"]);
    assert.deepEqual(cards("Er sagt: „Komm!“ = He says come", "stops: hide"), ["Er", "sagt:", "„Komm"]);
    for (const stop of ["\u0589", "\u1362", "\u17d4", "\u0965"])
      assert.deepEqual(cards(`a b${stop} = c`, "stops: hide"), ["a", "b"], stop);
  });

  it("but no name loses its capital, nor what the unit writes so within a sentence", () => {
    const hide = "capitals: hide";
    // “A Inês bebe” stands in the unit; Anselmo is the same in the translation; Porto is named.
    assert.equal(cards("Inês vai. = She goes.", hide)[0], "Inês");
    assert.equal(cards("Anselmo vai embora. = Anselmo goes.", hide)[0], "Anselmo");
    assert.equal(cards("Porto é longe. = It is far.", `${hide}\nnames: [Porto]`)[0], "Porto");
    assert.equal(cards("Porto é longe. = It is far.", hide)[0], "porto");
    assert.equal(cards("TGV vai depressa. = The train is fast.", hide)[0], "TGV");
    assert.equal(cards("I am here. = Estou aqui.", hide, "teaches: en\n")[0], "I");
    assert.equal(cards("I'm here. = Estou aqui.", hide, "teaches: en\n")[0], "I'm");
    assert.equal(cards("It is here. = Está aqui.", hide, "teaches: en\n")[0], "it");
  });

  it("in German only what is surely no noun", () => {
    const german = (sentence: string): string | undefined => cards(sentence, "capitals: hide", "teaches: de\n")[0];
    assert.equal(german("Kaffee trinke ich gern. = I like coffee."), "Kaffee");
    assert.equal(german("Ich trinke Kaffee. = I drink coffee."), "ich");
    assert.equal(german("Der Hund bellt. = The dog barks."), "der");
  });

  it("in Turkish the letter that belongs to it", () => {
    assert.equal(cards("Irmak uzun. = long", "capitals: hide", "teaches: tr\n")[0], "ırmak");
    assert.equal(cards("İyi misin? = well", "capitals: hide", "teaches: tr\n")[0], "iyi");
  });

  it("with several accepted orders no card tells its end, whatever the options say", () => {
    const [deal] = dealt(sentenceUnit(ordering)).deals;
    assert.deepEqual(
      deal?.cards[0]?.map(({ text }) => text),
      ["queria", "um disco", "por favor"],
    );
    // Apostrophes belong to the word.
    const french = dealt(sentenceUnit(["- C'|est | l'|école. = a", "  - l'|école | c'|est"], "", "teaches: fr\n"));
    assert.deepEqual(
      french.deals[0]?.cards[0]?.map(({ text }) => text),
      ["c'", "est", "l'", "école"],
    );
  });

  it("by level: gentle shows, hard hides", () => {
    const { deals } = dealt(sentenceUnit(ordering, "levels: [gentle, hard]"));
    const words = deals.map(({ level, cards: own }) => [level, own[4]?.map(({ text }) => text).join(" ")]);
    assert.deepEqual(words, [
      ["gentle", "Quanto custa a mochila?"],
      ["hard", "quanto custa a mochila"],
    ]);
  });
});
