import assert from "node:assert/strict";
import { readUnitText } from "../support/units";

/* What is said aloud and sounds the same is told also where a section teaches the difference: it can be read, not heard. */

const activity = (make: string, options = ""): string => `\n\`\`\`activity\nmake: ${make}\n${options}\`\`\`\n`;

async function told(text: string): Promise<[severity: string, message: string][]> {
  const { findings } = await readUnitText(`---\nteaches: de\nexplains: en\n---\n\n## Schrift\n\n${text}`);
  return findings.filter(({ code }) => code === "look-alike").map(({ severity, message }) => [severity, message]);
}

describe("a contrast in writing that is taught", () => {
  const capitals = "- Weg = path\n- weg = gone\n- Laut = sound\n- laut = loud\n";

  it("is a warning for each couple on a board where the words are called", async () => {
    const found = await told(capitals + activity("board", "clue: word\nshow: gloss\n"));
    assert.deepEqual(
      found.map(([severity, message]) => [severity, /“(.+?)” and “(.+?)” differ/.exec(message)?.slice(1)]),
      [
        ["warning", ["Weg", "weg"]],
        ["warning", ["Laut", "laut"]],
      ],
    );
    assert.match(found[0]?.[1] ?? "", /Whoever listens cannot hear that/);
  });

  it("is silent where the words are read, and where it can be heard", async () => {
    assert.deepEqual(await told(capitals + activity("board")), []);
    assert.deepEqual(await told(capitals + activity("tiles")), []);
    const accents = "- schon = already\n- schön = beautiful\n- drucken = to print\n- drücken = to press\n";
    assert.deepEqual(await told(accents + activity("board", "clue: word\nshow: gloss\n")), []);
  });

  it("is a warning about the couple that sounds the same where a third word does not", async () => {
    const three =
      "- Wagen = carriages\n- wagen = to dare\n- wägen = to weigh\n- Laut = sound\n- laut = loud\n- drucken = to print\n- drücken = to press\n- Rad = wheel\n";
    const found = await told(three + activity("board", "clue: word\nshow: gloss\n"));
    assert.deepEqual(
      found.map(([severity, message]) => [severity, /^(.+?) differ/.exec(message)?.[1]]),
      [
        ["warning", "“Wagen” and “wagen”"],
        ["warning", "“Laut” and “laut”"],
      ],
    );
  });

  it("is a warning about calls of which one is true and one is false", async () => {
    const calls =
      "- [x] Das Rad ist rund.\n- [ ] das Rad ist rund.\n- [x] Die Tür ist zu.\n- [ ] die Tür ist zu.\n- [x] Es regnet.\n- [ ] Der Hahn schläft.\n";
    const found = await told(calls + activity("calls"));
    assert.deepEqual(
      found.map(([severity]) => severity),
      ["warning", "warning"],
    );
    assert.deepEqual(await told(calls + activity("sort")), []);
  });
});
