import { Recent } from "../../base/recent";
import type { Steps } from "../../base/steps";
import type { DealRequest } from "../contract";
import { type Outlook, provingSoon, shortOfDecoys } from "./deal";
import type { DealtTiles } from "./model";
import { tilesOptions } from "./options";
import { structureKey } from "./structure";

export function structureOfRequest(request: DealRequest): string | undefined {
  return structureKey(request, tilesOptions(request.options));
}

/**
 * In steps: whether each deal of a request is soon proven to have one solution, and where it is said what is dealt now, nothing is
 * warned of then that is not warned of now.
 */
export function* holdingSoon(request: DealRequest, now?: DealtTiles): Steps<boolean, unknown> {
  const outlook = yield* outlookFor(request);
  return outlook.holds && (now === undefined || isCalm(outlook, now));
}

/** Whether nothing is warned of in what is looked at that is not warned of now. */
export function isCalm({ short, upset }: Outlook, { deals, options, upsetLevels }: DealtTiles): boolean {
  return (short === undefined || shortOfDecoys(deals, options) !== undefined) && (!upset || upsetLevels !== undefined);
}

/** In steps: what is soon known of a request's deals; what was once found for its structure is known. */
export function* outlookFor(request: DealRequest): Steps<Outlook, unknown> {
  const structure = structureOfRequest(request);
  const known = structure === undefined ? undefined : outlooks.find(structure);
  // Asked for, so that it is not the next to be forgotten.
  if (structure !== undefined && known !== undefined) return outlooks.get(structure, () => known);
  const outlook = yield* provingSoon(request);
  if (structure !== undefined) outlooks.set(structure, outlook);
  return outlook;
}

const outlooks = new Recent<Outlook>(500);
