import type { Press } from "../../activities/contract";
import { materialWords, type StationWords, stationWords } from "../../activities/paper-words";
import { clock, groupSizes, type Rotation, throughFrom } from "../../activities/rotation";
import type { PlannedStations } from "../../activities/stations";
import { type Block, type Cell, heightOfBlocks } from "../../page/document";
import { bodyBox } from "../../page/furniture";
import { papers } from "../../page/paper";
import { learnersCut } from "../cutting";
import type { Printable, PrintedActivity } from "../printable";
import { atHand, count, directionsIn } from "./guide";
import { type LaidOut, layOut, layOutNote, layOutRows } from "./station-sets";

/** The plan of who is where when, then a card for each station; empty where a plan has no station. */
export function stationBlocks(
  plans: readonly PlannedStations[],
  printables: readonly Printable[],
  printed: readonly PrintedActivity[],
  press: Press,
): Block[] {
  return plans.flatMap((plan) => planBlocks(plan, printables, printed, press));
}

function planBlocks(
  plan: PlannedStations,
  printables: readonly Printable[],
  printed: readonly PrintedActivity[],
  press: Press,
): Block[] {
  const { rotation, options, activities } = plan;
  if (!rotation || !options) return [];
  const desks = options.desks !== undefined;
  const place = desks ? "Desk" : "Station";
  const groups = rotation.at[0]?.length ?? 0;
  const { classes } = printables[0]?.dealt.request ?? { classes: [] };
  const name = (station: number | undefined): string => (station === undefined ? "wait" : String(station + 1));
  const end = clock(options.start, rotation.total);
  const cutting = (title: string): number =>
    Math.max(
      0,
      ...printed.flatMap((each) => (each.printable.title === title ? (learnersCut(each)?.minutes ?? 0) : [])),
    );
  const cut = activities.flatMap(({ title }, i) =>
    cutting(title) > 0 ? [{ at: i + 1, minutes: cutting(title) }] : [],
  );
  const placesOf = (title: string): number => activities.filter((each) => each.title === title).length;
  const laidOut = (title: string): LaidOut => {
    const printable = printables.find((each) => each.title === title);
    if (!printable) return {};
    const around = { classes, groups, places: placesOf(title), desks };
    return layOut(printable, printable.kind.guide(printable.dealt, press), around);
  };
  const called = activities.flatMap(({ title }, i) => (laidOut(title).caller === "teacher" ? [i + 1] : []));
  const blocks: Block[] = [
    { type: "page break" },
    { type: "heading", level: 1, text: desks ? "Plan of the desks" : "Plan of the stations" },
    {
      type: "facts",
      rows: [
        {
          label: "Time",
          value: `${clock(options.start, 0)} to ${end}: ${minutes(options.setup)} to set up, ${count(rotation.starts.length, "round", "rounds")} of ${minutes(options.minutes)}, ${minutes(options.move)} to move on, ${minutes(options.close)} to close; ${minutes(rotation.total)} of ${minutes(options.period)}`,
        },
        ...(rotation.fits
          ? []
          : [
              {
                label: "Too long",
                value:
                  rotation.longest >= 1
                    ? `It would fit with ${minutes(rotation.longest)} of work.`
                    : "It would fit with fewer stations.",
              },
            ]),
        ...(cut.length > 0
          ? [
              {
                label: "Cutting",
                value: `Not in these times: where learners cut, the first group at a ${place.toLowerCase()} needs so much longer (${cut.map(({ at, minutes: more }) => `${at}: about ${more} min`).join(", ")}). Let learners cut in an hour before, or lengthen the first round.`,
              },
            ]
          : []),
        ...[...new Set(classes)].map((learners) => {
          const alike = classes.filter((each) => each === learners).length;
          const label = alike > 1 ? `${alike} classes of ${learners}` : `Class of ${learners}`;
          return { label, value: sizes(learners, groups) };
        }),
        ...(rotation.waiting > 0
          ? [
              {
                label: "Waiting",
                value: waitingText(rotation, options.start),
              },
            ]
          : []),
        ...(called.length > 1
          ? [
              {
                label: "Calling",
                value: `You call at ${listedNumbers(called)} at once: lay copies of one board side by side and call for both, or make larger groups, so that one of each calls.`,
              },
            ]
          : []),
        ...(rotation.idle > 0
          ? [
              {
                label: "Idle",
                value: `${inRounds(rotation)} ${count(rotation.idle, "station stands", "stations stand")} empty.`,
              },
            ]
          : []),
      ],
    },
    {
      type: "table",
      rules: "grid",
      columns: [
        { head: "Group", width: "fit" },
        ...rotation.starts.map((start) => ({ head: clock(options.start, start), align: "middle" as const })),
      ],
      rows: Array.from({ length: groups }, (_, group): Cell[] => [
        String(group + 1),
        ...rotation.at.map((round) => name(round[group])),
      ]),
      size: rotation.starts.length > 12 ? 7 : 9,
    },
    ...(desks
      ? []
      : [{ type: "steps", items: activities.map(({ title }) => `${title}${layOutNote(laidOut(title))}`) } as const]),
  ];
  activities.forEach((activity, station) => {
    const printable = printables.find(({ title }) => title === activity.title);
    if (!printable) return;
    const entry = printable.kind.guide(printable.dealt, press);
    const { steps, name: lang } = directionsIn(printable, printable.lang, "station");
    const words = stationWords(printable.lang);
    const visits = rotation.at.map((round, r) => {
      const group = round.indexOf(station);
      return [
        clock(options.start, rotation.starts[r] ?? 0),
        group < 0 ? "–" : words.group(group + 1),
        group < 0 ? "" : nextOf(rotation.at, r, group, { words, desks }),
      ];
    });
    const card: Block[] = [
      { type: "heading", level: 1, text: `${desks ? words.desk : words.station} ${station + 1}: ${activity.title}` },
      {
        type: "facts",
        rows: [
          { label: words.time, value: minutes(options.minutes) },
          {
            label: words.atHand,
            value: atHand(printable, entry, {
              press,
              byLearners: cutting(activity.title) > 0,
              words: materialWords(printable.lang),
            }),
          },
          ...layOutRows(laidOut(activity.title), words),
        ],
      },
      { type: "heading", level: 3, text: `${words.whatToDo}${lang}` },
      { type: "steps", items: steps },
      {
        type: "table",
        columns: [{ head: words.from, width: "fit" }, { head: words.here, width: "fit" }, { head: words.next }],
        rows: visits,
      },
    ];
    blocks.push({ type: "page break" }, { type: "sized", size: cardSize(card, printable, press), blocks: card });
  });
  return blocks;
}

function inRounds({ varies }: Rotation): string {
  return varies ? "In a round up to" : "In each round";
}

/** Answers are for those who have nothing left to find out. */
function waitingText(rotation: Rotation, start: string | undefined): string {
  const waits = `${inRounds(rotation)} ${count(rotation.waiting, "group waits", "groups wait")}: give them a task that shows none of the answers.`;
  const through = throughFrom(rotation).map(
    ({ group, round }) => `group ${group + 1} from ${clock(start, rotation.starts[round] ?? 0)}`,
  );
  if (through.length === 0) return waits;
  return `${waits} Only those who have been everywhere may have the list of answers to learn: ${through.join(", ")}.`;
}

/** A card lies on the table among a group: as large as its page allows. pt */
const cardSizes = { largest: 16, least: 10 };

function cardSize(card: readonly Block[], { dealt }: Printable, press: Press): number {
  const { paper, margin } = dealt.request.options.value;
  const body = bodyBox(papers[paper], margin);
  let size = cardSizes.largest;
  while (size > cardSizes.least && heightOfBlocks(card, body.w, press.typeface, size) > body.h) size -= 0.5;
  return size;
}

function nextOf(
  at: Rotation["at"],
  round: number,
  group: number,
  { words, desks }: { readonly words: StationWords; readonly desks: boolean },
): string {
  const next = at[round + 1];
  if (!next) return words.stay;
  const station = next[group];
  return station === undefined ? words.wait : desks ? words.goToDesk(station + 1) : words.goToStation(station + 1);
}

function sizes(learners: number, groups: number): string {
  const all = groupSizes(learners, groups);
  const kinds = [...new Set(all)].filter((size) => size > 0);
  const empty = all.filter((size) => size === 0).length;
  const shared = kinds
    .map((size) => `${count(all.filter((each) => each === size).length, "group", "groups")} of ${size}`)
    .join(" and ");
  return empty > 0 ? `${shared}; ${count(empty, "group stays", "groups stay")} empty` : shared;
}

function minutes(value: number): string {
  const whole = Math.floor(value + 1e-9);
  const seconds = Math.round((value - whole) * 60);
  if (whole === 0 && seconds > 0) return `${seconds} s`;
  return seconds === 0 ? `${whole} min` : `${whole} min ${seconds} s`;
}

/** `2, 3 and 5` */
function listedNumbers(numbers: readonly number[]): string {
  return [numbers.slice(0, -1).join(", "), numbers.at(-1)].filter(Boolean).join(" and ");
}
