import assert from "node:assert/strict";
import { fixAll } from "../../src/make/fix-all";
import type { Reading } from "../../src/make/workshop";
import { nothingAround } from "../../src/make/workshop";
import { readUnitText, testWorkshop } from "../support/units";

const unit = (options: string, last = "- die Pumpe = the pump") => `## Tools

- der Lenker = the handlebar
- die Stange = the handlebar <!-- allow duplicate-answer: both are said here -->
- das Licht = the lamp
- der Sattel = the saddle
${last}

\`\`\`activity
${options}
\`\`\`
`;

const unused = ({ findings }: Reading) => findings.filter(({ code }) => code === "unused-silence");

describe("silences that are not used", () => {
  it("are not spoken of while an activity of theirs is not dealt", async () => {
    assert.deepEqual(unused(await readUnitText(unit("make: board\ngrid: 2 x 2"))), []);
    for (const options of [
      "make: board\ngrid: 9 x 9",
      "make: board\nfrom: Tols",
      "make: board\nfrom: [Tools",
      "make: board\nlevels: {",
      "make: boar",
    ])
      assert.deepEqual(unused(await readUnitText(unit(options))), [], options);
  });

  it("are spoken of in sections that only others are about", async () => {
    const other = "\n## Colours\n\n- rot = red\n\n```activity\nmake: board\ngrid: 9 x 9\n```\n";
    const idle = unit("make: board\ngrid: 2 x 2").replace("the handlebar <!--", "the bar <!--");
    assert.equal(unused(await readUnitText(idle + other)).length, 1);
  });

  it("of findings about earlier prints are only spoken of where there are some", async () => {
    const text = unit("make: board\ngrid: 2 x 2\nallow: { same-code: printed on purpose, moved-deal: it had to be }");
    assert.deepEqual(unused(await readUnitText(text)), []);
    const workshop = await testWorkshop();
    const files = await workshop.make(await readUnitText(unit("make: board\ngrid: 2 x 2")), {});
    const pieces = new TextDecoder().decode(files.find(({ name }) => name.endsWith(".pieces.json"))?.bytes);
    assert.equal(unused(await readUnitText(text, { pieces })).length, 2);
  });

  it("show the finding that names their place without standing there", async () => {
    const text = unit("make: board\ngrid: 2 x 2")
      .replace(/( <!--.*?-->)/, "")
      .replace("Lenker = the handlebar", "$&<c>");
    const misplaced = text.replace("<c>", " <!-- allow duplicate-answer: both are said here -->");
    const [found] = unused(await readUnitText(misplaced));
    assert.match(found?.message ?? "", /told at another place/);
    const [place] = found?.related ?? [];
    assert.equal(misplaced.slice(place?.range.start, place?.range.end), "the handlebar");
    assert.equal(place?.range.start, misplaced.lastIndexOf("the handlebar"));
  });

  it("are never taken out unasked: their reasons are the writer's", async () => {
    const workshop = await testWorkshop();
    const find = (text: string) => workshop.read({ name: "u", text }, nothingAround).findings;
    const idle = unit("make: board\ngrid: 2 x 2").replace("the handlebar <!--", "the bar <!--");
    assert.equal(unused(await readUnitText(idle)).length, 1);
    assert.equal(fixAll(idle, find), idle);
  });
});
