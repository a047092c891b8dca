import { upTo } from "../../base/seed";
import { type Block, type Cell, type Column, setDocument, setWritingSlips } from "../../page/document";
import type { Sheet } from "../../page/sheet";
import type { Press } from "../contract";
import { setsFor } from "../copies";
import { slipWords } from "../paper-words";
import { listed } from "../printed";
import { counted } from "../report";
import { activityPage } from "../sheet-page";
import type { DealtBoard } from "./model";

/** The caller reads it standing, from a hand held lower than a desk is far. pt */
const listSize = 11;
const listRow = 8.5;

/** Calls in one column of a slip; height of a row, width of the numbers, and the clearance round a slip, mm. */
const rowsInColumn = 20;
const slipRow = { usual: 6.5, least: 5.8 };
const numberWidth = 12;
const padding = 5;
const slipSize = 9;

/** A caller's list for each class hour, then the score slips. */
export function boardPapers(dealt: DealtBoard, press: Press): Sheet[] {
  if (dealt.deals.length === 0) return [];
  const lists = dealt.lists.flatMap((list, hour) => callerSheets(dealt, list, hour, press));
  return [...lists, ...(dealt.options.slip === "none" ? [] : scoreSlips(dealt, press))];
}

/** The codes of all boards that a list is for: all have the same words. */
function codesOf({ deals }: DealtBoard): string {
  return deals.map(({ code }) => code).join(", ");
}

function callerSheets(dealt: DealtBoard, list: readonly number[], hour: number, press: Press): Sheet[] {
  const { request, words, lists, deals, targets } = dealt;
  const name = lists.length > 1 ? `hour ${hour + 1} of ${lists.length}` : undefined;
  const whom = [...(name ? [name] : []), ...learnersIn(dealt, hour)];
  const never = words.slice(targets);
  const levels = new Set(deals.map(({ level }) => level)).size > 1;
  const codes = deals.length === 1 ? codesOf(dealt) : counted(deals.length, "board");
  const blocks: Block[] = [
    { type: "heading", level: 1, text: `Caller’s list: ${request.title}` },
    {
      type: "facts",
      rows: [
        ...(whom.length > 0 ? [{ label: "For", value: whom.join(", ") }] : []),
        { label: "Boards", value: `${deals.length === 1 ? "deal code" : "deal codes"} ${codesOf(dealt)}` },
        { label: "How", value: "Say each one twice, wait for the hands, say the answer, then tick it off." },
      ],
    },
    {
      type: "table",
      size: listSize,
      rowHeight: listRow,
      columns: [
        { width: "fit", align: "end" },
        { head: "Say", share: dealt.options.clue === "example" ? 2 : 1 },
        { head: "On the board", share: 1 },
        { head: "Done", width: "fit", align: "middle" },
      ],
      rows: list.flatMap((target, i): Cell[][] => {
        const word = words[target];
        if (!word?.clue) return [];
        const { runs, source, lang } = word.clue;
        return [[`${i + 1}`, { runs, source, lang }, listed(word.shown), { boxes: 1 }]];
      }),
    },
    ...ownWords(dealt),
    ...(never.length > 0
      ? [
          { type: "heading", level: 2, text: `On the ${levels ? "hard boards" : "board"} and never called` } as const,
          { type: "columns", count: 3, size: 10, entries: never.map(({ shown }) => listed(shown)) } as const,
        ]
      : []),
  ];
  const state = [...(name ? [name] : []), codes];
  return setDocument(blocks, activityPage(request, press, "Caller’s list", state), press.typeface);
}

/** Lines for the words that learners write in, so that they can be called as well; their numbers go on from the others. */
function ownWords({ options, targets }: DealtBoard): Block[] {
  if (options.blanks === 0) return [];
  return [
    { type: "heading", level: 2, text: `For the ${options.blanks === 1 ? "cell" : "cells"} to write in` },
    {
      type: "paragraph",
      text: "Write here what you give the learners to write on the dotted lines before they begin, and call it between the others.",
    },
    {
      type: "table",
      size: listSize,
      rowHeight: listRow,
      columns: [
        { width: "fit", align: "end" },
        { head: "Say", share: 1 },
        { head: "On the board", share: 1 },
        { head: "Done", width: "fit", align: "middle" },
      ],
      rows: upTo(options.blanks).map((i): Cell[] => [`${targets + i + 1}`, "", "", { boxes: 1 }]),
    },
  ];
}

/** `23 learners at 11 boards`; empty where no class is known for an hour. */
function learnersIn({ request, options }: DealtBoard, hour: number): string[] {
  const learners = request.classes[hour];
  if (learners === undefined) return [];
  return [`${counted(learners, "learner")} at ${counted(setsFor(learners, options.players), "board")}`];
}

/** A slip for each board: of every class where slips are used once, of the largest where they are wiped. */
export function slipCount({ options, request, deals }: DealtBoard): number {
  const boards = request.classes.map((learners) => setsFor(learners, options.players));
  if (boards.length === 0) return deals.reduce((sum, { copies }) => sum + (copies === "by copier" ? 1 : copies), 0);
  return options.reuse === "once" ? boards.reduce((sum, each) => sum + each, 0) : Math.max(...boards);
}

/** Columns for players; one more where some groups of a class are larger. */
export function playerColumns({ options, request }: DealtBoard): string[] {
  const odd = request.classes.some((learners) => learners % options.players !== 0);
  return upTo(options.players + (odd ? 1 : 0)).map((i) => "ABCD".charAt(i));
}

/** What is called in an hour: the printed words, and those that learners write in. */
function callsIn({ targets, options }: DealtBoard): number {
  return targets + options.blanks;
}

function scoreSlips(dealt: DealtBoard, press: Press): Sheet[] {
  const page = activityPage(dealt.request, press, "Score slips", []);
  const across = callsIn(dealt) > rowsInColumn ? 2 : 3;
  const blocks = (row: number): Block[] => slipBlocks(dealt, row);
  const slip = { blocks, row: slipRow, across, padding, size: slipSize };
  return setWritingSlips(slip, slipCount(dealt), page, press.typeface);
}

/** A row for each call with a column for each player and one for the teacher, and a row for the totals. */
function slipBlocks(dealt: DealtBoard, rowHeight: number): Block[] {
  const { request } = dealt;
  const calls = callsIn(dealt);
  const words = slipWords(request.explains);
  const names = [...playerColumns(dealt), words.teacher];
  const parts = Math.ceil(calls / rowsInColumn);
  const rows = Math.ceil(calls / parts);
  const columns: Column[] = [
    { width: numberWidth, align: "end" },
    ...names.map((head, i): Column => ({ head, align: "middle", ...(i === names.length - 1 ? { width: "fit" } : {}) })),
  ];
  return [
    { type: "paragraph", text: [{ text: request.title, bold: true }] },
    { type: "paragraph", size: 7.5, text: `${words.dispute} ${words.board}` },
    {
      type: "table",
      rules: "grid",
      rowHeight,
      size: 8,
      columns: upTo(parts).flatMap(() => columns),
      rows: upTo(rows).map((row) =>
        upTo(parts).flatMap((part): Cell[] => {
          const call = part * rows + row;
          return [call < calls ? `${call + 1}` : "", ...names.map(() => "")];
        }),
      ),
    },
    {
      type: "table",
      rules: "grid",
      rowHeight: rowHeight + 2,
      size: 8,
      columns,
      rows: [[[{ text: words.total, bold: true }]]],
    },
  ];
}
