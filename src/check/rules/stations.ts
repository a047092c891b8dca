import schema from "../../../schemas/stations.schema.json";
import { setOption } from "../../activities/edits";
import { type PlannedStations, planStations } from "../../activities/stations";
import type { Fix, Rule } from "../../base/finding";
import type { Range } from "../../base/range";
import type { CheckContext } from "../context";
import { nearest } from "../nearest";
import { explainFault, quoted } from "./options";

const pairs =
  "## Drinks\n\n- chá = tea\n- leite = milk\n- água = water\n- sumo = juice\n\n```activity\nmake: tiles\ntitle: Drinks\n```\n";
const plan = (options: string): string => `${pairs}\n\`\`\`stations\n${options}\n\`\`\``;

function place({ block }: PlannedStations, ...keys: readonly string[]): Range {
  for (const key of keys) {
    const entry = block.options.entries.find((candidate) => candidate.key === key);
    if (entry) return { start: entry.keyRange.start, end: Math.max(entry.keyRange.end, entry.valueRange.end) };
  }
  return { start: block.fence.start, end: Math.max(block.fence.start + 3, block.body.start - 1) };
}

export const wrongStations: Rule<CheckContext> = {
  code: "wrong-stations",
  severity: "error",
  title: "A plan of stations with an option or a name that is not known",
  why: "`stations` lists activities by their titles or kinds. An option that is unknown, or that has a value it cannot have, is left out as if it were not there.",
  example: { wrong: plan("stations: [Drink]"), right: plan("stations: [Drinks]") },
  check: ({ unit, plan: unitPlan }) =>
    planStations(unit, unitPlan).flatMap(({ faults, unknown }) => [
      ...faults.map((fault) => explainFault(fault, schema, unit.text)),
      ...unknown.map(({ name, range }) => {
        const titles = unitPlan.activities.map(({ title }) => title);
        const near = nearest(name, titles).slice(0, 3);
        return {
          range,
          message: `No activity is called “${name}”, and none is of that kind.`,
          fixes: near.map(
            (title, i): Fix => ({
              title: `Change to “${title}”`,
              edits: [{ range, text: quoted(title) }],
              ...(i === 0 ? { preferred: true } : {}),
            }),
          ),
        };
      }),
    ]),
};

export const longStations: Rule<CheckContext> = {
  code: "long-stations",
  severity: "warning",
  title: "A plan of stations that does not fit the lesson",
  why: "Setup, every round of work, the moves between them and the end must fit the period: setup + R·work + (R − 1)·move + close, R being the larger of groups and stations.",
  example: { wrong: plan("desks: 6\nminutes: 8\nperiod: 50"), right: plan("desks: 6\nminutes: 6\nperiod: 50") },
  check: ({ unit, plan: unitPlan }) =>
    planStations(unit, unitPlan).flatMap((planned) => {
      const { rotation, options, block } = planned;
      if (!rotation || !options || rotation.fits) return [];
      const { longest, total } = rotation;
      return [
        {
          range: place(planned, "minutes", "period"),
          message: `This takes ${round(total)} minutes, ${round(total - options.period)} more than the period has. ${longest >= 1 ? `With ${longest} minutes of work it would fit.` : "Not even a minute of work at each station would fit: take fewer stations or groups."}`,
          fixes:
            longest >= 1
              ? [
                  {
                    title: `Work ${longest} minutes`,
                    edits: [setOption(block, unit.text, "minutes", String(longest))],
                    preferred: true,
                  },
                ]
              : [],
        },
      ];
    }),
};

export const unevenStations: Rule<CheckContext> = {
  code: "uneven-stations",
  severity: "information",
  title: "Stations without a group, or groups without a station",
  why: "With more groups than stations some groups wait in each round; with fewer some stations stand idle. The plan says which. A balanced order needs an even number of stations and no more groups than stations; else the groups turn on to the next.",
  example: { wrong: plan("desks: 4\ngroups: 5\nminutes: 5"), right: plan("desks: 4\ngroups: 4\nminutes: 5") },
  check: ({ unit, plan: unitPlan }) =>
    planStations(unit, unitPlan).flatMap((planned) => {
      const { rotation, options, block, activities } = planned;
      if (!rotation || !options) return [];
      const unmet = options.order === "balanced" && rotation.order === "turn";
      if (rotation.idle === 0 && rotation.waiting === 0 && !unmet) return [];
      const said = [
        ...(rotation.waiting > 0 ? [`${rotation.waiting} of ${options.groups ?? 0} groups wait in each round`] : []),
        ...(rotation.idle > 0 ? [`${rotation.idle} of ${activities.length} stations stand idle in each round`] : []),
        ...(unmet ? ["no balanced order exists for these numbers, so the groups turn on to the next station"] : []),
      ];
      const first = said[0] ?? "";
      const message = `${first.charAt(0).toUpperCase()}${first.slice(1)}${said.length > 1 ? `; ${said.slice(1).join("; ")}` : ""}.`;
      const fixes: Fix[] =
        rotation.idle + rotation.waiting > 0
          ? [
              {
                title: `Take ${activities.length} groups`,
                edits: [setOption(block, unit.text, "groups", String(activities.length))],
              },
            ]
          : [{ title: "Let the groups turn on to the next", edits: [setOption(block, unit.text, "order", "turn")] }];
      return [{ range: place(planned, ...(unmet ? ["order"] : []), "groups", "desks"), message, fixes }];
    }),
};

function round(minutes: number): number {
  return Math.round(minutes * 10) / 10;
}
