import assert from "node:assert/strict";
import { BlockedError } from "../../src/make/workshop";
import { readUnitText, testWorkshop } from "../support/units";

/*
 * One workshop, told in every shape; what is broken in one shape must not keep the activities of another from being made.
 */

const sections = (parts: { readonly front?: string; readonly words?: string; readonly story?: string }): string =>
  `---\ntitle: Workshop\n${parts.front ?? ""}---\n
## Bench

- a roda = the wheel
- o selim = the saddle
- o travão = the brake
- a buzina = the horn
${parts.words ?? ""}
1. O Tomé abre a oficina.
2. Ele mede o quadro.
3. Ele fecha a porta.

- [x] O Tomé mede o quadro.
- [ ] A buzina canta.
  - A buzina apita.
- [x] Ele fecha a porta.
- [ ] O gato mede a roda.
  - O gato dorme.
- [x] Chove.
- [ ] Neva.
${parts.story ?? ""}
\`\`\`activity
make: tiles
\`\`\`

\`\`\`activity
make: strips
\`\`\`

\`\`\`activity
make: calls
\`\`\`

## Road

- a ponte = the bridge
`;

async function blocked(text: string): Promise<Record<string, string[]>> {
  const workshop = await testWorkshop();
  const reading = await readUnitText(text);
  const of = (only?: string): string[] => workshop.blockers(reading, only).map(({ code }) => code);
  return { all: of(), tiles: of("tiles"), strips: of("strips"), calls: of("calls"), title: of("Bench – tiles") };
}

const none = { all: [], tiles: [], strips: [], calls: [], title: [] };

describe("what keeps an export of some activities back", () => {
  it("is nothing in a sound unit", async () => {
    assert.deepEqual(await blocked(sections({})), none);
  });

  it("is a contradiction for those that deal statements only", async () => {
    const text = sections({ story: "- [x] Neva.\n" });
    const code = "contradicting-statements";
    assert.deepEqual(await blocked(text), { ...none, all: [code], calls: [code] });
    const workshop = await testWorkshop();
    const reading = await readUnitText(text);
    assert.ok((await workshop.make(reading, { only: "tiles" })).length > 0);
    await assert.rejects(workshop.make(reading, { only: "calls" }), BlockedError);
    await assert.rejects(workshop.make(reading, {}), BlockedError);
  });

  it("is an error of the pairs for those that use pairs, and one that belongs to no item for all", async () => {
    const missing = "missing-picture";
    assert.deepEqual(await blocked(sections({ words: "- ![a bell](bell.png) = a campainha\n" })), {
      all: [missing],
      tiles: [missing],
      strips: [],
      calls: [],
      title: [missing],
    });
    const [all] = [["empty-statement"]];
    assert.deepEqual(await blocked(sections({ story: "- [x]\n" })), {
      all,
      tiles: all,
      strips: all,
      calls: all,
      title: all,
    });
  });

  it("is what stands in the front matter for all, and in a block for its own activity", async () => {
    const wrong = ["wrong-option"];
    assert.deepEqual(await blocked(sections({ front: "classes: many\n" })), {
      all: wrong,
      tiles: wrong,
      strips: wrong,
      calls: wrong,
      title: wrong,
    });
    assert.deepEqual(await blocked(sections({}).replace("make: strips", "make: strips\nheight: tall")), {
      ...none,
      all: wrong,
      strips: wrong,
    });
    const stations = sections({}).replace("## Road", "```stations\nstations: [singing]\n```\n\n## Road");
    assert.deepEqual(await blocked(stations), { ...none, all: ["wrong-stations"] });
  });

  it("is nothing in a section that the activity does not use", async () => {
    const text = sections({}).replace("= the bridge", "=");
    const other = text.replace("## Road", "```activity\nmake: loop\nfrom: Road\ntitle: Loop\n```\n\n## Road");
    const workshop = await testWorkshop();
    const reading = await readUnitText(other);
    assert.ok(workshop.blockers(reading).some(({ code }) => code === "loop-too-few"));
    assert.deepEqual(workshop.blockers(reading, "tiles"), []);
    assert.ok(workshop.blockers(reading, "Loop").length > 0);
  });
});
