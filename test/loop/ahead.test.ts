import assert from "node:assert/strict";
import fc from "fast-check";
import { clashesAhead } from "../../src/activities/loop/circles";
import { dealLoop } from "../../src/activities/loop/deal";
import { clashCount } from "../../src/activities/loop/rules/clashes";
import { planUnit } from "../../src/activities/plan";
import { readUnit } from "../../src/unit/read";
import { loopUnit } from "./unit";

describe("clashes of a circle that is not dealt yet", () => {
  it("are as many as when it is dealt", () => {
    const draw = fc.record({
      answers: fc.array(fc.array(fc.nat(7), { minLength: 1, maxLength: 3 }), { minLength: 4, maxLength: 9 }),
      take: fc.option(fc.integer({ min: 4, max: 9 }), { nil: undefined }),
      versions: fc.integer({ min: 1, max: 2 }),
    });
    let met = 0;
    fc.assert(
      fc.property(draw, ({ answers, take, versions }) => {
        const pairs = answers.map((own, i) => `roda${i} = ${[...new Set(own)].map((n) => `wheel${n}`).join(" / ")}`);
        const options = `versions: ${versions}${take === undefined ? "" : `\ntake: ${take}`}`;
        const request = planUnit(readUnit(loopUnit(pairs, options))).activities[0]?.request;
        assert.ok(request);
        const dealt = dealLoop(request);
        const count = clashCount(dealt);
        if (count > 0) met++;
        assert.equal(clashesAhead(request), count);
        for (const n of [0, 1, 2]) assert.equal(clashesAhead(request, `wheel${n}`), clashCount(dealt, `wheel${n}`));
      }),
      { numRuns: 150, seed: 3 },
    );
    assert.ok(met > 50, `${met}`);
  });

  it("are as many where cards belong nowhere, which may leave fewer pairs for the circle", () => {
    const pairs = ["roda = wheel", "selim = saddle / seat", "banco = seat", "pneu = tyre", "aro = rim", "raio = spoke"];
    const more = ["cubo = hub", "guiador = bar", "travão = brake", "quadro = frame / bar"];
    for (const options of ["decoys: 1", "decoys: 2", "levels: [gentle, hard]", "levels: [hard]\nversions: 2"]) {
      for (const text of [pairs, [...pairs, ...more], ["eixo = wheel", ...pairs, ...more, "roda livre = wheel"]]) {
        const request = planUnit(readUnit(loopUnit(text, options))).activities[0]?.request;
        assert.ok(request);
        const dealt = dealLoop(request);
        const each = dealt.deals.length / dealt.options.versions;
        assert.equal((clashesAhead(request) ?? 0) * each, clashCount(dealt), options);
      }
    }
  });

  it("are not known where too few are left", () => {
    const pairs = ["a = b", "c = d", "e = f", "g = h", "i = j", "k = l"];
    const request = planUnit(readUnit(loopUnit(pairs, "take: 3"))).activities[0]?.request;
    assert.ok(request);
    assert.equal(clashesAhead(request), undefined);
  });
});
