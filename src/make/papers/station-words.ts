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
    group: (number) => `grupo ${number}`,
    goToStation: (number) => `vão para a estação ${number}`,
    goToDesk: (number) => `vão para a mesa ${number}`,
  },
};

/** In the language of the directions on the card (BCP 47), else English. */
export function stationWords(lang: string): StationWords {
  return words[slipLanguageOf(lang) ?? "en"];
}
