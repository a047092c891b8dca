import type { Rule } from "../../../base/finding";
import type { StripsContext } from "./context";
import { moreGroupsThanDesks } from "./more-groups-than-desks";
import { repeatedEvent } from "./repeated-event";
import { stripsAnyOrder } from "./strips-any-order";
import { stripsTooSmall } from "./strips-too-small";
import { tooFewEvents } from "./too-few-events";

export const rules: readonly Rule<StripsContext>[] = [
  tooFewEvents,
  stripsAnyOrder,
  repeatedEvent,
  stripsTooSmall,
  moreGroupsThanDesks,
];
