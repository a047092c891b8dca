/*
 * What stands on papers that learners write on, in the languages that have directions. A word that is missing in one of them does
 * not compile.
 */

export interface SlipWords {
  /** Heads of columns. */
  readonly place: string;
  readonly strip: string;
  readonly right: string;
  readonly card: string;
  readonly packet: string;
  readonly sentence: string;
  readonly points: string;
  readonly total: string;
  readonly teacher: string;
  /** Before what is written in. */
  readonly set: string;
  readonly group: string;
  readonly pair: string;
  readonly board: string;
  readonly class: string;
  readonly statement: string;
  readonly rightIs: string;
  readonly by: string;
  /** Lines of their own. */
  readonly desks: string;
  readonly dispute: string;
  readonly finishers: string;
  deal(code: string): string;
  circle(number: number): string;
  /** Which of several circles in one room a slip is for. */
  ownCircle(number: number): string;
  statements(count: number): string;
  team(number: number): string;
}

export const slipLanguages = ["en", "es", "fr", "de", "pt"] as const;
export type SlipLanguage = (typeof slipLanguages)[number];

const words: Readonly<Record<SlipLanguage, SlipWords>> = {
  en: {
    place: "Place",
    strip: "Strip",
    right: "Right",
    card: "Card",
    packet: "Packet",
    sentence: "Sentence",
    points: "Points",
    total: "Total",
    teacher: "Teacher",
    set: "Set:",
    group: "Group:",
    pair: "Pair:",
    board: "Board:",
    class: "Class:",
    statement: "Statement",
    rightIs: "Right is",
    by: "By",
    desks: "Write each desk’s letters in its column.",
    dispute: "Tick who touched first; a dispute goes to the teacher.",
    finishers: "for those who finish first",
    deal: (code) => `Deal ${code}`,
    circle: (number) => `circle ${number}`,
    ownCircle: (number) => `Your circle: ${number}. Only cards with ${number} behind the letter belong to it.`,
    statements: (count) => `${count} statements.`,
    team: (number) => `Team ${number}`,
  },
  es: {
    place: "Lugar",
    strip: "Tira",
    right: "Bien",
    card: "Tarjeta",
    packet: "Sobre",
    sentence: "Frase",
    points: "Puntos",
    total: "Total",
    teacher: "Profe",
    set: "Juego:",
    group: "Grupo:",
    pair: "Pareja:",
    board: "Tablero:",
    class: "Clase:",
    statement: "Frase",
    rightIs: "Lo correcto",
    by: "De",
    desks: "Escribid las letras de cada mesa en su columna.",
    dispute: "Marcad quién ha tocado primero; si no hay acuerdo, el punto es para quien dirige el juego.",
    finishers: "para quienes terminan antes",
    deal: (code) => `Reparto ${code}`,
    circle: (number) => `círculo ${number}`,
    ownCircle: (number) =>
      `Vuestro círculo: ${number}. Solo le pertenecen las tarjetas con un ${number} detrás de la letra.`,
    statements: (count) => `${count} frases.`,
    team: (number) => `Equipo ${number}`,
  },
  fr: {
    place: "Place",
    strip: "Bande",
    right: "Juste",
    card: "Carte",
    packet: "Pochette",
    sentence: "Phrase",
    points: "Points",
    total: "Total",
    teacher: "Prof",
    set: "Jeu\u00a0:",
    group: "Groupe\u00a0:",
    pair: "Binôme\u00a0:",
    board: "Plateau\u00a0:",
    class: "Classe\u00a0:",
    statement: "Phrase",
    rightIs: "Ce qui est juste",
    by: "De",
    desks: "Notez les lettres de chaque table dans sa colonne.",
    dispute: "Cochez qui a touché en premier\u00a0; en cas de désaccord, le point va à la personne qui dirige le jeu.",
    finishers: "pour ceux qui finissent en premier",
    deal: (code) => `Donne ${code}`,
    circle: (number) => `cercle ${number}`,
    ownCircle: (number) =>
      `Votre cercle\u00a0: ${number}. Seules les cartes dont la lettre est suivie de ${number} en font partie.`,
    statements: (count) => `${count} phrases.`,
    team: (number) => `Équipe ${number}`,
  },
  de: {
    place: "Platz",
    strip: "Streifen",
    right: "Richtig",
    card: "Karte",
    packet: "Päckchen",
    sentence: "Satz",
    points: "Punkte",
    total: "Summe",
    teacher: "Lehrkraft",
    set: "Satz:",
    group: "Gruppe:",
    pair: "Paar:",
    board: "Spielfeld:",
    class: "Klasse:",
    statement: "Aussage",
    rightIs: "Richtig ist",
    by: "Von",
    desks: "Schreibt die Buchstaben jedes Tisches in seine Spalte.",
    dispute: "Hakt ab, wer zuerst getippt hat; im Streitfall geht der Punkt an die Lehrkraft.",
    finishers: "für alle, die zuerst fertig sind",
    deal: (code) => `Code ${code}`,
    circle: (number) => `Kreis ${number}`,
    ownCircle: (number) => `Euer Kreis: ${number}. Nur Karten mit einer ${number} hinter dem Buchstaben gehören dazu.`,
    statements: (count) => `${count} Aussagen.`,
    team: (number) => `Team ${number}`,
  },
  pt: {
    place: "Lugar",
    strip: "Tira",
    right: "Certo",
    card: "Cartão",
    packet: "Envelope",
    sentence: "Frase",
    points: "Pontos",
    total: "Total",
    teacher: "Prof.",
    set: "Conjunto:",
    group: "Grupo:",
    pair: "Par:",
    board: "Tabuleiro:",
    class: "Turma:",
    statement: "Frase",
    rightIs: "O certo é",
    by: "De",
    desks: "Escrevam as letras de cada mesa na coluna dela.",
    dispute: "Marquem quem tocou primeiro; se não houver acordo, o ponto fica para quem dirige o jogo.",
    finishers: "para quem terminar primeiro",
    deal: (code) => `Código ${code}`,
    circle: (number) => `círculo ${number}`,
    ownCircle: (number) => `O vosso círculo: ${number}. Só lhe pertencem os cartões com ${number} a seguir à letra.`,
    statements: (count) => `${count} frases.`,
    team: (number) => `Equipa ${number}`,
  },
};

/** The one of these languages that a tag (BCP 47) is of. */
export function slipLanguageOf(lang: string): SlipLanguage | undefined {
  const primary = lang.toLowerCase().split("-")[0];
  return slipLanguages.find((each) => each === primary);
}

/** Whether slips have words in a language (BCP 47); where not, they are English, and the guide says so. */
export function hasSlipWords(lang: string): boolean {
  return slipLanguageOf(lang) !== undefined;
}

/** The words of slips in the language that explains. */
export function slipWords(lang: string): SlipWords {
  return words[slipLanguageOf(lang) ?? "en"];
}
