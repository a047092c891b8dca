/*
 * What stands on papers besides the unit's own words and the directions, in the languages that have directions: one file a language. A
 * word that is missing in one of them does not compile.
 */

export interface PaperWords {
  readonly slips: SlipWords;
  readonly materials: MaterialWords;
  readonly stations: StationWords;
}

/** What stands on papers that learners write on. */
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

/**
 * What is to be had at hand, as the guide and the cards of stations list it: parts of a list, so they begin small. Quoted names are
 * those on the papers, which are English.
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

/** What stands on the card of a station or desk, which the learners there read. */
export interface StationWords {
  readonly station: string;
  readonly desk: string;
  readonly time: string;
  readonly atHand: string;
  readonly whatToDo: string;
  /** Heads of the columns: from when, who is here, and what comes then. */
  readonly from: string;
  readonly here: string;
  readonly next: string;
  readonly stay: string;
  readonly wait: string;
  /** Sets on the table, and who calls. */
  readonly sets: string;
  readonly caller: string;
  readonly oneCalls: string;
  readonly teacherCalls: string;
  /** For groups in which nobody is left over to call; comes after `oneCalls`. */
  tooFew(learners: number): string;
  /** `each`: learners at one set, `2`, `2 or 3` or `2–4`. */
  setsFor(count: number, each: string): string;
  /** Between numbers that follow each other. */
  readonly or: string;
  group(number: number): string;
  goToStation(number: number): string;
  goToDesk(number: number): string;
}
