import type { Run } from "../../base/run";
import type { Caution, GuideEntry, LabelEntry } from "../contract";
import { inSleeve, pencils } from "../copies";
import { dealsAlike } from "../levels";
import { told as toldRuns } from "../printed";
import { counted } from "../report";
import { summaryOf } from "./deal";
import { type DeskRound, deskRound, isPlanned } from "./desks";
import { signs } from "./key";
import type { DealtStrips, StripsDeal } from "./model";
import { placesOf, writePlaces } from "./story";

/** Seconds at a desk, to move on, and to explain, where the unit does not say. Common practice, no published source. */
const desk = { work: 180, move: 20, setup: 120 };

/** What a colleague needs to run strips. */
export function stripsGuide({ request, options, deals }: DealtStrips): GuideEntry {
  const { blanks, desks, slip, backs } = options;
  const events = deals[0]?.events ?? [];
  const what =
    events.length === 0
      ? `Learners write events of their own on ${counted(blanks, "blank strip")}, for others to put in order.`
      : `Learners put ${span(deals.map((deal) => deal.events.length))} strips in the order of the story${blanks > 0 ? `, then add events of their own on ${counted(blanks, "blank strip")}` : ""}.`;
  const round = deskRound(options, request);
  const planned = isPlanned(request);
  const stories = new Set(deals.map(keyOf)).size;
  const where =
    desks === undefined
      ? ""
      : `${deskText(desks, planned, stories)}${waitingText(round)}${firstWriter(events.length, blanks)}`;
  const check = backs === "numbers" ? " The places stand on the backs for checking oneself." : "";
  const cautions: Caution[] = ["cutter", "scissors"];
  if (options.reuse === "laminate") cautions.push("laminator");
  if (desks !== undefined) cautions.push("clear-floor");
  return {
    summary: `${what}${helpText(deals)}${where}${check}`,
    materials: (words) => [
      words.table,
      ...(slip === "order"
        ? [words.recordingSlip(inSleeve(words, options), pencils(words, options, "one"))]
        : blanks > 0
          ? [pencils(words, options, "some")]
          : []),
      ...(desks === undefined || planned ? [] : [words.timer(desk.work, desk.move)]),
    ],
    atSet: options.group,
    minutes:
      request.options.value.minutes ??
      minutesFor(events.length, blanks, planned ? undefined : (round?.rounds ?? desks)),
    answers: dealsAlike(deals, keyOf).flatMap(({ codes, deal: { events: story } }, _, { length }) => [
      ...(length > 1 && options.desks === undefined ? [[{ text: codes.join(", "), bold: true }]] : []),
      ...deals.filter((deal) => deal.desk !== undefined && story.length > 0 && codes.includes(deal.code)).map(deskLine),
      ...story.map((event) => {
        const places = placesOf(story, event);
        return [
          { text: `${writePlaces(places)}. ` },
          ...toldRuns(event),
          ...(places.length > 1 ? [{ text: " (any of these places)", italic: true }] : []),
        ];
      }),
    ]),
    cautions,
  };
}

/** Which strips show their places, as a sentence with a space before; empty where none does. */
function helpText(deals: readonly StripsDeal[]): string {
  const helped = deals.filter(({ told }) => told.length > 0);
  if (helped.length === 0) return "";
  // The first one may have the text of a later one, and then it has no place of its own.
  const isEnds = ({ told, events }: StripsDeal): boolean => told.join(" ") === `0 ${events.length - 1}`;
  const ends = helped.every(isEnds);
  const counts = [...new Set(helped.map(({ told }) => told.length))].sort((a, b) => a - b);
  const strips =
    counts.join() === "1"
      ? "one strip shows its place"
      : `${counts.length > 1 ? "one or two" : "two"} strips show their places`;
  return ` In the gentle sets ${ends ? "the first and the last strip show their places" : strips}.`;
}

/** `7`, or `5–7` where desks tell stories of several lengths; never a single strip. */
function span(numbers: readonly number[]): string {
  const [least, most] = [Math.min(...numbers), Math.max(...numbers)];
  return least === most ? String(most) : `${least}–${most}`;
}

/** `Desk 3 (TKXA47): B D A C` */
function deskLine(deal: StripsDeal): Run[] {
  return [{ text: `Desk ${deal.desk} (${deal.code}): ` }, { text: signs(deal), bold: true }];
}

function deskText(desks: number, planned: boolean, stories: number): string {
  const tell = stories > 1 ? `; ${stories} stories lie there in turn` : "";
  const own = `Each of ${desks} desks has a set with letters and a key of its own${tell}`;
  return planned
    ? ` ${own}; the plan of the stations says who works where, and when to move on.`
    : ` ${own}, and all groups visit them in turn.`;
}

/** Equal for deals of one story. */
function keyOf({ events }: StripsDeal): string {
  return events.map(({ key }) => key).join("\u0000");
}

/** Own estimates: three quarters of a minute an event, a minute and a half to write one, five to begin and to check. */
function minutesFor(events: number, blanks: number, rounds: number | undefined): number {
  if (rounds === undefined) return Math.max(8, Math.round(5 + 0.75 * events + 1.5 * blanks));
  return Math.ceil((desk.setup + rounds * desk.work + (rounds - 1) * desk.move) / 60);
}

/** Says of the largest class how many groups have no desk in a round; nothing where all have one, or it is not known. */
function waitingText(round: DeskRound | undefined): string {
  if (!round || round.waiting === 0) return "";
  const { learners, groups, waiting, rounds } = round;
  return ` The class of ${learners} makes ${groups} groups, so ${waiting} of them ${waiting === 1 ? "waits" : "wait"} in each of ${rounds} rounds: give those something else to do, or make larger groups.`;
}

/** Blank strips at a desk are not for everybody who comes by: says for whom they are. */
function firstWriter(events: number, blanks: number): string {
  if (blanks === 0) return "";
  const then =
    events === 0
      ? "those who come after it put them in order"
      : "those who come after it put what it wrote in order with the rest";
  return ` Blank strips are for the first group at a desk: ${then}.`;
}

export function stripsLabels(dealt: DealtStrips, deal: StripsDeal): LabelEntry[] {
  return [{ contents: summaryOf(deal.events.length, dealt) }];
}
