import { isPlanned } from "./desks";
import type { DealtStrips } from "./model";

type Steps = (facts: {
  /** Strips with events. */
  readonly events: boolean;
  readonly blanks: number;
  readonly slip: boolean;
  readonly desks: boolean;
  /** A plan of stations says when to move on, and where to. */
  readonly planned: boolean;
  readonly backs: boolean;
  /** Some strips show their place. */
  readonly told: boolean;
  /** Printed strips bear letters, blank ones numbers: picks what names those that there are. */
  signs(letters: string, both: string, numbers: string): string;
}) => readonly string[];

function steps(...lines: readonly (string | false)[]): string[] {
  return lines.filter((line) => line !== false);
}

const languages: Readonly<Record<string, Steps>> = {
  en: ({ events, blanks, slip, desks, planned, backs, told, signs }) =>
    steps(
      events && "Spread the strips out on the table and read them to each other.",
      events && "Put them in the order of the story, the first event at the top.",
      told && blanks === 0 && "A number with a full stop before a printed event is its place in the story.",
      told &&
        blanks > 0 &&
        "A number with a full stop before a printed event is its place in the story. The numbers on the blank strips are only names, not places.",
      blanks > 0 && events && !desks && "Write events of your own on the blank strips and put them where they belong.",
      blanks > 0 &&
        events &&
        desks &&
        "Are the blank strips at your desk still empty? Then write events of your own on them. If another group has written on them, put its events where they belong.",
      blanks > 0 &&
        !events &&
        desks &&
        "At your first desk, write the events of your story on the blank strips, in any order of the numbers. At every other desk, put the story that lies there in order.",
      blanks > 0 &&
        !events &&
        !desks &&
        "Write the events of your story on the blank strips, in any order of the numbers.",
      slip &&
        `Write the ${signs("letters", "letters or numbers", "numbers")} of the strips on the slip, from the first to the last.`,
      blanks > 0 && !events && !desks && "Shuffle the strips and hand them to another group, who put them in order.",
      slip && desks && "The number of the desk stands on every strip: fill in its column on the slip.",
      desks && !planned && "At the signal, shuffle the strips again and move on to the next desk.",
      desks && planned && "At the signal, shuffle the strips again.",
      backs && "When you are sure, turn the strips over and check the numbers.",
      !backs && events && "Read the story aloud. Then call for the key.",
    ),
  es: ({ events, blanks, slip, desks, planned, backs, told, signs }) =>
    steps(
      events && "Extended las tiras sobre la mesa y leédoslas en voz alta.",
      events && "Ponedlas en el orden de la historia, el primer suceso arriba.",
      told && blanks === 0 && "Un número con punto delante de un suceso impreso es su lugar en la historia.",
      told &&
        blanks > 0 &&
        "Un número con punto delante de un suceso impreso es su lugar en la historia. Los números de las tiras en blanco son solo nombres, no lugares.",
      blanks > 0 &&
        events &&
        !desks &&
        "Escribid sucesos vuestros en las tiras en blanco y ponedlos donde corresponda.",
      blanks > 0 &&
        events &&
        desks &&
        "¿Las tiras en blanco de vuestra mesa siguen vacías? Escribid en ellas sucesos vuestros. Si otro grupo ya ha escrito en ellas, poned sus sucesos donde corresponda.",
      blanks > 0 &&
        !events &&
        desks &&
        "En vuestra primera mesa, escribid los sucesos de vuestra historia en las tiras en blanco, sin seguir el orden de los números. En las demás mesas, ordenad la historia que encontréis.",
      blanks > 0 &&
        !events &&
        !desks &&
        "Escribid los sucesos de vuestra historia en las tiras en blanco, sin seguir el orden de los números.",
      slip &&
        `Escribid en la hoja ${signs("las letras", "las letras o los números", "los números")} de las tiras, de la primera a la última.`,
      blanks > 0 && !events && !desks && "Barajad las tiras y dádselas a otro grupo para que las ordene.",
      slip && desks && "El número de la mesa está en cada tira: rellenad su columna de la hoja.",
      desks && !planned && "Cuando suene la señal, barajad otra vez las tiras y pasad a la mesa siguiente.",
      desks && planned && "Cuando suene la señal, barajad otra vez las tiras.",
      backs && "Cuando estéis seguros, dad la vuelta a las tiras y comprobad los números.",
      !backs && events && "Leed la historia en voz alta. Después pedid la solución.",
    ),
  fr: ({ events, blanks, slip, desks, planned, backs, told, signs }) =>
    steps(
      events && "Étalez les bandes sur la table et lisez-les à voix haute.",
      events && "Mettez-les dans l’ordre de l’histoire, le premier évènement en haut.",
      told && blanks === 0 && "Un numéro suivi d’un point devant un évènement imprimé est sa place dans l’histoire.",
      told &&
        blanks > 0 &&
        "Un numéro suivi d’un point devant un évènement imprimé est sa place dans l’histoire. Les numéros des bandes vierges ne sont que des noms, pas des places.",
      blanks > 0 &&
        events &&
        !desks &&
        "Écrivez vos propres évènements sur les bandes vierges et placez-les au bon endroit.",
      blanks > 0 &&
        events &&
        desks &&
        "Les bandes vierges de votre table sont-elles encore vides ? Écrivez-y vos propres évènements. Si un autre groupe y a déjà écrit, placez ses évènements au bon endroit.",
      blanks > 0 &&
        !events &&
        desks &&
        "À votre première table, écrivez les évènements de votre histoire sur les bandes vierges, sans suivre l’ordre des numéros. Aux autres tables, remettez en ordre l’histoire que vous y trouvez.",
      blanks > 0 &&
        !events &&
        !desks &&
        "Écrivez les évènements de votre histoire sur les bandes vierges, sans suivre l’ordre des numéros.",
      slip &&
        `Notez sur la fiche ${signs("les lettres", "les lettres ou les numéros", "les numéros")} des bandes, de la première à la dernière.`,
      blanks > 0 && !events && !desks && "Mélangez les bandes et donnez-les à un autre groupe, qui les remet en ordre.",
      slip && desks && "Le numéro de la table figure sur chaque bande : remplissez sa colonne sur la fiche.",
      desks && !planned && "Au signal, mélangez de nouveau les bandes et passez à la table suivante.",
      desks && planned && "Au signal, mélangez de nouveau les bandes.",
      backs && "Quand vous êtes sûrs, retournez les bandes et vérifiez les numéros.",
      !backs && events && "Lisez l’histoire à voix haute. Demandez ensuite le corrigé.",
    ),
  de: ({ events, blanks, slip, desks, planned, backs, told, signs }) =>
    steps(
      events && "Breitet die Streifen auf dem Tisch aus und lest sie einander vor.",
      events && "Legt sie in die Reihenfolge der Geschichte, das erste Ereignis nach oben.",
      told && blanks === 0 && "Eine Zahl mit Punkt vor einem gedruckten Ereignis ist sein Platz in der Geschichte.",
      told &&
        blanks > 0 &&
        "Eine Zahl mit Punkt vor einem gedruckten Ereignis ist sein Platz in der Geschichte. Die Nummern der leeren Streifen sind nur Namen, keine Plätze.",
      blanks > 0 &&
        events &&
        !desks &&
        "Schreibt eigene Ereignisse auf die leeren Streifen und legt sie an ihre Stelle.",
      blanks > 0 &&
        events &&
        desks &&
        "Sind die leeren Streifen an eurem Tisch noch unbeschrieben? Dann schreibt eigene Ereignisse darauf. Hat schon eine andere Gruppe darauf geschrieben, legt ihre Ereignisse an die richtige Stelle.",
      blanks > 0 &&
        !events &&
        desks &&
        "Schreibt am ersten Tisch die Ereignisse eurer Geschichte auf die leeren Streifen, nicht in der Reihenfolge der Nummern. An jedem anderen Tisch ordnet die Geschichte, die dort liegt.",
      blanks > 0 &&
        !events &&
        !desks &&
        "Schreibt die Ereignisse eurer Geschichte auf die leeren Streifen, nicht in der Reihenfolge der Nummern.",
      slip &&
        `Schreibt ${signs("die Buchstaben", "die Buchstaben oder Nummern", "die Nummern")} der Streifen auf den Zettel, vom ersten bis zum letzten.`,
      blanks > 0 && !events && !desks && "Mischt die Streifen und gebt sie einer anderen Gruppe, die sie ordnet.",
      slip && desks && "Die Nummer des Tisches steht auf jedem Streifen: Füllt ihre Spalte auf dem Zettel aus.",
      desks && !planned && "Mischt die Streifen beim Signal wieder und geht zum nächsten Tisch.",
      desks && planned && "Mischt die Streifen beim Signal wieder.",
      backs && "Wenn ihr sicher seid, dreht die Streifen um und prüft die Zahlen.",
      !backs && events && "Lest die Geschichte laut vor. Bittet dann um die Lösung.",
    ),
  pt: ({ events, blanks, slip, desks, planned, backs, told, signs }) =>
    steps(
      events && "Espalhem as tiras na mesa e leiam-nas em voz alta.",
      events && "Ponham-nas pela ordem da história, com o primeiro acontecimento em cima.",
      told && blanks === 0 && "Um número com ponto antes de um acontecimento impresso é o seu lugar na história.",
      told &&
        blanks > 0 &&
        "Um número com ponto antes de um acontecimento impresso é o seu lugar na história. Os números das tiras em branco são só nomes, não lugares.",
      blanks > 0 &&
        events &&
        !desks &&
        "Escrevam acontecimentos vossos nas tiras em branco e ponham-nos no lugar certo.",
      blanks > 0 &&
        events &&
        desks &&
        "As tiras em branco da vossa mesa ainda estão vazias? Escrevam nelas acontecimentos vossos. Se outro grupo já escreveu nelas, ponham os acontecimentos dele no lugar certo.",
      blanks > 0 &&
        !events &&
        desks &&
        "Na vossa primeira mesa, escrevam os acontecimentos da vossa história nas tiras em branco, sem seguir a ordem dos números. Nas outras mesas, ordenem a história que lá encontrarem.",
      blanks > 0 &&
        !events &&
        !desks &&
        "Escrevam os acontecimentos da vossa história nas tiras em branco, sem seguir a ordem dos números.",
      slip &&
        `Escrevam na ficha ${signs("as letras", "as letras ou os números", "os números")} das tiras, da primeira à última.`,
      blanks > 0 && !events && !desks && "Baralhem as tiras e deem-nas a outro grupo, que as ordena.",
      slip && desks && "O número da mesa está em cada tira: preencham a coluna dela na ficha.",
      desks && !planned && "Quando ouvirem o sinal, baralhem de novo as tiras e passem à mesa seguinte.",
      desks && planned && "Quando ouvirem o sinal, baralhem de novo as tiras.",
      backs && "Quando tiverem a certeza, virem as tiras e confiram os números.",
      !backs && events && "Leiam a história em voz alta. Depois peçam a solução.",
    ),
};

/** Built-in steps for learners. */
export function stripsDirections(
  { events, options, deals, request }: DealtStrips,
  lang: string,
): readonly string[] | undefined {
  const { blanks, slip, desks, backs } = options;
  return languages[lang]?.({
    events: events.length > 0,
    blanks,
    slip: slip === "order",
    desks: desks !== undefined,
    planned: isPlanned(request),
    backs: backs === "numbers" && events.length > 0,
    told: deals.some((deal) => deal.told.length > 0),
    signs: (letters, both, numbers) => (blanks === 0 ? letters : events.length > 0 ? both : numbers),
  });
}
