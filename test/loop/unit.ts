import assert from "node:assert/strict";
import { loop } from "../../src/activities/loop/kind";
import type { DealtLoop, LoopDeal } from "../../src/activities/loop/model";
import { planUnit } from "../../src/activities/plan";
import { readUnit } from "../../src/unit/read";

/** A unit of pairs, one a line, and a loop of them. */
export function loopUnit(pairs: readonly string[], options = "", front = "teaches: pt\n"): string {
  const list = pairs.map((pair) => `- ${pair}`).join("\n");
  return `---\n${front}---\n\n## At the counter\n\n${list}\n\n\`\`\`activity\nmake: loop\n${options}\n\`\`\`\n`;
}

/** Twelve pairs without any clash. */
export const counter = [
  "o copo = the glass",
  "a tigela = the mug / the tankard",
  "a colher = the spoon",
  "o garfo = the fork",
  "a faca = the knife",
  "o prato = the plate",
  "o guardanapo = the napkin",
  "a garrafa = the bottle",
  "o bule = the teapot",
  "a chávena = the cup",
  "a bandeja = the tray",
  "o açucareiro = the sugar bowl",
];

/** The loop of a unit, dealt. */
export function dealt(text: string): DealtLoop {
  const [activity] = planUnit(readUnit(text)).activities;
  assert.ok(activity?.request, "nothing to deal from");
  return loop.deal(activity.request);
}

/** Its only deal. */
export function only(result: DealtLoop): LoopDeal {
  const [deal] = result.deals;
  assert.ok(deal);
  return deal;
}
