import { Recent } from "../../base/recent";
import type { Steps } from "../../base/steps";
import type { DealRequest } from "../contract";
import { provingSoon } from "./deal";
import { tilesOptions } from "./options";
import { structureKey } from "./structure";

export function structureOfRequest(request: DealRequest): string | undefined {
  return structureKey(request, tilesOptions(request.options));
}

/** In steps: whether each deal of a request is soon proven to have one solution; what was once found for its structure is known. */
export function* holdingSoon(request: DealRequest): Steps<boolean, unknown> {
  const structure = structureOfRequest(request);
  const known = structure === undefined ? undefined : outcomes.find(structure);
  // Asked for, so that it is not the next to be forgotten.
  if (structure !== undefined && known !== undefined) return outcomes.get(structure, () => known);
  const holds = yield* provingSoon(request);
  if (structure !== undefined) outcomes.set(structure, holds);
  return holds;
}

const outcomes = new Recent<boolean>(500);
