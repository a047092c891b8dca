import assert from "node:assert/strict";
import fc from "fast-check";
import { clashesAhead, isSurelyOne } from "../../src/activities/loop/circles";
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

describe("a circle that is the only one in whatever order it is dealt", () => {
  const requestFor = (answers: readonly (readonly number[])[], options = "") => {
    const pairs = answers.map((own, i) => `roda${i} = ${[...new Set(own)].map((n) => `wheel${n}`).join(" / ")}`);
    const request = planUnit(readUnit(loopUnit(pairs, options))).activities[0]?.request;
    assert.ok(request);
    return request;
  };

  /** The most pairs that get another one's answer at once, by trying all ways to hand the answers out. */
  const mostMoved = (answers: readonly (readonly number[])[]): number => {
    const handOut = (i: number, left: readonly number[], moved: number): number => {
      const own = answers[i];
      if (!own) return moved;
      const ways = left.filter((place) => own.includes(answers[place]?.[0] ?? -1));
      const each = ways.map((place) =>
        handOut(
          i + 1,
          left.filter((other) => other !== place),
          moved + Number(place !== i),
        ),
      );
      return Math.max(Number.NEGATIVE_INFINITY, ...each);
    };
    return handOut(0, [...answers.keys()], 0);
  };

  it("is one for which no more than two answers can change places", () => {
    const draw = fc.array(fc.array(fc.nat(9), { minLength: 1, maxLength: 2 }), { minLength: 4, maxLength: 7 });
    const met = { sure: 0, clashing: 0, open: 0 };
    fc.assert(
      fc.property(draw, fc.integer({ min: 1, max: 9 }), (answers, seed) => {
        const request = requestFor(answers, `seed: ${seed}`);
        const sure = isSurelyOne(request);
        assert.equal(sure || mostMoved(answers) > 2, true, "three could change and it says one");
        if (mostMoved(answers) <= 2) assert.equal(sure, true);
        const { deals } = dealLoop(request);
        if (sure) for (const { proof } of deals) assert.equal(proof.status, "one");
        met[sure ? (clashesAhead(request) === 0 ? "sure" : "clashing") : "open"]++;
      }),
      { numRuns: 400, seed: 5 },
    );
    for (const count of Object.values(met)) assert.ok(count > 15, JSON.stringify(met));
  });

  it("is not known where nothing can be dealt", () => {
    assert.equal(isSurelyOne(requestFor([[1], [2], [3]])), false);
  });
});
