import { practice } from "../make/practice";
import { nothingAround, type Workshop } from "../make/workshop";
import { inSlices, type Pace, realPace } from "./slices";

/**
 * Reads a small unit of its own: code that runs for the first time is slow, and a step of reading a large unit would be as much
 * longer. It ends early where nobody wants it any more; what goes wrong in it is told and keeps nobody from reading.
 */
export async function practise(
  workshop: Pick<Workshop, "reading">,
  wanted: () => boolean,
  failed: (error: unknown) => void,
  pace: Pace = realPace,
): Promise<void> {
  try {
    const steps = workshop.reading({ name: "practice", text: practice }, nothingAround);
    await inSlices(steps, { say: () => {}, wanted }, pace);
  } catch (error) {
    failed(error);
  }
}
