import assert from "node:assert/strict";
import fc from "fast-check";
import type { Press } from "../../src/activities/contract";
import { planUnit } from "../../src/activities/plan";
import { rebuild } from "../../src/activities/rebuild/kind";
import { layoutRebuild, placeRebuild } from "../../src/activities/rebuild/layout";
import { mm } from "../../src/page/paper";
import { readUnit } from "../../src/unit/read";
import { testTypeface } from "../support/typeface";
import { sentenceUnit } from "./unit";

/*
 * Where cards lie, for sentences of any lengths: on the sheet, apart, each once, cut row by row; and in no order that could be read.
 */

const part = fc.string({ unit: fc.constantFrom(..."aeiou mnrst"), minLength: 1, maxLength: 34 });
const sentence = fc.array(part, { minLength: 2, maxLength: 7 });

describe("cards in rows", () => {
  it("lie on the sheet, apart from each other, and show no sentence", async () => {
    const press: Press = { typeface: await testTypeface(), pictures: new Map(), unitTitle: "Rows" };
    let packed = 0;
    fc.assert(
      fc.property(
        fc.array(sentence, { minLength: 2, maxLength: 14 }),
        fc.integer({ min: 0, max: 99 }),
        fc.constantFrom(1, 3),
        fc.constantFrom(0, 4),
        (all, seed, packet, blanks) => {
          // Numbers keep parts from being alike or empty.
          const lines = all.map(
            (parts, i) => `- ${parts.map((each, j) => `${i}x${j}${each.trim()}`).join(" | ")} = ${i}`,
          );
          const options = `seed: ${seed}\npacket: ${packet}\nblanks: ${blanks}\nlevels: [gentle, hard]`;
          const [activity] = planUnit(readUnit(sentenceUnit(lines, options))).activities;
          assert.ok(activity?.request);
          const dealt = rebuild.deal(activity.request);
          const { box, height, size = 0 } = layoutRebuild(dealt, press);
          for (const deal of dealt.deals) {
            const { pages, places } = placeRebuild(dealt, deal, press);
            assert.deepEqual(
              places.map(({ card }) => card),
              Array.from({ length: deal.dealt.length + blanks }, (_, i) => i),
            );
            for (const { card, page, x, y, w, h } of places) {
              assert.ok(page < pages && h === height);
              // Words stand 3 mm clear of the cuts; those of a whole row may be set in several lines.
              const words = press.typeface.measure(deal.dealt[card]?.runs ?? []) * mm(size);
              assert.ok(w >= words + 6 || Math.abs(w - box.w) < 1e-6, `${words} mm on a card of ${w}`);
              assert.ok(x >= box.x - 1e-6 && x + w <= box.x + box.w + 1e-6);
              assert.ok(y >= box.y - 1e-6 && y + h <= box.y + box.h + 1e-6);
              const row = (y - box.y) / height;
              assert.ok(Math.abs(row - Math.round(row)) < 1e-6, "rows are cut off first");
            }
            const lying = [...places].sort((a, b) => a.page - b.page || a.y - b.y || a.x - b.x);
            lying.slice(1).forEach((place, i) => {
              const before = lying[i];
              const together = before && before.page === place.page && Math.abs(before.y - place.y) < 1e-6;
              assert.ok(!together || before.x + before.w <= place.x + 1e-6, "cards overlap");
            });
            if (lying.some(({ card }, i) => card !== i)) packed++;
            for (const index of deal.sentences) {
              const order = lying.flatMap(({ card }) => {
                const own = deal.dealt[card];
                return own?.sentence === index ? [own.part] : [];
              });
              assert.ok(
                order.some((number, i) => number !== i),
                `sentence ${index} can be read`,
              );
            }
          }
        },
      ),
      { numRuns: 40, seed: 11 },
    );
    assert.ok(packed > 0, "no case was packed by width");
  });
});
