import { type SlipLanguage, slipLanguageOf } from "./slip-words";

/*
 * What is to be had at hand, as the guide and the cards of stations list it: parts of a list, so they begin small. A word that is
 * missing in one of the languages does not compile. Quoted names are those on the papers, which are English.
 */

export interface MaterialWords {
  readonly pieces: string;
  readonly scissors: string;
  readonly table: string;
  readonly boardTable: string;
  readonly sleevedBoardTable: string;
  readonly mat: string;
  readonly list: string;
  readonly object: string;
  readonly hanging: string;
  readonly roomPlan: string;
  /** What is written with: on paper, and on film or a sleeve. */
  readonly pencil: string;
  readonly pencils: string;
  readonly pen: string;
  readonly pens: string;
  /** After a slip: ` in a sleeve`. */
  readonly inSleeve: string;
  /** After several slips: `, each in a sleeve`. */
  readonly eachInSleeve: string;
  /** `sleeve` is one of the two above or empty, `tool` one of those that are written with. */
  scoreSlip(sleeve: string, tool: string): string;
  recordingSlip(sleeve: string, tool: string): string;
  sentenceSlip(sleeve: string, tool: string): string;
  tallySlip(sleeve: string, tool: string): string;
  blankSlips(sleeve: string, tools: string): string;
  tallySheet(teams: number, sleeve: string): string;
  forDottedCells(tools: string): string;
  /** For the packets of a set. */
  bags(packets: number): string;
  /** Seconds. */
  timer(work: number, move: number): string;
}

const words: Readonly<Record<SlipLanguage, MaterialWords>> = {
  en: {
    pieces: "the pieces",
    scissors: "scissors for each learner of the first class",
    table: "a clear table for each set",
    boardTable: "a clear table for each board",
    sleevedBoardTable: "a clear table and a sleeve for each board",
    mat: "a mat for each set",
    list: "the caller’s list of the hour",
    object: "for each group one soft object, such as a cloth or a sponge",
    hanging: "tape or pins for the cards",
    roomPlan: "the plan “Round the room”",
    pencil: "a pencil",
    pencils: "pencils",
    pen: "a wipeable pen with a cloth",
    pens: "wipeable pens and cloths",
    inSleeve: " in a sleeve",
    eachInSleeve: ", each in a sleeve",
    scoreSlip: (sleeve, tool) => `a score slip${sleeve} and ${tool} for each board`,
    recordingSlip: (sleeve, tool) => `a recording slip${sleeve} and ${tool} for each group`,
    sentenceSlip: (sleeve, tool) => `a slip${sleeve} and ${tool} for each group`,
    tallySlip: (sleeve, tool) => `a tally slip${sleeve} and ${tool} for each group`,
    blankSlips: (sleeve, tools) => `the blank statement slips${sleeve}, and ${tools}`,
    tallySheet: (teams, sleeve) => `the tally sheet for ${teams} teams${sleeve}`,
    forDottedCells: (tools) => `${tools}, for the cells with a dotted line`,
    bags: (packets) =>
      packets === 1 ? "a bag or envelope for each set" : `${packets} bags or envelopes a set, one for each packet`,
    timer: (work, move) => `a timer: ${work} seconds a desk, ${move} to move on`,
  },
  es: {
    pieces: "las piezas",
    scissors: "unas tijeras por persona para la primera clase",
    table: "una mesa despejada para cada juego",
    boardTable: "una mesa despejada para cada tablero",
    sleevedBoardTable: "una mesa despejada y una funda transparente para cada tablero",
    mat: "un tablero para cada juego",
    list: "la lista de esta hora para quien lee",
    object: "un objeto blando para cada grupo, como un paño o una esponja",
    hanging: "cinta adhesiva o chinchetas para las tarjetas",
    roomPlan: "el plano “Round the room”",
    pencil: "un lápiz",
    pencils: "lápices",
    pen: "un rotulador borrable con un paño",
    pens: "rotuladores borrables y paños",
    inSleeve: " en una funda transparente",
    eachInSleeve: ", cada una en una funda transparente",
    scoreSlip: (sleeve, tool) => `una hoja de puntos${sleeve} y ${tool} para cada tablero`,
    recordingSlip: (sleeve, tool) => `una hoja de respuestas${sleeve} y ${tool} para cada grupo`,
    sentenceSlip: (sleeve, tool) => `una hoja${sleeve} y ${tool} para cada grupo`,
    tallySlip: (sleeve, tool) => `una hoja de puntos${sleeve} y ${tool} para cada grupo`,
    blankSlips: (sleeve, tools) => `las hojitas en blanco para frases${sleeve}, y ${tools}`,
    tallySheet: (teams, sleeve) => `la hoja de puntos para ${teams} equipos${sleeve}`,
    forDottedCells: (tools) => `${tools}, para las casillas con una línea de puntos`,
    bags: (packets) =>
      packets === 1 ? "una bolsa o un sobre para cada juego" : `${packets} bolsas o sobres por juego, numerados`,
    timer: (work, move) => `un cronómetro: ${work} segundos por mesa, ${move} para cambiar`,
  },
  fr: {
    pieces: "les pièces",
    scissors: "des ciseaux pour chacun dans la première classe",
    table: "une table libre pour chaque jeu",
    boardTable: "une table libre pour chaque plateau",
    sleevedBoardTable: "une table libre et une pochette transparente pour chaque plateau",
    mat: "un plateau pour chaque jeu",
    list: "la liste de cette heure pour la personne qui lit",
    object: "un objet mou pour chaque groupe, par exemple un chiffon ou une éponge",
    hanging: "du ruban adhésif ou des punaises pour les cartes",
    roomPlan: "le plan “Round the room”",
    pencil: "un crayon",
    pencils: "des crayons",
    pen: "un feutre effaçable avec un chiffon",
    pens: "des feutres effaçables et des chiffons",
    inSleeve: " dans une pochette transparente",
    eachInSleeve: ", chacune dans une pochette transparente",
    scoreSlip: (sleeve, tool) => `une fiche de points${sleeve} et ${tool} pour chaque plateau`,
    recordingSlip: (sleeve, tool) => `une fiche de réponses${sleeve} et ${tool} pour chaque groupe`,
    sentenceSlip: (sleeve, tool) => `une fiche${sleeve} et ${tool} pour chaque groupe`,
    tallySlip: (sleeve, tool) => `une fiche de points${sleeve} et ${tool} pour chaque groupe`,
    blankSlips: (sleeve, tools) => `les fiches vierges pour des phrases${sleeve}, et ${tools}`,
    tallySheet: (teams, sleeve) => `la feuille de points pour ${teams} équipes${sleeve}`,
    forDottedCells: (tools) => `${tools}, pour les cases à ligne pointillée`,
    bags: (packets) =>
      packets === 1
        ? "un sachet ou une enveloppe pour chaque jeu"
        : `${packets} sachets ou enveloppes par jeu, numérotés`,
    timer: (work, move) => `un minuteur\u00a0: ${work} secondes par table, ${move} pour changer`,
  },
  de: {
    pieces: "die Teile",
    scissors: "Scheren für alle in der ersten Klasse",
    table: "ein freier Tisch für jeden Spielsatz",
    boardTable: "ein freier Tisch für jedes Spielfeld",
    sleevedBoardTable: "ein freier Tisch und eine Klarsichthülle für jedes Spielfeld",
    mat: "eine Unterlage für jeden Spielsatz",
    list: "die Liste dieser Stunde für die Person, die vorliest",
    object: "ein weicher Gegenstand für jede Gruppe, etwa ein Tuch oder ein Schwamm",
    hanging: "Klebeband oder Reißnägel für die Karten",
    roomPlan: "der Plan „Round the room“",
    pencil: "ein Bleistift",
    pencils: "Bleistifte",
    pen: "ein abwischbarer Stift mit Tuch",
    pens: "abwischbare Stifte und Tücher",
    inSleeve: " in einer Klarsichthülle",
    eachInSleeve: ", jeder in einer Klarsichthülle",
    scoreSlip: (sleeve, tool) => `ein Punktezettel${sleeve} und ${tool} für jedes Spielfeld`,
    recordingSlip: (sleeve, tool) => `ein Antwortzettel${sleeve} und ${tool} für jede Gruppe`,
    sentenceSlip: (sleeve, tool) => `ein Zettel${sleeve} und ${tool} für jede Gruppe`,
    tallySlip: (sleeve, tool) => `ein Punktezettel${sleeve} und ${tool} für jede Gruppe`,
    blankSlips: (sleeve, tools) => `die leeren Zettel für eigene Sätze${sleeve}, und ${tools}`,
    tallySheet: (teams, sleeve) => `das Punkteblatt für ${teams} Mannschaften${sleeve}`,
    forDottedCells: (tools) => `${tools} für die Felder mit punktierter Linie`,
    bags: (packets) =>
      packets === 1
        ? "eine Tüte oder ein Umschlag für jeden Spielsatz"
        : `${packets} nummerierte Tüten oder Umschläge für jeden Spielsatz`,
    timer: (work, move) => `eine Uhr: ${work} Sekunden an jedem Tisch, ${move} zum Wechseln`,
  },
  pt: {
    pieces: "as peças",
    scissors: "tesouras para cada pessoa da primeira turma",
    table: "uma mesa livre para cada conjunto",
    boardTable: "uma mesa livre para cada tabuleiro",
    sleevedBoardTable: "uma mesa livre e uma bolsa transparente para cada tabuleiro",
    mat: "um tabuleiro para cada conjunto",
    list: "a lista desta hora para quem lê",
    object: "um objeto mole para cada grupo, como um pano ou uma esponja",
    hanging: "fita-cola ou pioneses para os cartões",
    roomPlan: "a planta “Round the room”",
    pencil: "um lápis",
    pencils: "lápis",
    pen: "um marcador apagável com um pano",
    pens: "marcadores apagáveis e panos",
    inSleeve: " numa bolsa transparente",
    eachInSleeve: ", cada uma numa bolsa transparente",
    scoreSlip: (sleeve, tool) => `uma ficha de pontos${sleeve} e ${tool} para cada tabuleiro`,
    recordingSlip: (sleeve, tool) => `uma ficha de respostas${sleeve} e ${tool} para cada grupo`,
    sentenceSlip: (sleeve, tool) => `uma ficha${sleeve} e ${tool} para cada grupo`,
    tallySlip: (sleeve, tool) => `uma ficha de pontos${sleeve} e ${tool} para cada grupo`,
    blankSlips: (sleeve, tools) => `as fichas em branco para frases${sleeve}, e ${tools}`,
    tallySheet: (teams, sleeve) => `a folha de pontos para ${teams} equipas${sleeve}`,
    forDottedCells: (tools) => `${tools}, para as casas com uma linha ponteada`,
    bags: (packets) =>
      packets === 1
        ? "um saco ou envelope para cada conjunto"
        : `${packets} sacos ou envelopes por conjunto, numerados`,
    timer: (work, move) => `um cronómetro: ${work} segundos por mesa, ${move} para mudar`,
  },
};

/** In a language (BCP 47) that learners read directions in, else English. */
export function materialWords(lang: string): MaterialWords {
  return words[slipLanguageOf(lang) ?? "en"];
}
