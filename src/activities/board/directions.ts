import type { DealtBoard } from "./model";

interface Facts {
  readonly opposite: boolean;
  /** What is called; `same` is what stands on the board. */
  readonly clue: "same" | "word" | "gloss" | "example";
  readonly slip: boolean;
  readonly never: boolean;
  readonly blanks: boolean;
}

type Steps = (facts: Facts) => readonly (string | false)[];

const languages: Readonly<Record<string, Steps>> = {
  en: ({ opposite, clue, slip, never, blanks }) => [
    opposite
      ? "Sit opposite each other, the board between you. Each word stands twice: read the one on your side."
      : "Sit side by side with the board in front of you.",
    blanks && "Before you begin, write on the dotted lines the words that the caller gives you.",
    "Keep your hands on the edge of the table until you hear the call.",
    clue === "example"
      ? "Listen to the sentence and touch the word that it is about."
      : clue === "same"
        ? "Listen and touch the cell with what you hear."
        : clue === "gloss"
          ? "Listen and touch the cell that means the same."
          : "Listen and touch the cell that belongs to the word.",
    never && "Some of the cells are never called.",
    "Who touches the right cell first scores a point. A wrong touch scores nothing.",
    "If you do not agree, ask the teacher: then the point may go to the teacher.",
    slip && "Tick each point on the slip and add them up at the end.",
  ],
  es: ({ opposite, clue, slip, never, blanks }) => [
    opposite
      ? "Sentaos frente a frente con el tablero en medio. Cada palabra aparece dos veces: leed la de vuestro lado."
      : "Sentaos uno al lado del otro con el tablero delante.",
    blanks && "Antes de empezar, escribid en las líneas de puntos las palabras que os diga quien dirige el juego.",
    "Dejad las manos en el borde de la mesa hasta oír la llamada.",
    clue === "example"
      ? "Escuchad la frase y tocad la palabra de la que trata."
      : clue === "same"
        ? "Escuchad y tocad la casilla con lo que oís."
        : clue === "gloss"
          ? "Escuchad y tocad la casilla que significa lo mismo."
          : "Escuchad y tocad la casilla que corresponde a la palabra.",
    never && "Algunas casillas no se nombran nunca.",
    "Quien toque primero la casilla correcta gana un punto. Si no es la correcta, no hay punto.",
    "Si no estáis de acuerdo, preguntad a quien dirige el juego: el punto puede ser suyo.",
    slip && "Marcad cada punto en la hoja y sumadlos al final.",
  ],
  fr: ({ opposite, clue, slip, never, blanks }) => [
    opposite
      ? "Asseyez-vous face à face, le plateau entre vous. Chaque mot est écrit deux fois : lisez celui de votre côté."
      : "Asseyez-vous côte à côte, le plateau devant vous.",
    blanks &&
      "Avant de commencer, écrivez sur les lignes pointillées les mots que vous donne la personne qui mène le jeu.",
    "Gardez les mains au bord de la table jusqu’à l’appel.",
    clue === "example"
      ? "Écoutez la phrase et touchez le mot dont elle parle."
      : clue === "same"
        ? "Écoutez et touchez la case où c’est écrit."
        : clue === "gloss"
          ? "Écoutez et touchez la case qui a le même sens."
          : "Écoutez et touchez la case qui va avec le mot.",
    never && "Certaines cases ne sont jamais appelées.",
    "Qui touche la bonne case en premier marque un point. Une erreur ne rapporte rien.",
    "Si vous n’êtes pas d’accord, demandez à la personne qui dirige le jeu : le point peut lui revenir.",
    slip && "Cochez chaque point sur la fiche et faites le total à la fin.",
  ],
  de: ({ opposite, clue, slip, never, blanks }) => [
    opposite
      ? "Setzt euch einander gegenüber, das Spielfeld zwischen euch. Jedes Wort steht zweimal da: Lest das auf eurer Seite."
      : "Setzt euch nebeneinander, das Spielfeld vor euch.",
    blanks && "Schreibt vor dem Beginn die Wörter auf die gepunkteten Linien, die euch die Spielleitung nennt.",
    "Lasst die Hände an der Tischkante, bis ihr den Ruf hört.",
    clue === "example"
      ? "Hört den Satz an und tippt auf das Wort, um das es geht."
      : clue === "same"
        ? "Hört zu und tippt auf das Feld, auf dem es steht."
        : clue === "gloss"
          ? "Hört zu und tippt auf das Feld, das dasselbe bedeutet."
          : "Hört zu und tippt auf das Feld, das zu dem Wort gehört.",
    never && "Einige Felder werden nie aufgerufen.",
    "Wer zuerst auf das richtige Feld tippt, bekommt einen Punkt. Ein falsches Feld bringt nichts.",
    "Wenn ihr euch nicht einig seid, fragt die Lehrkraft: Dann kann der Punkt an sie gehen.",
    slip && "Hakt jeden Punkt auf dem Zettel ab und zählt am Ende zusammen.",
  ],
  pt: ({ opposite, clue, slip, never, blanks }) => [
    opposite
      ? "Sentem-se frente a frente, com o tabuleiro no meio. Cada palavra aparece duas vezes: leiam a do vosso lado."
      : "Sentem-se lado a lado, com o tabuleiro à frente.",
    blanks && "Antes de começar, escrevam nas linhas ponteadas as palavras que vos disser quem dirige o jogo.",
    "Deixem as mãos na beira da mesa até ouvirem a chamada.",
    clue === "example"
      ? "Ouçam a frase e toquem na palavra de que ela trata."
      : clue === "same"
        ? "Ouçam e toquem na casa onde está o que ouvem."
        : clue === "gloss"
          ? "Ouçam e toquem na casa que significa o mesmo."
          : "Ouçam e toquem na casa que corresponde à palavra.",
    never && "Algumas casas nunca são chamadas.",
    "Quem tocar primeiro na casa certa ganha um ponto. Uma casa errada não dá nada.",
    "Se não estiverem de acordo, perguntem a quem dirige o jogo: o ponto pode ficar para essa pessoa.",
    slip && "Marquem cada ponto na ficha e somem-nos no fim.",
  ],
};

/** Built-in steps for learners. */
export function boardDirections({ options, words, targets }: DealtBoard, lang: string): readonly string[] | undefined {
  const { facing, slip } = options;
  const clue: Facts["clue"] = options.clue === options.show ? "same" : options.clue;
  const facts = {
    opposite: facing === "opposite",
    clue,
    slip: slip === "score",
    never: words.length > targets,
    blanks: options.blanks > 0,
  };
  return languages[lang]?.(facts).filter((line) => line !== false);
}
