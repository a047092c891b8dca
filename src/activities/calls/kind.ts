import schema from "../../../schemas/calls.schema.json";
import { validateCalls } from "../../base/generated/validators";
import type { ActivityKind } from "../contract";
import { dealCalls } from "./deal";
import { callsDirections } from "./directions";
import { callsGuide } from "./guide";
import { callerSheets } from "./list";
import type { CallsDeal, DealtCalls } from "./model";
import { rules } from "./rules";
import { callsPapers } from "./slips";

/** Statements that are called out: learners grab an object when one is true. Nothing is cut but slips. */
export const calls: ActivityKind<CallsDeal, DealtCalls> = {
  name: "calls",
  schema,
  validate: validateCalls,
  deal: dealCalls,
  pieceSheets: () => [],
  solutionSheets: (dealt, deal, view, press) => (view === "solved" ? callerSheets(dealt, deal, press) : []),
  pieces: () => [],
  record: ({ options, claims, reserve }, deal) => ({
    settings: { seed: options.seed, attempt: deal.attempt, paper: options.paper, margin: options.margin },
    called: deal.order.flatMap((i) => claims[i] ?? []).map(({ runs, truth }) => ({ runs, truth })),
    reserve: deal.reserve.flatMap((i) => reserve[i] ?? []).map(({ runs, truth }) => ({ runs, truth })),
  }),
  papers: callsPapers,
  guide: callsGuide,
  directions: callsDirections,
  labels: () => [],
  rules,
};
