import schema from "../../../schemas/calls.schema.json";
import { validateCalls } from "../../base/generated/validators";
import type { ActivityKind } from "../contract";
import { hasForms } from "../twins";
import { dealCalls, dealingCalls } from "./deal";
import { callsDirections } from "./directions";
import { callsGuide } from "./guide";
import { callerSheets } from "./list";
import { type CallsDeal, calledIn, type DealtCalls } from "./model";
import { callPlaces, callTexts, confusedCalls, truthOf } from "./overlooked";
import { rules } from "./rules";
import { callsPapers } from "./slips";
import { verdicts } from "./verdicts";

/** Statements that are called out: learners grab an object when one is true. Nothing is cut but slips. */
export const calls: ActivityKind<CallsDeal, DealtCalls> = {
  name: "calls",
  takes: ["statements", "tables"],
  schema,
  validate: validateCalls,
  overlooked: {
    harm: "takes a false call for a true one",
    heard: () => true,
    texts: callTexts,
    role: truthOf,
    places: callPlaces,
    confused: confusedCalls,
  },
  called: true,
  deal: dealCalls,
  // Tables anywhere may make false twins.
  alone: ({ request }) => !hasForms(request),
  dealing: dealingCalls,
  pieceSheets: () => [],
  solutionSheets: (dealt, deal, view, press) => (view === "solved" ? callerSheets(dealt, deal, press) : []),
  pieces: () => [],
  belongs: () => "",
  record: (dealt, deal) => ({
    settings: {
      seed: dealt.options.seed,
      attempt: deal.attempt,
      paper: dealt.options.paper,
      margin: dealt.options.margin,
    },
    called: calledIn(dealt, deal.order).map(({ runs, truth }) => ({ runs, truth })),
    reserve: calledIn(dealt, deal.reserve).map(({ runs, truth }) => ({ runs, truth })),
  }),
  oneHour: (dealt) => ({ ...dealt, deals: dealt.deals.filter(({ version }) => version === 1) }),
  papers: callsPapers,
  guide: callsGuide,
  directions: callsDirections,
  labels: () => [],
  rules,
  verdicts,
};
