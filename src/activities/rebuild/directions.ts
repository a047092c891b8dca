import type { DealtRebuild } from "./model";

type Steps = (facts: {
  readonly several: boolean;
  /** There is no other packet to take. */
  readonly only: boolean;
  readonly label: boolean;
  readonly slip: boolean;
  readonly blanks: boolean;
}) => readonly (string | false)[];

const languages: Readonly<Record<string, Steps>> = {
  en: ({ several, only, label, slip, blanks }) => [
    "Take a packet and spread its cards out on the table. All of them have the packet’s number.",
    several && "The letter says which sentence a card belongs to.",
    label && "Read the translation on the packet.",
    "Lay the cards side by side so that they make a sentence. Use every card.",
    "Read the sentence aloud.",
    slip && "Write it on the slip beside the packet’s number.",
    blanks &&
      "Write a sentence of your own on the blank cards, a word or a part on each, and give them to another group.",
    `Count the cards back into the packet${only ? "" : " and take another one"}.`,
    !label && "At the end, compare with the key.",
  ],
  es: ({ several, only, label, slip, blanks }) => [
    "Coged un sobre y extended sus tarjetas sobre la mesa. Todas llevan el número del sobre.",
    several && "La letra indica a qué frase pertenece cada tarjeta.",
    label && "Leed la traducción en el sobre.",
    "Poned las tarjetas una al lado de otra para formar una frase. Usadlas todas.",
    "Leed la frase en voz alta.",
    slip && "Escribidla en la hoja junto al número del sobre.",
    blanks &&
      "Escribid una frase vuestra en las tarjetas en blanco, una palabra o una parte en cada una, y dádselas a otro grupo.",
    only
      ? "Contad las tarjetas y guardadlas en el sobre."
      : "Contad las tarjetas, guardadlas en el sobre y coged otro.",
    !label && "Al final, comparad con la solución.",
  ],
  fr: ({ several, only, label, slip, blanks }) => [
    "Prenez une pochette et étalez ses cartes sur la table. Toutes portent le numéro de la pochette.",
    several && "La lettre indique à quelle phrase appartient chaque carte.",
    label && "Lisez la traduction sur la pochette.",
    "Posez les cartes côte à côte pour former une phrase. Utilisez toutes les cartes.",
    "Lisez la phrase à voix haute.",
    slip && "Écrivez-la sur la fiche à côté du numéro de la pochette.",
    blanks &&
      "Écrivez une phrase à vous sur les cartes vierges, un mot ou une partie sur chacune, et donnez-les à un autre groupe.",
    only
      ? "Comptez les cartes et rangez-les dans la pochette."
      : "Comptez les cartes, rangez-les dans la pochette et prenez-en une autre.",
    !label && "À la fin, comparez avec le corrigé.",
  ],
  de: ({ several, only, label, slip, blanks }) => [
    "Nehmt ein Päckchen und breitet seine Karten auf dem Tisch aus. Alle tragen die Nummer des Päckchens.",
    several && "Der Buchstabe sagt, zu welchem Satz eine Karte gehört.",
    label && "Lest die Übersetzung auf dem Päckchen.",
    "Legt die Karten nebeneinander, sodass sie einen Satz ergeben. Verwendet alle Karten.",
    "Lest den Satz laut vor.",
    slip && "Schreibt ihn neben die Nummer des Päckchens auf den Zettel.",
    blanks &&
      "Schreibt einen eigenen Satz auf die leeren Karten, auf jede ein Wort oder einen Teil, und gebt sie einer anderen Gruppe.",
    only
      ? "Zählt die Karten und legt sie in das Päckchen zurück."
      : "Zählt die Karten, legt sie in das Päckchen zurück und nehmt ein anderes.",
    !label && "Vergleicht am Ende mit der Lösung.",
  ],
  pt: ({ several, only, label, slip, blanks }) => [
    "Tirem um envelope e espalhem os cartões na mesa. Todos têm o número do envelope.",
    several && "A letra indica a que frase pertence cada cartão.",
    label && "Leiam a tradução no envelope.",
    "Ponham os cartões lado a lado para formar uma frase. Usem todos.",
    "Leiam a frase em voz alta.",
    slip && "Escrevam-na na ficha, ao lado do número do envelope.",
    blanks &&
      "Escrevam uma frase vossa nos cartões em branco, uma palavra ou uma parte em cada um, e deem-nos a outro grupo.",
    only ? "Contem os cartões e guardem-nos no envelope." : "Contem os cartões, guardem-nos no envelope e tirem outro.",
    !label && "No fim, comparem com a solução.",
  ],
};

/** Built-in steps for learners. */
export function rebuildDirections({ options, deals }: DealtRebuild, lang: string): readonly string[] | undefined {
  return languages[lang]?.({
    several: options.packet > 1,
    only: deals.every(({ packets }) => packets.length === 1),
    label: options.translation === "label",
    slip: options.slip === "sentences",
    blanks: options.blanks > 0,
  }).filter((step) => step !== false);
}
