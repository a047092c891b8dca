import { Recent } from "../../base/recent";
import type { DealRequest } from "../contract";
import { soonProven } from "./deal";
import { tilesOptions } from "./options";
import { structureKey } from "./structure";

/** Whether each deal of a request is soon proven to have one solution; what was once found for its structure is known. */
export function holdsSoon(request: DealRequest): boolean {
  const structure = structureKey(request, tilesOptions(request.options));
  return structure === undefined ? soonProven(request) : outcomes.get(structure, () => soonProven(request));
}

const outcomes = new Recent<boolean>(500);
