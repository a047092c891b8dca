import { Random } from "../../src/base/seed";
import { nothingAround } from "../../src/make/workshop";
import { Relation } from "../../src/match/relation";
import { testWorkshop } from "./units";

/** How much work reading a unit is, in orders drawn and questions to the relation: whatever is tried to find fixes draws and asks. */
export interface Work {
  readonly orders: number;
  readonly questions: number;
  /** The most in one step: the editor cannot stop for breath within one. */
  readonly mostOrders: number;
  readonly mostQuestions: number;
  readonly fixes: number;
}

/** Reads a text and counts. */
export async function workOf(text: string): Promise<Work> {
  const workshop = await testWorkshop();
  const [{ shuffle }, { fits, partners }] = [Random.prototype, Relation.prototype];
  let [orders, questions, mostOrders, mostQuestions] = [0, 0, 0, 0];
  Random.prototype.shuffle = function <T>(this: Random, items: readonly T[]): T[] {
    orders++;
    return shuffle.call(this, items) as T[];
  };
  Relation.prototype.fits = function (...keys) {
    questions++;
    return fits.apply(this, keys);
  };
  Relation.prototype.partners = function (...key) {
    questions++;
    return partners.apply(this, key);
  };
  try {
    const reading = workshop.reading({ name: "unit", text }, nothingAround);
    for (;;) {
      const before = [orders, questions] as const;
      const step = reading.next();
      mostOrders = Math.max(mostOrders, orders - before[0]);
      mostQuestions = Math.max(mostQuestions, questions - before[1]);
      if (!step.done) continue;
      const fixes = step.value.findings.reduce((sum, finding) => sum + finding.fixes.length, 0);
      return { orders, questions, mostOrders, mostQuestions, fixes };
    }
  } finally {
    Random.prototype.shuffle = shuffle;
    Object.assign(Relation.prototype, { fits, partners });
  }
}
