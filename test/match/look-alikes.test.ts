import { expect } from "chai";
import { fold } from "../../src/match/fold";
import { lookAlikes, overlooking, type Worded } from "../../src/match/look-alikes";
import { below, randomFrom } from "../prove/instances";

const worded = (lang: string, texts: readonly string[]): Worded[] => texts.map((text) => ({ key: text, text, lang }));

/** Groups as `a ~ b: difference`. */
const told = (lang: string, ...texts: string[]): string[] =>
  lookAlikes(worded(lang, texts)).map(({ keys, differences }) => `${keys.join(" ~ ")}: ${differences.join(" ")}`);

describe("look-alikes", () => {
  it("differ in case, accent, article, punctuation, or several of these", () => {
    expect(told("de", "Sie", "sie", "See")).to.deep.equal(["Sie ~ sie: case"]);
    expect(told("es", "año", "ano", "mes")).to.deep.equal(["año ~ ano: accent"]);
    expect(told("de", "der Kiefer", "die Kiefer", "das Brett")).to.deep.equal(["der Kiefer ~ die Kiefer: article"]);
    expect(told("fr", "l’étau", "étau")).to.deep.equal(["l’étau ~ étau: article"]);
    expect(told("en", "to day", "today", "well-oiled", "well oiled")).to.deep.equal([
      "to day ~ today: punctuation",
      "well-oiled ~ well oiled: punctuation",
    ]);
    expect(told("pt", "a avó", "o avô")).to.deep.equal(["a avó ~ o avô: accent article"]);
  });

  it("differ in a space or an apostrophe behind what is an article elsewhere", () => {
    expect(told("pt", "a fim", "afim", "o fim")).to.deep.equal(["a fim ~ afim: punctuation", "a fim ~ o fim: article"]);
    expect(told("it", "l'oro", "Loro", "il re")).to.deep.equal(["l'oro ~ Loro: case punctuation"]);
    expect(told("fr", "l'arme", "larme", "l’arme")).to.deep.equal(["l'arme ~ larme ~ l’arme: punctuation"]);
    expect(told("en", "a part", "apart", "parted")).to.deep.equal(["a part ~ apart: punctuation"]);
    expect(told("en", "a hat", "that", "the hat")).to.deep.equal(["a hat ~ the hat: article"]);
  });

  it("are told by their keys, whatever was asked before with the same texts or the same keys", () => {
    const keysOf = (...texts: [key: string, text: string][]): (readonly string[])[] =>
      lookAlikes(texts.map(([key, text]) => ({ key, text, lang: "pt" }))).map(({ keys }) => keys);
    expect(keysOf(["Roda", "Roda"], ["roda", "roda"])).to.deep.equal([["Roda", "roda"]]);
    expect(keysOf(["1", "Roda"], ["2", "roda"])).to.deep.equal([["1", "2"]]);
    expect(keysOf(["1", "Roda"], ["3", "roda"])).to.deep.equal([["1", "3"]]);
    expect(keysOf(["1", "Roda"], ["3", "selim"])).to.deep.equal([]);
    expect(keysOf(["\u0000a.png", "Roda"], ["roda", "roda"])).to.deep.equal([]);
  });

  it("differ in a stroke or a dot", () => {
    expect(told("pl", "łaska", "laska", "Łaska", "maska")).to.deep.equal(["łaska ~ laska ~ Łaska: case accent"]);
    expect(told("da", "rød", "rod", "rad")).to.deep.equal(["rød ~ rod: accent"]);
    expect(told("tr", "kız", "kiz")).to.deep.equal(["kız ~ kiz: accent"]);
    expect(told("hr", "đak", "dak")).to.deep.equal(["đak ~ dak: accent"]);
    expect(told("mt", "ħin", "hin")).to.deep.equal(["ħin ~ hin: accent"]);
  });

  it("differ in two letters written as one", () => {
    expect(told("fr", "un cœur", "un coeur", "une cour")).to.deep.equal(["un cœur ~ un coeur: accent"]);
    expect(told("de", "die Straße", "die Strasse", "der Strauß")).to.deep.equal(["die Straße ~ die Strasse: accent"]);
    expect(told("de", "die STRASSE", "die Straße", "DIE STRAẞE")).to.deep.equal([
      "die STRASSE ~ die Straße ~ DIE STRAẞE: case accent",
    ]);
    expect(told("da", "en sæl", "en sael", "sol")).to.deep.equal(["en sæl ~ en sael: accent"]);
    expect(told("fr", "Œuf", "oeuf", "ŒUF", "neuf")).to.deep.equal(["Œuf ~ oeuf ~ ŒUF: case accent"]);
    expect(told("fr", "sœur", "soeur", "cœur")).to.deep.equal(["sœur ~ soeur: accent"]);
    // One letter all the same where letters are counted: no word gets long enough by it.
    expect(told("de", "weiß", "Weise", "süß", "süße", "heiß", "Heise")).to.deep.equal([]);
    expect(told("de", "schließen", "schießen")).to.deep.equal(["schließen ~ schießen: letter"]);
  });

  it("differ in an article's accent, where the one without it stands there too", () => {
    expect(told("pt", "a praia", "à praia", "mar")).to.deep.equal(["a praia ~ à praia: accent"]);
    expect(told("pt", "As vezes", "Às vezes")).to.deep.equal(["As vezes ~ Às vezes: accent"]);
    expect(told("es", "él corre", "el corre")).to.deep.equal(["él corre ~ el corre: accent"]);
    expect(told("nl", "een pomp", "één pomp")).to.deep.equal(["een pomp ~ één pomp: accent"]);
    expect(told("pt", "praia", "à praia", "a praia")).to.deep.equal(["praia ~ à praia ~ a praia: accent article"]);
    expect(told("pt", "à praia", "À praia", "a praia")).to.deep.equal(["à praia ~ À praia ~ a praia: case accent"]);
    // A preposition or a pronoun more makes no look-alike.
    expect(told("pt", "à praia", "praia", "o praia")).to.deep.equal(["praia ~ o praia: article"]);
    expect(told("es", "él corre", "corre", "la corre")).to.deep.equal(["corre ~ la corre: article"]);
  });

  it("differ in an article's capital or apostrophe", () => {
    expect(told("en", "the pump", "The pump")).to.deep.equal(["the pump ~ The pump: case"]);
    expect(told("es", "El pedal", "el pedal", "pedal")).to.deep.equal(["El pedal ~ el pedal ~ pedal: case article"]);
    expect(told("en", "the Pump", "The pump")).to.deep.equal(["the Pump ~ The pump: case"]);
    expect(told("fr", "l'étau", "l’étau")).to.deep.equal(["l'étau ~ l’étau: punctuation"]);
    expect(told("en", "The pump", "pump")).to.deep.equal(["The pump ~ pump: article"]);
  });

  it("differ in something, whatever they are", () => {
    const random = randomFrom(20_250_617);
    const of = (list: readonly string[]): string => list[below(random, list.length)] ?? "";
    const starts = ["", "a ", "A ", "à ", "À ", "o ", "el ", "El ", "él ", "l'", "L'", "l’", "The ", "the "];
    let met = 0;
    for (let i = 0; i < 1000; i++) {
      const texts = Array.from(
        { length: 6 },
        () => of(starts) + of(["praia", "Praia", "práia", "a", "à", "1.5"]) + of(["", "", "!", " -", "”"]),
      );
      const lang = ["pt", "es", "fr", "en"][below(random, 4)] ?? "en";
      for (const { keys, differences } of lookAlikes(texts.map((text) => ({ key: fold(text), text, lang })))) {
        met++;
        expect(differences, keys.join(" ~ ")).not.to.have.length(0);
      }
    }
    expect(met).to.be.greaterThan(300);
  });

  // School grammar: the articles as learners' lists write them.
  for (const [lang, articles] of [
    ["ca", "el la els les un una uns unes l'"],
    ["da", "en et den det de"],
    ["de", "der die das den dem des ein eine einen einem einer eines"],
    ["el", "ο η το οι τα τον την τη του της των ένας μια μία ένα"],
    ["en", "the a an"],
    ["es", "el la los las un una unos unas"],
    ["fr", "le la les un une des du l'"],
    ["hu", "a az egy"],
    ["it", "il lo la i gli le un uno una l' un'"],
    ["nl", "de het een"],
    ["no", "en et ei den det de"],
    ["pt", "o a os as um uma uns umas"],
    ["ro", "un o niște"],
    ["sv", "en ett den det de"],
  ] as const)
    it(`differ in any article of ${lang}`, () => {
      for (const article of articles.split(" ")) {
        const noun = `${article}${article.endsWith("'") ? "" : " "}xyst`;
        expect(told(lang, noun, "xyst"), noun).to.deep.equal([`${noun} ~ xyst: article`]);
      }
    });

  it("are not two that differ in a letter and in their articles", () => {
    expect(told("pt", "o aluno", "a aluna")).to.deep.equal([]);
    expect(told("pt", "o travão", "o trovão")).to.have.length(1);
    expect(told("pt", "travão", "o trovão")).to.have.length(1);
    expect(told("pt", "o travão", "trovão")).to.have.length(1);
  });

  it("differ in one letter of one long word that keeps its first letter", () => {
    expect(told("es", "coser", "cocer")).to.deep.equal(["coser ~ cocer: letter"]);
    expect(told("es", "pero", "perro")).to.deep.equal(["pero ~ perro: letter"]);
    expect(told("en", "a red trail", "a red trial")).to.deep.equal(["a red trail ~ a red trial: letter"]);
    expect(told("en", "mouse", "house", "cat", "cut", "form", "from")).to.deep.equal([]);
    expect(told("en", "room 1990", "room 1991")).to.deep.equal([]);
    expect(told("en", "spoke spoke", "spike spike")).to.deep.equal([]);
    // Two letters, of which one is the last; two letters for one.
    expect(told("es", "carto", "casta")).to.deep.equal([]);
    expect(told("es", "barcos", "bapos")).to.deep.equal([]);
    expect(told("es", "bapos", "barcos")).to.deep.equal([]);
  });

  it("are never words of two languages, pictures, or signs that are words of their own", () => {
    expect(lookAlikes([...worded("fr", ["été"]), ...worded("pt", ["ete"])])).to.deep.equal([]);
    expect(lookAlikes(worded("en", ["\u0000a.png\u0000", "\u0000A.png\u0000"]))).to.deep.equal([]);
    expect(told("ja", "学生自転車屋", "学生自転車星")).to.deep.equal([]);
    // Vowel signs are marks in Unicode, but no accents.
    expect(told("hi", "कि", "का", "के")).to.deep.equal([]);
    expect(told("th", "มา", "มี")).to.deep.equal([]);
  });

  it("are told in the order of their first texts", () => {
    expect(told("pt", "o barco", "a vela", "a velas", "o barca", "Mola", "mola", "O barco")).to.deep.equal([
      "o barco ~ O barco: case",
      "Mola ~ mola: case",
      "o barco ~ o barca: letter",
      "o barca ~ O barco: letter",
      "a vela ~ a velas: letter",
    ]);
  });

  it("have the articles of their own language, also where the same texts are asked for in another one", () => {
    expect(told("de", "die Rose", "Rose")).to.deep.equal(["die Rose ~ Rose: article"]);
    expect(told("en", "die Rose", "Rose")).to.deep.equal([]);
    expect(told("de-CH", "die Rose", "Rose")).to.deep.equal(["die Rose ~ Rose: article"]);
  });

  it("keep an article that is the whole word, and points between digits", () => {
    expect(told("pt", "o", "a")).to.deep.equal([]);
    expect(told("en", "1.5", "15")).to.deep.equal([]);
  });

  it("are found among many at once", () => {
    const texts = Array.from({ length: 60 }, (_, i) => `${"abcdefghij"[i % 10]}${"klmnop"[Math.floor(i / 10)]}uvwxy`);
    const groups = lookAlikes(worded("en", texts)).map(({ keys }) => [...keys].sort().join(" "));
    // Same first letter, another second one.
    expect(new Set(groups).size).to.equal(groups.length);
    expect(groups.length).to.equal((10 * 6 * 5) / 2);
  });

  it("in one letter are all found, and no others, however short the words", () => {
    const random = randomFrom(5);
    const letter = (): string => "abc"[below(random, 3)] ?? "";
    const oneLetter = (a: string, b: string): boolean => {
      const [p, q] = a.length <= b.length ? [a, b] : [b, a];
      if (q.length < 5 || p === q || p[0] !== q[0]) return false;
      const places = [...q].map((_, i) => i);
      if (p.length < q.length) return places.some((i) => q.slice(0, i) + q.slice(i + 1) === p);
      const other = places.filter((i) => p[i] !== q[i]);
      const [i = 0, k = 0] = other;
      return other.length === 1 || (other.length === 2 && k === i + 1 && p[i] === q[k] && p[k] === q[i]);
    };
    for (let round = 0; round < 60; round++) {
      const drawn = Array.from({ length: 30 }, () => Array.from({ length: 4 + below(random, 4) }, letter).join(""));
      const words = [...new Set(drawn)];
      const expected = words.flatMap((a, i) =>
        words.slice(i + 1).flatMap((b) => (oneLetter(a, b) ? [`${a} ${b}`] : [])),
      );
      const found = lookAlikes(worded("en", words)).map(({ keys }) => keys.join(" "));
      expect([...found].sort()).to.deep.equal(expected.sort());
    }
  });

  it("make a relation in which what answers one answers the others too", () => {
    const answers: Record<string, string[]> = { ano: ["ring"], año: ["year"], ring: ["ano"], year: ["año"], x: [] };
    const partners = (key: string): Set<string> => new Set(answers[key]);
    const relation = { partners, fits: (a: string, b: string) => partners(a).has(b) };
    const blurred = overlooking(relation, lookAlikes(worded("es", ["ano", "año"])));
    expect([...blurred.partners("ano")].sort()).to.deep.equal(["ring", "year"]);
    expect([...blurred.partners("year")].sort()).to.deep.equal(["ano", "año"]);
    expect(blurred.fits("ring", "año")).to.equal(true);
    expect(blurred.fits("ano", "año")).to.equal(false);
    expect([...blurred.partners("x")]).to.deep.equal([]);
  });
});
