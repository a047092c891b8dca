import { type SlipLanguage, slipLanguageOf } from "../../activities/slip-words";

/** What stands on the card of a station or desk, which the learners there read. A word that is missing does not compile. */
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

const words: Readonly<Record<SlipLanguage, StationWords>> = {
  en: {
    station: "Station",
    desk: "Desk",
    time: "Time",
    atHand: "At hand",
    whatToDo: "What to do",
    from: "From",
    here: "Here",
    next: "Then",
    stay: "stay for the end",
    wait: "wait a round",
    sets: "Sets",
    caller: "Caller",
    oneCalls: "One of you calls from the list and does not play. In the next game somebody else calls.",
    teacherCalls: "Ask the teacher to call: all of you play.",
    tooFew: (learners) => `Only ${learners} of you? Then ask the teacher to call.`,
    setsFor: (count, each) =>
      count === 1 ? "1, for all of you" : `${count}, one for ${each === "1" ? "each of you" : `every ${each} of you`}`,
    or: "or",
    group: (number) => `group ${number}`,
    goToStation: (number) => `go to station ${number}`,
    goToDesk: (number) => `go to desk ${number}`,
  },
  es: {
    station: "Estación",
    desk: "Mesa",
    time: "Tiempo",
    atHand: "Material",
    whatToDo: "Qué hacer",
    from: "Desde",
    here: "Aquí",
    next: "Después",
    stay: "quedaos hasta el final",
    wait: "esperad un turno",
    sets: "Juegos",
    caller: "Quien lee",
    oneCalls: "Una persona del grupo lee la lista y no juega. En la partida siguiente lee otra.",
    teacherCalls: "Pedid a quien dirige el juego que lea la lista: todo el grupo juega.",
    tooFew: (learners) => `¿Sois solo ${learners}? Entonces pedid a quien dirige el juego que lea la lista.`,
    setsFor: (count, each) =>
      count === 1 ? "1, para todo el grupo" : `${count}, uno ${each === "1" ? "por persona" : `para cada ${each}`}`,
    or: "o",
    group: (number) => `grupo ${number}`,
    goToStation: (number) => `id a la estación ${number}`,
    goToDesk: (number) => `id a la mesa ${number}`,
  },
  fr: {
    station: "Atelier",
    desk: "Table",
    time: "Temps",
    atHand: "Matériel",
    whatToDo: "Que faire",
    from: "Dès",
    here: "Ici",
    next: "Ensuite",
    stay: "restez jusqu’à la fin",
    wait: "attendez un tour",
    sets: "Jeux",
    caller: "Qui lit",
    oneCalls: "Une personne du groupe lit la liste et ne joue pas. À la partie suivante, une autre la lit.",
    teacherCalls: "Demandez à la personne qui dirige le jeu de lire la liste\u00a0: tout le groupe joue.",
    tooFew: (learners) =>
      `Vous n’êtes que ${learners}\u00a0? Demandez alors à la personne qui dirige le jeu de lire la liste.`,
    setsFor: (count, each) =>
      count === 1 ? "1, pour tout le groupe" : `${count}, un ${each === "1" ? "par personne" : `pour ${each}`}`,
    or: "ou",
    group: (number) => `groupe ${number}`,
    goToStation: (number) => `allez à l’atelier ${number}`,
    goToDesk: (number) => `allez à la table ${number}`,
  },
  de: {
    station: "Station",
    desk: "Tisch",
    time: "Zeit",
    atHand: "Material",
    whatToDo: "Was zu tun ist",
    from: "Ab",
    here: "Hier",
    next: "Danach",
    stay: "bleibt bis zum Ende",
    wait: "wartet eine Runde",
    sets: "Spielsätze",
    caller: "Wer vorliest",
    oneCalls:
      "Jemand aus der Gruppe liest die Liste vor und spielt nicht mit. Beim nächsten Spiel liest jemand anders.",
    teacherCalls: "Bittet die Lehrkraft, die Liste vorzulesen: Alle aus der Gruppe spielen.",
    tooFew: (learners) => `Sind nur ${learners} in eurer Gruppe? Dann bittet die Lehrkraft, die Liste vorzulesen.`,
    setsFor: (count, each) =>
      count === 1 ? "1 für die ganze Gruppe" : `${count}, einer für ${each === "1" ? "jede Person" : `je ${each}`}`,
    or: "oder",
    group: (number) => `Gruppe ${number}`,
    goToStation: (number) => `geht zu Station ${number}`,
    goToDesk: (number) => `geht zu Tisch ${number}`,
  },
  pt: {
    station: "Estação",
    desk: "Mesa",
    time: "Tempo",
    atHand: "Material",
    whatToDo: "O que fazer",
    from: "Desde",
    here: "Aqui",
    next: "Depois",
    stay: "fiquem até ao fim",
    wait: "esperem uma ronda",
    sets: "Conjuntos",
    caller: "Quem lê",
    oneCalls: "Uma pessoa do grupo lê a lista e não joga. No jogo seguinte lê outra.",
    teacherCalls: "Peçam a quem dirige o jogo que leia a lista: todo o grupo joga.",
    tooFew: (learners) => `São só ${learners}? Então peçam a quem dirige o jogo que leia a lista.`,
    setsFor: (count, each) =>
      count === 1 ? "1, para todo o grupo" : `${count}, um ${each === "1" ? "por pessoa" : `para cada ${each}`}`,
    or: "ou",
    group: (number) => `grupo ${number}`,
    goToStation: (number) => `vão para a estação ${number}`,
    goToDesk: (number) => `vão para a mesa ${number}`,
  },
};

/** In the language of the directions on the card (BCP 47), else English. */
export function stationWords(lang: string): StationWords {
  return words[slipLanguageOf(lang) ?? "en"];
}
