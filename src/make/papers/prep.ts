import { cutsOf } from "../../page/cards";
import type { Block } from "../../page/document";
import type { Sheet } from "../../page/sheet";
import { learnersCut, leftUncut } from "../cutting";
import { copiedSheets, copiesOfRun, isMaster } from "../masters";
import type { PrintedActivity } from "../printable";
import { laminating, pouches, sleeves, wiped } from "./film";
import { count } from "./guide";
import { setColours } from "./set-colours";

/** Sheets that a desk cutter takes at once: ten of 80 g/m², five of 160 (from memory, no source). */
const cardStack = 5;
const paperStack = 10;
/** g/m² */
const weights = { card: 160, paper: 80 } as const;

/**
 * What to print, cut and sort before the first class. Counts come from the sheets as they are laid out; `guide` is how many the
 * guide has, this one among them.
 */
export function prepBlocks(printed: readonly PrintedActivity[], labels: readonly Sheet[], guide: number): Block[] {
  const rows = printed.flatMap((activity) => [
    ...(activity.card.length > 0 ? [row(activity, "card")] : []),
    ...(activity.paper.length > 0 ? [row(activity, "paper")] : []),
  ]);
  const cards = printed.flatMap(({ card }) => fronts(card));
  const papers = printed.flatMap(({ paper }) => fronts(paper));
  const cutByTeacher = printed.flatMap((each) => (learnersCut(each) ? [] : copiedSheets(each)));
  const copies = printed.filter(isMaster).flatMap(copiedSheets);
  const film = pouches(printed);
  const clear = sleeves(printed);
  const minutes = Math.max(
    5,
    Math.ceil(
      strokes(cutByTeacher, cardStack) / 3 + strokes(papers, paperStack) / 3 + (cards.length + papers.length) / 15,
    ),
  );
  return [
    { type: "heading", level: 1, text: "Prep sheet" },
    {
      type: "facts",
      rows: [
        {
          label: `Card, ${weights.card} g/m²`,
          value: `${count(cards.length, "sheet", "sheets")}, ${mass(cards, weights.card)}${copies.length > 0 ? `, and ${copies.length} for the copies of masters` : ""}`,
        },
        {
          label: `Paper, ${weights.paper} g/m²`,
          value: `${count(papers.length, "sheet", "sheets")}, ${mass(papers, weights.paper)}`,
        },
        { label: "Guide", value: `${count(guide, "sheet", "sheets")} of paper besides, with this one` },
        ...(labels.length > 0 ? [{ label: "Labels", value: count(labels.length, "sheet", "sheets") }] : []),
        ...(film > 0 ? [{ label: "Pouches", value: `${film}, each 6 mm larger than the sheet` }] : []),
        ...(clear === undefined ? [] : [{ label: "Sleeves", value: clear }]),
        ...(wiped(printed) ? [{ label: "Pens", value: "wipeable, and a cloth; try one on a corner first" }] : []),
        {
          label: "Time",
          value: `about ${minutes} minutes (an estimate: twenty seconds a cut, ${cardStack} sheets of card or ${paperStack} of paper at once, four seconds a sheet)`,
        },
      ],
    },
    {
      type: "table",
      columns: [
        { head: "Activity" },
        { head: "Stock", width: "fit" },
        { head: "Sheets", width: "fit", align: "end" },
        { head: "Sets", width: "fit", align: "end" },
        { head: "Cuts a sheet", width: "fit", align: "end" },
        { head: "Done", width: "fit" },
      ],
      rows,
    },
    ...learnersTable(printed),
    { type: "heading", level: 2, text: "In this order" },
    { type: "steps", items: order(printed) },
    ...setColours(printed),
  ];
}

function order(printed: readonly PrintedActivity[]): string[] {
  const named = (which: readonly PrintedActivity[]): string =>
    which.map(({ printable }) => `“${printable.title}”`).join(", ");
  const twoSided = printed.filter(({ card }) => card.some(({ back }) => back));
  const masters = printed.filter((activity) => isMaster(activity));
  const film = laminating(printed);
  const byLearners = printed.filter((activity) => learnersCut(activity));
  const cutter = printed.some((each) =>
    [...(learnersCut(each) ? [] : each.card), ...each.paper].some((sheet) => cutsOf(sheet) > 0),
  );
  const several = printed.filter(
    (activity) => !learnersCut(activity) && activity.card.length > 0 && fronts(activity.card).length < activity.sets,
  );
  const slips = byLearners.some(({ paper }) => paper.some((sheet) => cutsOf(sheet) > 0));
  const sides =
    twoSided.length === 0
      ? "on one side"
      : `on one side, but ${named(twoSided)} on both sides, turned on the edge that its sheets name`;
  return [
    `Print the card sheets at 100 %, ${sides}, and lay a ruler on the bar of the first one.`,
    "Print the papers. Keep keys and lists apart from the pieces.",
    ...(masters.length > 0
      ? [
          `Copy the masters onto card at 100 %${masters.some(hasClasses) ? ", for the largest class" : ""}: ${masters.map(timesCopied).join("; ")}.`,
        ]
      : []),
    ...film.before,
    ...(cutter
      ? [
          `Cut along the hairlines: first all the way across, then the strips.${slips ? " Slips are yours to cut, also where learners cut the pieces." : ""}`,
        ]
      : []),
    ...(several.length > 0
      ? [
          `The sheets of ${named(several)} have several sets, one under the other, each in rows of its own: part them before you cut the cards.`,
        ]
      : []),
    ...(byLearners.length > 0
      ? [
          `Do not cut the pieces of ${named(byLearners)}: learners do, along the wide lines. Keep each set’s sheets together.`,
        ]
      : []),
    ...film.after,
    "Bag each set by its deal code and set number, and stick the label on.",
  ];
}

/** What learners cut, a line for each activity; nothing where the teacher cuts all. */
function learnersTable(printed: readonly PrintedActivity[]): Block[] {
  const rows = printed.flatMap((activity) => {
    const cut = learnersCut(activity);
    const { title } = activity.printable;
    return cut ? [[title, String(cut.sheets), String(cut.learners), String(cut.cuts), String(cut.minutes)]] : [];
  });
  if (rows.length === 0) return [];
  const left = printed.flatMap((activity) => {
    const cut = learnersCut(activity);
    const whole = cut && leftUncut(cut);
    return whole === undefined ? [] : [`“${activity.printable.title}”: ${whole}.`];
  });
  return [
    { type: "heading", level: 2, text: "Cut by learners of the first class" },
    {
      type: "table",
      columns: [
        { head: "Activity" },
        { head: "Sheets a set", width: "fit", align: "end" },
        { head: "Learners a set", width: "fit", align: "end" },
        { head: "Cuts a learner", width: "fit", align: "end" },
        { head: "Minutes", width: "fit", align: "end" },
      ],
      rows,
    },
    ...(left.length > 0 ? [{ type: "bullets", items: left } as const] : []),
  ];
}

/** How often the masters of an activity are copied, deal by deal where they differ: `“My sort” 3 times, 2 sets a copy`. */
function timesCopied(activity: PrintedActivity): string {
  const { title, dealt } = activity.printable;
  const each = activity.runs.map((run) => {
    const times = copiesOfRun(activity, run);
    const often = !hasClasses(activity) ? "for each set" : times === 1 ? "once" : `${times} times`;
    return `${often}${run.sets > 1 ? `, ${run.sets} sets a copy` : ""}`;
  });
  const [first] = each;
  if (each.every((said) => said === first)) return `“${title}”${each.length > 1 ? " each deal" : ""} ${first}`;
  return `“${title}” ${each.map((said, i) => `${dealt.deals[i]?.code ?? ""} ${said}`).join(", ")}`;
}

function hasClasses({ printable: { dealt } }: PrintedActivity): boolean {
  return dealt.request.classes.length > 0;
}

/** Sheets as they lie in the tray: what is printed on their backs is none of its own. */
function fronts(sheets: readonly Sheet[]): Sheet[] {
  return sheets.filter(({ back }) => !back);
}

function row(activity: PrintedActivity, stock: "card" | "paper") {
  const sheets = fronts(activity[stock]);
  const twoSided = sheets.length < activity[stock].length;
  const cuts = [...new Set(sheets.map((sheet) => cutsOf(sheet)))].sort((a, b) => a - b);
  const byLearners = stock === "card" && learnersCut(activity) !== undefined;
  const shown = byLearners ? "learners" : cuts.length > 1 ? `${cuts[0]}–${cuts.at(-1)}` : String(cuts[0] ?? 0);
  const sets = stock === "paper" ? "–" : isMaster(activity) ? "master" : String(activity.sets);
  const what = twoSided ? `${stock}, both sides` : stock;
  return [activity.printable.title, what, String(sheets.length), sets, shown, { boxes: 1 }];
}

/** Strokes of the cutter: equal sheets are cut in stacks. */
function strokes(sheets: readonly Sheet[], stack: number): number {
  const byCuts = new Map<number, number>();
  for (const sheet of sheets) byCuts.set(cutsOf(sheet), (byCuts.get(cutsOf(sheet)) ?? 0) + 1);
  return [...byCuts].reduce((sum, [cuts, number]) => sum + cuts * Math.ceil(number / stack), 0);
}

/** Mass of some sheets: area times grammage (A4 at 160 g/m² 9.98 g). */
function mass(sheets: readonly Sheet[], weight: number): string {
  const grams = sheets.reduce((sum, { width, height }) => sum + ((width * height) / 1e6) * weight, 0);
  return grams < 1000 ? `${Math.round(grams)} g` : `${(grams / 1000).toFixed(1)} kg`;
}
