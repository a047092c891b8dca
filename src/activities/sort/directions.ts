import { headerCount } from "./layout";
import { matsOf } from "./mats";
import type { DealtSort } from "./model";

interface Facts {
  /** Names of the piles as a list, between these quotation marks. */
  names(open: string, close: string): string;
  readonly headers: boolean;
  readonly mats: "none" | "circles" | "fields";
  readonly several: boolean;
  /** True and false, with corrections in the key. */
  readonly truth: boolean;
  readonly blanks: boolean;
}

type Steps = (facts: Facts) => readonly string[];

function steps(...lines: readonly (string | false)[]): string[] {
  return lines.filter((line) => line !== false);
}

const languages: Readonly<Record<string, Steps>> = {
  en: ({ names, headers, mats, several, truth, blanks }) =>
    steps(
      headers && mats === "none" && `Lay the header cards side by side: ${names("“", "”")}.`,
      mats !== "none" && `Lay the mat on the table. It has room for ${names("“", "”")}.`,
      headers && mats !== "none" && "Lay each header card at the edge of its place.",
      !headers && mats === "none" && `Make a pile for each of these: ${names("“", "”")}.`,
      "Take turns: read a card aloud and say where it belongs. Put it there when you all agree.",
      several &&
        mats === "circles" &&
        "What belongs to several piles goes where their circles overlap: the middle of the card shows where it belongs.",
      several && mats === "fields" && "What belongs to several piles goes on the line between their fields.",
      several && mats === "none" && "What belongs to several piles goes between them.",
      blanks && "Write cards of your own on the blank ones and sort them too.",
      truth && "Say what is right instead of each card that is false.",
      "When you are done, call for the key.",
    ),
  es: ({ names, headers, mats, several, truth, blanks }) =>
    steps(
      headers && mats === "none" && `Poned las tarjetas de título una al lado de otra: ${names("«", "»")}.`,
      mats !== "none" && `Poned el tablero en la mesa. Tiene sitio para ${names("«", "»")}.`,
      headers && mats !== "none" && "Poned cada tarjeta de título en el borde de su sitio.",
      !headers && mats === "none" && `Haced un montón para cada uno: ${names("«", "»")}.`,
      "Por turnos, leed una tarjeta en voz alta y decid dónde va. Ponedla allí cuando estéis todos de acuerdo.",
      several &&
        mats === "circles" &&
        "Lo que pertenece a varios montones va donde se cruzan los círculos: el centro de la tarjeta muestra su sitio.",
      several && mats === "fields" && "Lo que pertenece a varios montones va sobre la línea entre sus campos.",
      several && mats === "none" && "Lo que pertenece a varios montones va entre ellos.",
      blanks && "Escribid tarjetas vuestras en las que están en blanco y clasificadlas también.",
      truth && "Decid cómo es en realidad lo que dice cada tarjeta falsa.",
      "Al terminar, pedid la solución.",
    ),
  fr: ({ names, headers, mats, several, truth, blanks }) =>
    steps(
      headers && mats === "none" && `Posez les cartes-titres côte à côte : ${names("«\u00a0", "\u00a0»")}.`,
      mats !== "none" && `Posez le plateau sur la table. Il a une place pour ${names("«\u00a0", "\u00a0»")}.`,
      headers && mats !== "none" && "Posez chaque carte-titre au bord de sa place.",
      !headers && mats === "none" && `Faites une pile pour chacun : ${names("«\u00a0", "\u00a0»")}.`,
      "À tour de rôle, lisez une carte à voix haute et dites où elle va. Posez-la quand vous êtes tous d’accord.",
      several &&
        mats === "circles" &&
        "Ce qui va dans plusieurs piles se place là où les cercles se croisent : le milieu de la carte montre sa place.",
      several && mats === "fields" && "Ce qui va dans plusieurs piles se place sur la ligne entre leurs champs.",
      several && mats === "none" && "Ce qui va dans plusieurs piles se place entre elles.",
      blanks && "Écrivez vos propres cartes sur les cartes vierges et classez-les aussi.",
      truth && "Corrigez à voix haute chaque carte fausse.",
      "Quand vous avez fini, demandez le corrigé.",
    ),
  de: ({ names, headers, mats, several, truth, blanks }) =>
    steps(
      headers && mats === "none" && `Legt die Titelkarten nebeneinander: ${names("„", "“")}.`,
      mats !== "none" && `Legt die Unterlage auf den Tisch. Sie hat Platz für ${names("„", "“")}.`,
      headers && mats !== "none" && "Legt jede Titelkarte an den Rand ihres Platzes.",
      !headers && mats === "none" && `Macht je einen Stapel: ${names("„", "“")}.`,
      "Lest reihum eine Karte vor und sagt, wohin sie gehört. Legt sie hin, wenn ihr euch einig seid.",
      several &&
        mats === "circles" &&
        "Was zu mehreren Stapeln gehört, kommt dorthin, wo sich die Kreise überschneiden: Die Mitte der Karte zeigt ihren Platz.",
      several && mats === "fields" && "Was zu mehreren Stapeln gehört, kommt auf die Linie zwischen ihren Feldern.",
      several && mats === "none" && "Was zu mehreren Stapeln gehört, kommt dazwischen.",
      blanks && "Schreibt eigene Karten auf die leeren und ordnet sie auch zu.",
      truth && "Sagt zu jeder falschen Karte, was richtig ist.",
      "Wenn ihr fertig seid, bittet um die Lösung.",
    ),
  pt: ({ names, headers, mats, several, truth, blanks }) =>
    steps(
      headers && mats === "none" && `Ponham os cartões de título lado a lado: ${names("“", "”")}.`,
      mats !== "none" && `Ponham o tabuleiro na mesa. Tem lugar para ${names("“", "”")}.`,
      headers && mats !== "none" && "Ponham cada cartão de título na borda do lugar dele.",
      !headers && mats === "none" && `Façam um monte para cada um: ${names("“", "”")}.`,
      "À vez, leiam um cartão em voz alta e digam onde fica. Ponham-no lá quando estiverem todos de acordo.",
      several &&
        mats === "circles" &&
        "O que pertence a vários montes fica onde os círculos se cruzam: o meio do cartão mostra o lugar dele.",
      several && mats === "fields" && "O que pertence a vários montes fica na linha entre os campos deles.",
      several && mats === "none" && "O que pertence a vários montes fica entre eles.",
      blanks && "Escrevam cartões vossos nos que estão em branco e arrumem-nos também.",
      truth && "Digam o que está certo em vez de cada cartão falso.",
      "Quando acabarem, peçam a solução.",
    ),
};

/** Built-in steps for learners. */
export function sortDirections(dealt: DealtSort, lang: string): readonly string[] | undefined {
  const { piles, cards, options, by } = dealt;
  return languages[lang]?.({
    names: (open, close) => piles.map(({ name }) => `${open}${name}${close}`).join(", "),
    headers: headerCount(dealt) > 0,
    mats: matsOf(dealt),
    several: cards.some((card) => card.piles.length > 1),
    truth: by === "truth",
    blanks: options.blanks > 0,
  });
}
