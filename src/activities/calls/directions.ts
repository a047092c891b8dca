import type { DealtCalls } from "./model";

type Steps = (facts: {
  readonly slip: boolean;
  readonly teams: boolean;
  readonly reserve: boolean;
  readonly blanks: boolean;
}) => readonly string[];

function steps(...lines: readonly (string | false)[]): string[] {
  return lines.filter((line) => line !== false);
}

const languages: Readonly<Record<string, Steps>> = {
  en: ({ slip, teams, reserve, blanks }) =>
    steps(
      blanks &&
        "Write statements of your own on the blank slips, some true and some false, and hand them to the caller.",
      "Sit or stand facing each other with the object between you, within easy reach. Put your hands behind your back.",
      "Listen to the whole statement.",
      "If it is true, grab the object. If it is false, leave it where it is.",
      "Whoever has it first after a true statement gets a point. Whoever grabs it after a false one loses a point.",
      slip && "Tally your points on the slip.",
      teams && "At the end add up the points of your team.",
      reserve && "In case of a tie there are more statements.",
    ),
  es: ({ slip, teams, reserve, blanks }) =>
    steps(
      blanks &&
        "Escribid frases vuestras en las hojitas en blanco, unas verdaderas y otras falsas, y dádselas a quien lee.",
      "Poneos frente a frente con el objeto en medio, al alcance de todos. Poned las manos detrás de la espalda.",
      "Escuchad la frase entera.",
      "Si es verdadera, coged el objeto. Si es falsa, dejadlo donde está.",
      "Quien lo tenga primero después de una frase verdadera gana un punto. Quien lo coja después de una falsa pierde un punto.",
      slip && "Anotad los puntos en la hoja.",
      teams && "Al final, sumad los puntos de vuestro equipo.",
      reserve && "En caso de empate hay más frases.",
    ),
  fr: ({ slip, teams, reserve, blanks }) =>
    steps(
      blanks &&
        "Écrivez vos propres phrases sur les fiches vierges, des vraies et des fausses, et donnez-les à qui lit.",
      "Mettez-vous face à face, l’objet entre vous, à portée de main. Mettez les mains derrière le dos.",
      "Écoutez la phrase en entier.",
      "Si elle est vraie, attrapez l’objet. Si elle est fausse, n’y touchez pas.",
      "Qui l’attrape en premier après une phrase vraie gagne un point. Qui l’attrape après une phrase fausse perd un point.",
      slip && "Notez vos points sur la fiche.",
      teams && "À la fin, additionnez les points de votre équipe.",
      reserve && "En cas d’égalité, il y a d’autres phrases.",
    ),
  de: ({ slip, teams, reserve, blanks }) =>
    steps(
      blanks &&
        "Schreibt eigene Sätze auf die leeren Zettel, richtige und falsche, und gebt sie der Person, die vorliest.",
      "Stellt oder setzt euch einander gegenüber, der Gegenstand liegt für alle gut erreichbar zwischen euch. Nehmt die Hände hinter den Rücken.",
      "Hört den Satz bis zum Ende an.",
      "Ist er richtig, greift nach dem Gegenstand. Ist er falsch, lasst ihn liegen.",
      "Wer ihn nach einem richtigen Satz zuerst hat, bekommt einen Punkt. Wer nach einem falschen zugreift, verliert einen.",
      slip && "Notiert eure Punkte auf dem Zettel.",
      teams && "Zählt am Ende die Punkte eurer Mannschaft zusammen.",
      reserve && "Bei Gleichstand gibt es weitere Sätze.",
    ),
  pt: ({ slip, teams, reserve, blanks }) =>
    steps(
      blanks && "Escrevam frases vossas nas fichas em branco, umas verdadeiras e outras falsas, e deem-nas a quem lê.",
      "Fiquem frente a frente, com o objeto no meio, ao alcance de todos. Ponham as mãos atrás das costas.",
      "Ouçam a frase até ao fim.",
      "Se for verdadeira, agarrem o objeto. Se for falsa, deixem-no onde está.",
      "Quem o agarrar primeiro depois de uma frase verdadeira ganha um ponto. Quem o agarrar depois de uma falsa perde um ponto.",
      slip && "Anotem os pontos na ficha.",
      teams && "No fim, somem os pontos da vossa equipa.",
      reserve && "Em caso de empate há mais frases.",
    ),
};

/** Built-in steps for learners. */
export function callsDirections({ options, deals }: DealtCalls, lang: string): readonly string[] | undefined {
  const { slip, teams, blanks } = options;
  return languages[lang]?.({
    slip: slip === "tally",
    teams: teams !== undefined,
    reserve: deals.some((deal) => deal.reserve.length > 0),
    blanks: blanks > 0,
  });
}
