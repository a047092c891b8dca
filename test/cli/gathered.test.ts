import assert from "node:assert/strict";
import { setImmediate } from "node:timers/promises";
import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import { Gathered } from "../../src/cli/check";
import { styleFor } from "../../src/cli/text";
import { writers } from "../../src/cli/written";
import { readUnitText, unitOf } from "../support/units";

/** A text of its own, so that nothing else holds what was read of it. */
let count = 0;

/** Gives a reading to what gathers; what is left of it once nobody else has it. */
async function given(gathered: Gathered): Promise<readonly WeakRef<object>[]> {
  const reading = await readUnitText(unitOf(8 + count++, "grid: 2 x 2\nkind: x"));
  const [dealt] = reading.activities;
  assert.ok(dealt);
  const activity = { ...dealt };
  const own = { ...reading, unit: { ...reading.unit }, activities: [activity] };
  gathered.add(`u${count}.unit.md`, own);
  return [new WeakRef(own), new WeakRef(own.unit), new WeakRef(activity)];
}

describe("`check` of many files", () => {
  setFlagsFromString("--expose-gc");
  const collect: () => void = runInNewContext("gc");

  for (const format of ["text", "json", "sarif"] as const)
    it(`keeps nothing of what was read but what it writes: ${format}`, async () => {
      const lines: string[] = [];
      const style = styleFor({});
      const gathered = new Gathered(writers[format]((more) => void lines.push(...more), style));
      const left = [...(await given(gathered)), ...(await given(gathered))];
      await setImmediate();
      collect();
      assert.deepEqual(
        left.map((each) => each.deref()),
        left.map(() => undefined),
      );
      const { unread, severities } = gathered.end(style);
      assert.ok(unread === 0 && severities.length > 0);
      assert.match(lines.join("\n"), /wrong-option/);
    });
});
