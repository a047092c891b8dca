import type { Deal, DealtActivity } from "../../activities/contract";
import { difficultySentence } from "../../activities/difficulty";
import type { Reading, Workshop } from "../../make/workshop";
import type { Sheet } from "../../page/sheet";
import type { Choice, Column, Entry, Remark, Screen, ViewName } from "../../webview/protocol";
import { proofSentence } from "./sentences";

const noActivity =
  "This unit has no activity yet. Put the cursor under a section, press Ctrl+Space and choose “activity”.";
const notDealt = "The pieces cannot be laid out yet. What is missing stands below.";

/** What the preview shows of a unit: the chosen deal, or the nearest one that exists. */
export function screenOf(workshop: Workshop, reading: Reading, wanted: Choice): Screen {
  const activity = reading.activities.find(({ title }) => title === wanted.activity) ?? reading.activities[0];
  const frame = { unit: reading.file.name, activities: reading.activities.map(({ title }) => entry(title)) };
  if (!activity)
    return { ...frame, ...nothing, choice: { view: "dealt" }, line: noActivity, remarks: remarksOn(reading) };

  const remarks = remarksOn(reading, activity.index);
  const levels = [...new Set(activity.deals.map(({ level }) => level))];
  const level = levels.find((each) => each === wanted.level) ?? levels[0];
  const deals = activity.deals.filter((deal) => deal.level === level);
  const deal = deals.find(({ version }) => version === wanted.version) ?? deals[0];
  if (!deal) {
    return { ...frame, ...nothing, choice: { activity: activity.title, view: "dealt" }, line: notDealt, remarks };
  }

  const shown = columnsOf(workshop, reading, activity, deal, wanted.view);
  return {
    ...frame,
    choice: { activity: activity.title, level: deal.level, version: deal.version, view: shown.view },
    levels: levels.map(entry),
    versions: deals.map(({ version, desk }) => ({
      value: String(version),
      label: desk === undefined ? `Version ${version}` : `Desk ${desk}`,
    })),
    versionName: deal.desk === undefined ? "Version" : "Desk",
    views: shown.views,
    columns: shown.columns,
    line: [
      proofSentence(deal.proof, shown.view === "second", deal.smaller !== undefined),
      ...(deal.difficulty ? [difficultySentence(deal.difficulty)] : []),
    ].join(" "),
    state: deal.proof.accepted ? "one" : deal.proof.status,
    remarks,
  };
}

const nothing = { levels: [], versions: [], versionName: "Version", views: [], columns: [], state: "empty" } as const;

function columnsOf(
  workshop: Workshop,
  reading: Reading,
  activity: DealtActivity,
  deal: Deal,
  wanted: ViewName,
): { readonly view: ViewName; readonly views: readonly Entry[]; readonly columns: readonly Column[] } {
  const sheets = (view: ViewName): readonly Sheet[] => workshop.view(reading, activity, deal, view);
  const [dealt, solved, papers] = [sheets("dealt"), sheets("solved"), sheets("papers")];
  const views: Entry[] = [
    ...(dealt.length > 0 ? [{ value: "dealt", label: "To cut" }] : []),
    ...(solved.length > 0 ? [{ value: "solved", label: "Solved" }] : []),
    ...(papers.length > 0 ? [{ value: "papers", label: "Papers" }] : []),
  ];
  const column = (heading: string, shown: ViewName, listed: readonly Sheet[]): Column => ({
    heading,
    sheets: listed.map((sheet, index) => ({
      label: sheet.label,
      width: sheet.width,
      height: sheet.height,
      svg: workshop.draw(reading, sheet, `${shown}-${index}`),
    })),
  });
  const second = deal.proof.second === undefined ? [] : sheets("second");
  if (second.length > 0) views.push({ value: "second", label: "Both solutions" });
  if (wanted === "second" && second.length > 0) {
    const columns = [column("The solution", "solved", solved), column("Another solution", "second", second)];
    return { view: "second", views, columns };
  }
  const listed = { dealt, solved, papers, second };
  const order: readonly ViewName[] = [wanted === "second" ? "solved" : wanted, "dealt", "solved", "papers"];
  const view = order.find((each) => listed[each].length > 0) ?? "dealt";
  return { view, views, columns: [column("", view, listed[view])] };
}

/** Errors and warnings about one activity; about the unit where no activity is given. Hints would crowd the sheets out. */
function remarksOn(reading: Reading, activity?: number): readonly Remark[] {
  return reading.findings
    .filter((finding) => !finding.activities || activity === undefined || finding.activities.includes(activity))
    .filter(({ severity }) => severity === "error" || severity === "warning")
    .map(({ severity, message, range: { start, end } }) => ({ severity, message, start, end }));
}

function entry(text: string): Entry {
  return { value: text, label: text };
}
