import type { Deal, GuideEntry, Press } from "../../activities/contract";
import { hasPaperWords, type MaterialWords, materialWords } from "../../activities/paper-words";
import { quotedList } from "../../activities/report";
import { cutsOf } from "../../page/cards";
import { type Block, setDocument } from "../../page/document";
import { papers } from "../../page/paper";
import type { Sheet } from "../../page/sheet";
import { type LearnersCut, learnersCut, leftUncut } from "../cutting";
import type { Printable, PrintedActivity } from "../printable";
import { cautionTexts, schoolFirst } from "./cautions";
import { unitPage } from "./page";

/** The guide: a colleague who has never seen the unit can run the hour from it. Empty where nothing is dealt. */
export function guideSheets(printed: readonly PrintedActivity[], press: Press, further: readonly Block[]): Sheet[] {
  const [first] = printed.map(({ printable }) => printable);
  if (!first) return [];
  const { paper, margin } = first.dealt.request.options.value;
  const entries = printed.map((activity) => {
    const { printable } = activity;
    const cut = learnersCut(activity);
    return { printable, cut, entry: withScissors(printable.kind.guide(printable.dealt, press), activity, cut) };
  });
  const minutes = entries.reduce((sum, { entry, cut }) => sum + entry.minutes + (cut?.minutes ?? 0), 0);
  const blocks: Block[] = [
    { type: "heading", level: 1, text: `Guide: ${press.unitTitle}` },
    {
      type: "paragraph",
      text: `${count(printed.length, "activity", "activities")}, about ${minutes} minutes in all. Each is told below: what the learners do, what to have at hand, the directions to read out, and the answers. The pieces are in bags with labels; the codes on them are the deal codes below.${hasPaperWords(first.lang) ? "" : ` There are no built-in words for slips and cards of stations in “${first.lang}”: these are English.`}`,
    },
    ...missingDirections(entries.map(({ printable }) => printable)),
    ...entries.flatMap(({ printable, entry, cut }) => activityBlocks(printable, entry, cut, press)),
    { type: "heading", level: 2, text: "Take care" },
    { type: "bullets", items: [...cautionTexts(entries.flatMap(({ entry }) => entry.cautions)), schoolFirst] },
    ...further,
  ];
  return setDocument(blocks, unitPage(papers[paper], margin, "guide", first.lang, press), press.typeface);
}

/** The materials of an activity in one line, its pieces first if it has any, and scissors where learners cut them. */
export function atHand(
  printable: Printable,
  entry: GuideEntry,
  { press, byLearners, words }: { readonly press: Press; readonly byLearners: boolean; readonly words: MaterialWords },
): string {
  return [
    ...(hasPieces(printable, press) ? [words.pieces] : []),
    ...(byLearners ? [words.scissors] : []),
    ...entry.materials(words),
  ].join(", ");
}

function hasPieces({ kind, dealt }: Printable, press: Press): boolean {
  return dealt.deals.some((deal) => kind.pieces(dealt, deal, press).length > 0);
}

/** Where learners cut, they take care with scissors, and the cutter has only slips to cut, if any. */
function withScissors(entry: GuideEntry, { paper }: PrintedActivity, cut: LearnersCut | undefined): GuideEntry {
  if (!cut) return entry;
  const slips = paper.some((sheet) => cutsOf(sheet) > 0);
  const others = entry.cautions.filter((caution) => slips || caution !== "cutter");
  return {
    ...entry,
    cautions: [...others, "scissors"],
  };
}

function activityBlocks(printable: Printable, entry: GuideEntry, cut: LearnersCut | undefined, press: Press): Block[] {
  const { dealt, title } = printable;
  // What is not cut is not counted in sets.
  const sets = hasPieces(printable, press);
  const deals = dealt.deals.map((deal) => {
    const facts = [dealName(deal, dealt.deals, sets ? "version" : "hour"), ...(sets ? [copiesName(deal)] : [])];
    return facts.some(Boolean) ? `${deal.code} (${facts.filter(Boolean).join(", ")})` : deal.code;
  });
  const told = languagesOf(printable)
    .map((each) => directionsIn(printable, each))
    .filter(({ own }, i) => own || i === 0);
  return [
    { type: "heading", level: 2, text: title },
    { type: "paragraph", text: entry.summary },
    {
      type: "facts",
      rows: [
        { label: "Deals", value: deals.join(", ") },
        { label: "Time", value: `about ${entry.minutes} minutes` },
        ...(cut
          ? [
              {
                label: "Cutting",
                value: `learners of the first class cut the pieces along the wide lines: ${count(cut.sheets, "sheet", "sheets")} for ${count(cut.learners, "learner", "learners")}, ${count(cut.cuts, "cut", "cuts")} each, about ${count(cut.minutes, "minute", "minutes")} more (an estimate: twenty seconds a cut)${leftBehind(cut)}`,
              },
            ]
          : []),
        {
          label: "At hand",
          value: atHand(printable, entry, { press, byLearners: cut !== undefined, words: materialWords("en") }),
        },
      ],
    },
    ...told.flatMap(({ steps: items, name }): Block[] => [
      { type: "heading", level: 3, text: `Directions${name}` },
      { type: "steps", items },
    ]),
    ...(entry.answers.length > 0
      ? [
          { type: "heading", level: 3, text: "Answers" } as const,
          {
            type: "columns",
            entries: entry.answers,
            count: entry.answers.some((runs) => runs.reduce((sum, { text }) => sum + text.length, 0) > 45) ? 1 : 2,
            size: 9,
          } as const,
        ]
      : []),
  ];
}

/** `; it cuts 11 of 15 sets, …`, or nothing. */
function leftBehind(cut: LearnersCut): string {
  const left = leftUncut(cut);
  return left === undefined ? "" : `; ${left}`;
}

export interface Told {
  readonly steps: readonly string[];
  /** In the language that was asked for. */
  readonly own: boolean;
  /** Behind the heading: ` (pt)`. */
  readonly name: string;
}

/** The languages of an activity's directions: the one that explains, and the one that is taught where that is another. */
function languagesOf({ dealt, lang }: Printable): string[] {
  const { teaches } = dealt.request;
  return primary(teaches) === primary(lang) ? [lang] : [lang, teaches];
}

/** For each of the unit's languages of which some activity has no directions: that there are none, and what stands there instead. */
function missingDirections(printables: readonly Printable[]): Block[] {
  const [first] = printables;
  return (first ? languagesOf(first) : []).flatMap((lang, i): Block[] => {
    const without = printables.filter((each) => !directionsIn(each, lang).own);
    if (lang === "und" || without.length === 0) return [];
    const whose = without.length === printables.length ? "" : ` for ${quotedList(without.map(({ title }) => title))}`;
    const instead = i === 0 ? " Those below are English." : "";
    const text = `There are no built-in directions in “${lang}”${whose}; write your own under “directions” in the activity.${instead}`;
    return [{ type: "paragraph", text }];
  });
}

/** Directions in a language: the unit's own, the built-in ones, else English ones. */
export function directionsIn({ kind, dealt }: Printable, lang: string, at?: "station"): Told {
  const { directions } = dealt.request.options.value;
  const written = Object.entries(directions ?? {}).find(([key]) => key === lang || primary(key) === primary(lang))?.[1];
  const name = ` (${lang})`;
  if (written !== undefined) return { steps: typeof written === "string" ? [written] : written, own: true, name };
  const own = kind.directions(dealt, primary(lang), at);
  if (own) return { steps: own, own: true, name };
  return { steps: kind.directions(dealt, "en", at) ?? [], own: false, name: " (en)" };
}

function primary(lang: string): string {
  return lang.toLowerCase().split("-")[0] ?? lang;
}

/** Level and version or desk, where there are several; a caller's list is that of an hour. */
export function dealName(
  { level, version, desk }: Deal,
  all: readonly Deal[],
  one: "version" | "hour" = "version",
): string {
  const levels = new Set(all.map((deal) => deal.level)).size > 1;
  const versions = new Set(all.map((deal) => deal.version)).size > 1;
  return [
    ...(levels ? [level] : []),
    ...(versions ? [desk === undefined ? `${one} ${version}` : `desk ${desk}`] : []),
  ].join(", ");
}

function copiesName({ copies }: Deal): string {
  return copies === "by copier" ? "master for copying" : count(copies, "set", "sets");
}

export function count(n: number, one: string, many: string): string {
  return `${n} ${n === 1 ? one : many}`;
}
