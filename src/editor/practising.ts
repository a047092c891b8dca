import { practising } from "../make/practice";
import type { Workshop } from "../make/workshop";
import { inSlices, type Pace, realPace } from "./slices";

/** Practises for the first unit. Ends early where nobody wants it any more; what goes wrong in it is told and keeps nobody from reading. */
export async function practise(
  workshop: Pick<Workshop, "reading">,
  wanted: () => boolean,
  failed: (error: unknown) => void,
  pace: Pace = realPace,
): Promise<void> {
  try {
    await inSlices(practising(workshop), { say: () => {}, wanted }, pace);
  } catch (error) {
    failed(error);
  }
}
