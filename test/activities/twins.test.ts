import assert from "node:assert/strict";
import { hasClaims } from "../../src/activities/dealt-claims";
import { heard } from "../../src/match/heard";
import { readUnitText } from "../support/units";

/* A false twin is no statement that stands there anyway, true or false, as it is read or heard. */

const table = "\n## Formas\n\n|  | amarrar |\n| --- | --- |\n| eu | amarro |\n| ela | amarra |\n| nós | amarramos |\n";
const others = ["[x] O sino toca.", "[x] A boia brilha.", "[ ] A vela ri.", "[x] O mar sobe.", "[x] O cais é longo."];

async function twins(make: string, own: readonly string[], seed: number): Promise<[twin: string, others: string[]][]> {
  const lines = ["[x] Eu [amarro](#amarrar) o barco.", ...own, ...others].map((line) => `- ${line}\n`).join("");
  const text = `---\nteaches: pt\nexplains: en\n---\n\n## Cais\n\n${lines}\n\`\`\`activity\nmake: ${make}\ntwins: 1\nseed: ${seed}\n\`\`\`\n${table}`;
  const reading = await readUnitText(text);
  const checked: unknown = "checked" in reading ? reading.checked : undefined;
  assert.ok(Array.isArray(checked));
  const { dealt } = checked[0];
  assert.ok(hasClaims(dealt));
  return dealt.hands.flatMap((hand) =>
    hand
      .filter(({ twin }) => twin)
      .map((claim): [string, string[]] => [claim.text, hand.filter((each) => each !== claim).map((each) => each.text)]),
  );
}

describe("false twins", () => {
  for (const make of ["calls", "sort"]) {
    it(`are no repetition, nor what is true as it is heard (${make})`, async () => {
      const seen = new Set<string>();
      for (let seed = 1; seed <= 12; seed++) {
        for (const own of ["[ ] Eu amarra o barco.", "[x] eu amarra o barco!"]) {
          for (const [twin, beside] of await twins(make, [own], seed)) {
            seen.add(twin);
            assert.ok(!beside.map(heard).includes(heard(twin)), `${own}, seed ${seed}: ${twin}`);
          }
        }
      }
      assert.deepEqual([...seen], ["Eu amarramos o barco."]);
      assert.deepEqual(await twins(make, ["[ ] Eu amarra o barco.", "[ ] eu amarramos o barco"], 1), []);
    });
  }
});
