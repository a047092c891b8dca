import type { DealtLoop } from "./model";
import { hasSlip } from "./options";

interface Facts {
  readonly room: boolean;
  readonly slip: boolean;
  /** Several circles hang in one room. */
  readonly several: boolean;
  /** There is another circle for those who finish first. */
  readonly more: boolean;
  /** Some cards belong nowhere. */
  readonly spare: boolean;
  readonly blanks: boolean;
}

type Steps = (facts: Facts) => readonly (string | false)[];

const languages: Readonly<Record<string, Steps>> = {
  en: ({ room, slip, several, more, spare, blanks }) => [
    room && slip && "Go to the card whose sign stands first on your slip.",
    room && !slip && "Start at any card and remember its sign.",
    several &&
      slip &&
      "Several circles hang in the room. Only cards with the number behind the letter that your slip says belong to yours.",
    several &&
      !slip &&
      "Several circles hang in the room. Only cards with the same number behind the letter as your first card belong to yours.",
    !room && "Spread the cards out on the table and take any one of them.",
    "Read what stands under the line. What answers it?",
    room && "Find the card that has the answer above its line.",
    !room && "Lay the card that has the answer above its line next to it.",
    room && slip && "Write its sign on the slip and go on from there.",
    room && !slip && "Go on from there.",
    spare && "Some cards belong nowhere: if nothing answers your first card, begin at another.",
    room && !spare && "You are done when you are back at your first card and have been at every other.",
    room && spare && "You are done when you are back at your first card.",
    !room && !spare && "Go on until the last card leads back to the first and none is left over.",
    !room && spare && "Go on until the last card leads back to the first. What fits nowhere is left over.",
    !room && slip && "Write the signs on the slip in the order in which the cards lie.",
    !room && "Read the circle to each other. Then call for the key.",
    blanks &&
      "Write a circle of your own on the blank cards, each one answering the card before it, and give it to another group.",
    more && room && slip && "If you finish first, ask for a slip of another circle.",
    more &&
      room &&
      !slip &&
      "If you finish first, go round another circle: its cards have another number behind the letter.",
    more && !room && "If you finish first, ask for another circle.",
  ],
  es: ({ room, slip, several, more, spare, blanks }) => [
    room && slip && "Id a la tarjeta cuyo signo aparece primero en vuestra hoja.",
    room && !slip && "Empezad en cualquier tarjeta y recordad su signo.",
    several &&
      slip &&
      "En la sala hay varios círculos. Al vuestro solo pertenecen las tarjetas con el número detrás de la letra que dice vuestra hoja.",
    several &&
      !slip &&
      "En la sala hay varios círculos. Al vuestro solo pertenecen las tarjetas con el mismo número detrás de la letra que la primera.",
    !room && "Extended las tarjetas sobre la mesa y coged una cualquiera.",
    "Leed lo que está debajo de la línea. ¿Qué le corresponde?",
    room && "Buscad la tarjeta que tiene la respuesta encima de la línea.",
    !room && "Poned a su lado la tarjeta que tiene la respuesta encima de la línea.",
    room && slip && "Escribid su signo en la hoja y seguid desde allí.",
    room && !slip && "Seguid desde allí.",
    spare &&
      "Algunas tarjetas no van en ningún sitio: si a vuestra primera tarjeta no le corresponde nada, empezad en otra.",
    room && !spare && "Habéis terminado cuando volvéis a la primera tarjeta después de pasar por todas.",
    room && spare && "Habéis terminado cuando volvéis a la primera tarjeta.",
    !room && !spare && "Seguid hasta que la última tarjeta lleve a la primera y no sobre ninguna.",
    !room && spare && "Seguid hasta que la última tarjeta lleve a la primera. Lo que no va en ningún sitio sobra.",
    !room && slip && "Escribid los signos en la hoja en el orden en que están las tarjetas.",
    !room && "Leed el círculo en voz alta. Después pedid la solución.",
    blanks &&
      "Escribid un círculo vuestro en las tarjetas en blanco, cada una con la respuesta a la anterior, y dádselo a otro grupo.",
    more && room && slip && "Si termináis antes, pedid la hoja de otro círculo.",
    more &&
      room &&
      !slip &&
      "Si termináis antes, seguid con otro círculo: sus tarjetas llevan otro número detrás de la letra.",
    more && !room && "Si termináis antes, pedid otro círculo.",
  ],
  fr: ({ room, slip, several, more, spare, blanks }) => [
    room && slip && "Allez à la carte dont le signe figure en premier sur votre fiche.",
    room && !slip && "Commencez à n’importe quelle carte et retenez son signe.",
    several &&
      slip &&
      "Il y a plusieurs cercles dans la salle. Seules les cartes dont la lettre est suivie du numéro indiqué sur votre fiche font partie du vôtre.",
    several &&
      !slip &&
      "Il y a plusieurs cercles dans la salle. Seules les cartes dont la lettre est suivie du même numéro que votre première carte font partie du vôtre.",
    !room && "Étalez les cartes sur la table et prenez-en une au hasard.",
    "Lisez ce qui est écrit sous la ligne. Qu’est-ce qui y répond ?",
    room && "Trouvez la carte qui porte la réponse au-dessus de la ligne.",
    !room && "Posez à côté la carte qui porte la réponse au-dessus de la ligne.",
    room && slip && "Notez son signe sur la fiche et continuez à partir de là.",
    room && !slip && "Continuez à partir de là.",
    spare && "Certaines cartes ne vont nulle part : si rien ne répond à votre première carte, commencez à une autre.",
    room &&
      !spare &&
      "Vous avez fini quand vous êtes revenus à la première carte après être passés par toutes les autres.",
    room && spare && "Vous avez fini quand vous êtes revenus à la première carte.",
    !room && !spare && "Continuez jusqu’à ce que la dernière carte ramène à la première et qu’il n’en reste aucune.",
    !room &&
      spare &&
      "Continuez jusqu’à ce que la dernière carte ramène à la première. Ce qui ne va nulle part reste de côté.",
    !room && slip && "Notez les signes sur la fiche dans l’ordre des cartes.",
    !room && "Lisez le cercle à voix haute. Demandez ensuite le corrigé.",
    blanks &&
      "Écrivez un cercle à vous sur les cartes vierges, chacune répondant à la précédente, et donnez-le à un autre groupe.",
    more && room && slip && "Si vous finissez en premier, demandez la fiche d’un autre cercle.",
    more &&
      room &&
      !slip &&
      "Si vous finissez en premier, parcourez un autre cercle : ses cartes ont un autre numéro après la lettre.",
    more && !room && "Si vous finissez en premier, demandez un autre cercle.",
  ],
  de: ({ room, slip, several, more, spare, blanks }) => [
    room && slip && "Geht zu der Karte, deren Zeichen auf eurem Zettel zuerst steht.",
    room && !slip && "Fangt bei irgendeiner Karte an und merkt euch ihr Zeichen.",
    several &&
      slip &&
      "Im Raum hängen mehrere Kreise. Zu eurem gehören nur Karten mit der Zahl hinter dem Buchstaben, die auf eurem Zettel steht.",
    several &&
      !slip &&
      "Im Raum hängen mehrere Kreise. Zu eurem gehören nur Karten mit derselben Zahl hinter dem Buchstaben wie bei eurer ersten Karte.",
    !room && "Breitet die Karten auf dem Tisch aus und nehmt irgendeine.",
    "Lest, was unter der Linie steht. Was gehört dazu?",
    room && "Sucht die Karte, auf der die Antwort über der Linie steht.",
    !room && "Legt die Karte daneben, auf der die Antwort über der Linie steht.",
    room && slip && "Schreibt ihr Zeichen auf den Zettel und geht von dort weiter.",
    room && !slip && "Geht von dort weiter.",
    spare && "Einige Karten gehören nirgendwohin: Passt zu eurer ersten Karte nichts, fangt bei einer anderen an.",
    room && !spare && "Ihr seid fertig, wenn ihr wieder bei eurer ersten Karte ankommt und bei allen anderen wart.",
    room && spare && "Ihr seid fertig, wenn ihr wieder bei eurer ersten Karte ankommt.",
    !room && !spare && "Macht weiter, bis die letzte Karte zur ersten führt und keine übrig ist.",
    !room && spare && "Macht weiter, bis die letzte Karte zur ersten führt. Was nirgendwo passt, bleibt übrig.",
    !room && slip && "Schreibt die Zeichen in der Reihenfolge der Karten auf den Zettel.",
    !room && "Lest euch den Kreis gegenseitig vor. Bittet dann um die Lösung.",
    blanks &&
      "Schreibt einen eigenen Kreis auf die leeren Karten, jede mit der Antwort auf die vorige, und gebt ihn einer anderen Gruppe.",
    more && room && slip && "Wer zuerst fertig ist, bittet um den Zettel eines weiteren Kreises.",
    more &&
      room &&
      !slip &&
      "Wer zuerst fertig ist, geht einen weiteren Kreis: Seine Karten haben eine andere Zahl hinter dem Buchstaben.",
    more && !room && "Wer zuerst fertig ist, bittet um einen weiteren Kreis.",
  ],
  pt: ({ room, slip, several, more, spare, blanks }) => [
    room && slip && "Vão até ao cartão cujo sinal aparece em primeiro lugar na vossa ficha.",
    room && !slip && "Comecem num cartão qualquer e fixem o seu sinal.",
    several &&
      slip &&
      "Na sala há vários círculos. Ao vosso só pertencem os cartões com o número a seguir à letra que a vossa ficha indica.",
    several &&
      !slip &&
      "Na sala há vários círculos. Ao vosso só pertencem os cartões com o mesmo número a seguir à letra que o primeiro.",
    !room && "Espalhem os cartões na mesa e peguem num qualquer.",
    "Leiam o que está por baixo da linha. O que lhe corresponde?",
    room && "Procurem o cartão que tem a resposta por cima da linha.",
    !room && "Ponham ao lado o cartão que tem a resposta por cima da linha.",
    room && slip && "Escrevam o sinal dele na ficha e continuem a partir daí.",
    room && !slip && "Continuem a partir daí.",
    spare && "Alguns cartões não têm lugar: se nada corresponder ao vosso primeiro cartão, comecem noutro.",
    room && !spare && "Terminam quando voltarem ao primeiro cartão depois de passarem por todos os outros.",
    room && spare && "Terminam quando voltarem ao primeiro cartão.",
    !room && !spare && "Continuem até que o último cartão leve ao primeiro e não sobre nenhum.",
    !room && spare && "Continuem até que o último cartão leve ao primeiro. O que não tem lugar fica de fora.",
    !room && slip && "Escrevam os sinais na ficha pela ordem dos cartões.",
    !room && "Leiam o círculo em voz alta. Depois peçam a solução.",
    blanks &&
      "Escrevam um círculo vosso nos cartões em branco, cada um com a resposta ao anterior, e deem-no a outro grupo.",
    more && room && slip && "Se terminarem primeiro, peçam a ficha de outro círculo.",
    more &&
      room &&
      !slip &&
      "Se terminarem primeiro, percorram outro círculo: os seus cartões têm outro número a seguir à letra.",
    more && !room && "Se terminarem primeiro, peçam outro círculo.",
  ],
};

/** Built-in steps for learners. */
export function loopDirections(
  { options, deals }: DealtLoop,
  lang: string,
  at?: "station",
): readonly string[] | undefined {
  const spare = deals.some(({ decoys }) => decoys.length > 0);
  const facts = {
    room: options.size === "room",
    slip: hasSlip(options),
    several: options.size === "room" && deals.length > 1,
    more: options.versions > 1 && at === undefined,
    spare,
    blanks: options.blanks > 0,
  };
  return languages[lang]?.(facts).filter((line) => line !== false);
}
