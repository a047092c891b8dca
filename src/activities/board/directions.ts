import { type DealtBoard, saysForms } from "./model";

interface Facts {
  /** Players read from two sides. */
  readonly opposite: boolean;
  readonly three: boolean;
  /**
   * What is called; `same` is what stands on the board. `form`: a form, its verb and person on the board; `person` the other way
   * round; `mixed`: forms for some cells, words for others.
   */
  readonly clue: "same" | "word" | "gloss" | "example" | "form" | "person" | "mixed";
  readonly slip: boolean;
  readonly never: boolean;
  readonly blanks: boolean;
}

type Steps = (facts: Facts) => readonly (string | false)[];

const languages: Readonly<Record<string, Steps>> = {
  en: ({ opposite, three, clue, slip, never, blanks }) => [
    opposite
      ? three
        ? "Sit round the board, two of you on one side and the third opposite. Each word stands twice: read the one on your side."
        : "Sit opposite each other, the board between you. Each word stands twice: read the one on your side."
      : "Sit side by side with the board in front of you.",
    blanks && "Before you begin, write on the dotted lines the words that the caller gives you.",
    "Keep your hands on the edge of the table until you hear the call.",
    clue === "example"
      ? "Listen to the sentence and touch the word that it is about."
      : clue === "same"
        ? "Listen and touch the cell with what you hear."
        : clue === "form"
          ? "Listen to the form and touch the cell with its verb and person."
          : clue === "person"
            ? "Listen to the verb and the person and touch the cell with the form."
            : clue === "mixed"
              ? "Listen and touch the cell that belongs to what you hear."
              : clue === "gloss"
                ? "Listen and touch the cell that means the same."
                : "Listen and touch the cell that belongs to the word.",
    never && "Some of the cells are never called.",
    "Who touches the right cell first scores a point. A wrong touch scores nothing.",
    "If you do not agree, ask the teacher: then the point may go to the teacher.",
    slip && "Tick each point on the slip and add them up at the end.",
  ],
  es: ({ opposite, three, clue, slip, never, blanks }) => [
    opposite
      ? three
        ? "Sentaos alrededor del tablero: dos a un lado y la tercera persona enfrente. Cada palabra aparece dos veces: leed la de vuestro lado."
        : "Sentaos frente a frente con el tablero en medio. Cada palabra aparece dos veces: leed la de vuestro lado."
      : "Sentaos uno al lado del otro con el tablero delante.",
    blanks && "Antes de empezar, escribid en las líneas de puntos las palabras que os diga quien dirige el juego.",
    "Dejad las manos en el borde de la mesa hasta oír la llamada.",
    clue === "example"
      ? "Escuchad la frase y tocad la palabra de la que trata."
      : clue === "same"
        ? "Escuchad y tocad la casilla con lo que oís."
        : clue === "form"
          ? "Escuchad la forma y tocad la casilla con su verbo y su persona."
          : clue === "person"
            ? "Escuchad el verbo y la persona y tocad la casilla con la forma."
            : clue === "mixed"
              ? "Escuchad y tocad la casilla que corresponde a lo que oís."
              : clue === "gloss"
                ? "Escuchad y tocad la casilla que significa lo mismo."
                : "Escuchad y tocad la casilla que corresponde a la palabra.",
    never && "Algunas casillas no se nombran nunca.",
    "Quien toque primero la casilla correcta gana un punto. Si no es la correcta, no hay punto.",
    "Si no estáis de acuerdo, preguntad a quien dirige el juego: el punto puede ser suyo.",
    slip && "Marcad cada punto en la hoja y sumadlos al final.",
  ],
  fr: ({ opposite, three, clue, slip, never, blanks }) => [
    opposite
      ? three
        ? "Asseyez-vous autour du plateau : deux d’un côté, le ou la troisième en face. Chaque mot est écrit deux fois : lisez celui de votre côté."
        : "Asseyez-vous face à face, le plateau entre vous. Chaque mot est écrit deux fois : lisez celui de votre côté."
      : "Asseyez-vous côte à côte, le plateau devant vous.",
    blanks &&
      "Avant de commencer, écrivez sur les lignes pointillées les mots que vous donne la personne qui mène le jeu.",
    "Gardez les mains au bord de la table jusqu’à l’appel.",
    clue === "example"
      ? "Écoutez la phrase et touchez le mot dont elle parle."
      : clue === "same"
        ? "Écoutez et touchez la case où c’est écrit."
        : clue === "form"
          ? "Écoutez la forme et touchez la case avec son verbe et sa personne."
          : clue === "person"
            ? "Écoutez le verbe et la personne et touchez la case avec la forme."
            : clue === "mixed"
              ? "Écoutez et touchez la case qui va avec ce que vous entendez."
              : clue === "gloss"
                ? "Écoutez et touchez la case qui a le même sens."
                : "Écoutez et touchez la case qui va avec le mot.",
    never && "Certaines cases ne sont jamais appelées.",
    "Qui touche la bonne case en premier marque un point. Une erreur ne rapporte rien.",
    "Si vous n’êtes pas d’accord, demandez à la personne qui dirige le jeu : le point peut lui revenir.",
    slip && "Cochez chaque point sur la fiche et faites le total à la fin.",
  ],
  de: ({ opposite, three, clue, slip, never, blanks }) => [
    opposite
      ? three
        ? "Setzt euch um das Spielfeld: zwei auf eine Seite, die dritte Person gegenüber. Jedes Wort steht zweimal da: Lest das auf eurer Seite."
        : "Setzt euch einander gegenüber, das Spielfeld zwischen euch. Jedes Wort steht zweimal da: Lest das auf eurer Seite."
      : "Setzt euch nebeneinander, das Spielfeld vor euch.",
    blanks && "Schreibt vor dem Beginn die Wörter auf die gepunkteten Linien, die euch die Spielleitung nennt.",
    "Lasst die Hände an der Tischkante, bis ihr den Ruf hört.",
    clue === "example"
      ? "Hört den Satz an und tippt auf das Wort, um das es geht."
      : clue === "same"
        ? "Hört zu und tippt auf das Feld, auf dem es steht."
        : clue === "form"
          ? "Hört die Form und tippt auf das Feld mit ihrem Verb und ihrer Person."
          : clue === "person"
            ? "Hört Verb und Person und tippt auf das Feld mit der Form."
            : clue === "mixed"
              ? "Hört zu und tippt auf das Feld, das zu dem gehört, was ihr hört."
              : clue === "gloss"
                ? "Hört zu und tippt auf das Feld, das dasselbe bedeutet."
                : "Hört zu und tippt auf das Feld, das zu dem Wort gehört.",
    never && "Einige Felder werden nie aufgerufen.",
    "Wer zuerst auf das richtige Feld tippt, bekommt einen Punkt. Ein falsches Feld bringt nichts.",
    "Wenn ihr euch nicht einig seid, fragt die Lehrkraft: Dann kann der Punkt an sie gehen.",
    slip && "Hakt jeden Punkt auf dem Zettel ab und zählt am Ende zusammen.",
  ],
  pt: ({ opposite, three, clue, slip, never, blanks }) => [
    opposite
      ? three
        ? "Sentem-se à volta do tabuleiro: dois de um lado e o terceiro em frente. Cada palavra aparece duas vezes: leiam a do vosso lado."
        : "Sentem-se frente a frente, com o tabuleiro no meio. Cada palavra aparece duas vezes: leiam a do vosso lado."
      : "Sentem-se lado a lado, com o tabuleiro à frente.",
    blanks && "Antes de começar, escrevam nas linhas ponteadas as palavras que vos disser quem dirige o jogo.",
    "Deixem as mãos na beira da mesa até ouvirem a chamada.",
    clue === "example"
      ? "Ouçam a frase e toquem na palavra de que ela trata."
      : clue === "same"
        ? "Ouçam e toquem na casa onde está o que ouvem."
        : clue === "form"
          ? "Ouçam a forma e toquem na casa com o verbo e a pessoa dela."
          : clue === "person"
            ? "Ouçam o verbo e a pessoa e toquem na casa com a forma."
            : clue === "mixed"
              ? "Ouçam e toquem na casa que corresponde ao que ouvem."
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
export function boardDirections(dealt: DealtBoard, lang: string): readonly string[] | undefined {
  const { options, words, targets } = dealt;
  const { facing, slip, players } = options;
  const forms = saysForms(dealt);
  const clue: Facts["clue"] =
    options.clue === options.show
      ? "same"
      : forms === "some"
        ? "mixed"
        : forms === "all"
          ? options.clue === "word"
            ? "person"
            : "form"
          : options.clue;
  const facts = {
    opposite: facing === "opposite",
    three: players === 3,
    clue,
    slip: slip === "score",
    never: words.length > targets,
    blanks: options.blanks > 0,
  };
  return languages[lang]?.(facts).filter((line) => line !== false);
}
