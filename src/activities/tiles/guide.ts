import type { GuideEntry, LabelEntry } from "../contract";
import { blanksText, pencils } from "../copies";
import { told } from "../printed";
import type { DealtTiles, TilesDeal } from "./model";

/** What a colleague needs to run tiles. */
export function tilesGuide({ request, options, used, frame, deals }: DealtTiles): GuideEntry {
  const count = frame ? frame.rows * frame.columns : 0;
  const untold = options.frame === "untold" ? ", which they are not told" : "";
  const shape = frame ? `${frame.rows} rows of ${frame.columns}${untold}` : "";
  const hard = deals.some(({ level }) => level === "hard");
  return {
    summary: `Learners lay ${count} square tiles (${shape}) so that touching edges belong together.${hard ? " In the hard sets some outer edges carry words that have no partner." : ""}`,
    materials: (words) => [words.table, ...(options.blanks > 0 ? [pencils(words, options, "some")] : [])],
    atSet: options.group,
    // Common practice, no source: half a minute a pair, and five to begin and to check.
    minutes: request.options.value.minutes ?? Math.max(8, Math.round(5 + used.length / 2)),
    answers: used.map(({ left, right }) => [...told(left.answers[0]), { text: " = " }, ...told(right.answers[0])]),
    cautions:
      options.reuse === "laminate"
        ? ["cutter", "scissors", "laminator", "small-parts"]
        : ["cutter", "scissors", "small-parts"],
  };
}

export function tilesLabels({ frame, options, request }: DealtTiles, _deal: TilesDeal): LabelEntry[] {
  const blank = blanksText(options, request.classes);
  const count = frame ? frame.rows * frame.columns : 0;
  return [{ contents: blank === undefined ? `${count} tiles` : `${count} tiles and ${blank}` }];
}

type Directions = (dealt: DealtTiles) => readonly string[];

/** The step about the finished layout: with its rows × columns, or without them where learners are to find out. */
function layoutStep({ frame, options }: DealtTiles, told: (size: string) => string, untold: string): string {
  return frame && options.frame === "told" ? told(`${frame.rows} × ${frame.columns}`) : untold;
}

/** What to say of the outer edges: whether some set has words on them. */
function rim({ deals }: DealtTiles, words: string, blank: string): string {
  return deals.some(({ decoys }) => decoys.edges.length > 0) ? words : blank;
}

/** The step about blank tiles, where there are some. */
function ownWords({ options }: DealtTiles, step: string): string[] {
  return options.blanks > 0 ? [step] : [];
}

/** Built-in steps for learners, by language. */
export const directions: Readonly<Record<string, Directions>> = {
  en: (dealt) => [
    "Spread the tiles out on the table.",
    dealt.options.turn === "fixed"
      ? "The small triangle shows which way is up: do not turn the tiles."
      : "You may turn the tiles any way round.",
    "Lay tiles side by side so that the words on touching edges belong together. Each word that has a partner must lie against it.",
    `${layoutStep(
      dealt,
      (size) => `The finished layout is a rectangle of ${size} tiles.`,
      "The finished layout is a full rectangle; find out how many rows it has.",
    )} ${rim(dealt, "Words on its rim may have no partner.", "Its rim is blank.")}`,
    ...ownWords(dealt, "Write words of your own on the blank tiles and lay them against the rim."),
    "When you are done, read the pairs to each other. Then call for the key.",
  ],
  es: (dealt) => [
    "Extended las fichas sobre la mesa.",
    dealt.options.turn === "fixed"
      ? "El triángulo pequeño indica qué lado va arriba: no giréis las fichas."
      : "Podéis girar las fichas como queráis.",
    "Poned las fichas lado a lado de modo que las palabras de los bordes que se tocan correspondan. Cada palabra que tenga pareja debe tocarla.",
    `${layoutStep(
      dealt,
      (size) => `El resultado es un rectángulo de ${size} fichas.`,
      "El resultado es un rectángulo completo; averiguad cuántas filas tiene.",
    )} ${rim(dealt, "Las palabras del borde exterior pueden no tener pareja.", "El borde exterior queda en blanco.")}`,
    ...ownWords(dealt, "Escribid palabras vuestras en las fichas en blanco y ponedlas junto al borde."),
    "Al terminar, leeos las parejas en voz alta. Después pedid la solución.",
  ],
  fr: (dealt) => [
    "Étalez les pièces sur la table.",
    dealt.options.turn === "fixed"
      ? "Le petit triangle indique le haut : ne tournez pas les pièces."
      : "Vous pouvez tourner les pièces dans tous les sens.",
    "Posez les pièces côte à côte pour que les mots des bords qui se touchent aillent ensemble. Chaque mot qui a un partenaire doit le toucher.",
    `${layoutStep(
      dealt,
      (size) => `À la fin, on obtient un rectangle de ${size} pièces.`,
      "À la fin, on obtient un rectangle complet ; trouvez combien de rangées il a.",
    )} ${rim(dealt, "Les mots du pourtour peuvent ne pas avoir de partenaire.", "Le pourtour reste blanc.")}`,
    ...ownWords(dealt, "Écrivez vos propres mots sur les pièces blanches et posez-les au bord."),
    "Quand vous avez fini, lisez-vous les paires. Demandez ensuite le corrigé.",
  ],
  de: (dealt) => [
    "Breitet die Karten auf dem Tisch aus.",
    dealt.options.turn === "fixed"
      ? "Das kleine Dreieck zeigt nach oben: Dreht die Karten nicht."
      : "Ihr dürft die Karten beliebig drehen.",
    "Legt Karten so aneinander, dass die Wörter an den Kanten, die sich berühren, zusammengehören. Jedes Wort, das einen Partner hat, muss an ihm liegen.",
    `${layoutStep(
      dealt,
      (size) => `Am Ende liegt ein Rechteck aus ${size} Karten.`,
      "Am Ende liegt ein volles Rechteck; findet heraus, wie viele Reihen es hat.",
    )} ${rim(dealt, "Wörter am Rand haben vielleicht keinen Partner.", "Am Rand steht nichts.")}`,
    ...ownWords(dealt, "Schreibt eigene Wörter auf die leeren Karten und legt sie am Rand an."),
    "Wenn ihr fertig seid, lest euch die Paare vor. Bittet dann um die Lösung.",
  ],
  pt: (dealt) => [
    "Espalhem as peças na mesa.",
    dealt.options.turn === "fixed"
      ? "O pequeno triângulo indica o lado de cima: não rodem as peças."
      : "Podem rodar as peças à vontade.",
    "Ponham as peças lado a lado de modo que as palavras dos lados que se tocam correspondam. Cada palavra que tem par deve ficar encostada a ele.",
    `${layoutStep(
      dealt,
      (size) => `No fim fica um retângulo de ${size} peças.`,
      "No fim fica um retângulo completo; descubram quantas filas tem.",
    )} ${rim(dealt, "As palavras da borda podem não ter par.", "A borda fica em branco.")}`,
    ...ownWords(dealt, "Escrevam palavras vossas nas peças em branco e encostem-nas à borda."),
    "Quando acabarem, leiam os pares em voz alta. Depois peçam a solução.",
  ],
};
