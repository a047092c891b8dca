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

  it("is an error of a forms table for calls, which say its forms or make false ones of them", async () => {
    const row = "| nós | medimos | pintamos | fechamos |\n";
    const table = (last: string): string =>
      `---\nteaches: pt\n---\n\n## Verbs\n\n|  | medir | pintar |\n| --- | --- | --- |\n| eu | meço | pinto |\n| tu | medes | pintas |\n| ele | mede | pinta |\n${last}\n\`\`\`activity\nmake: calls\n\`\`\`\n`;
    assert.deepEqual((await blocked(table("")))["calls"], []);
    assert.deepEqual((await blocked(table(row)))["calls"], ["too-many-cells"]);
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

  it("is what two pairs that share an answer do, for those alone whose pieces go together in two ways", async () => {
    const same = ["veloz", "ligeiro", "rápido", "lesto", "pronto", "célere", "ágil"];
    const pairs = same.map((word, i) => {
      const others = same.filter((other) => other !== word);
      return `- ${word} = ${[...others.slice(i), ...others.slice(0, i)].join(" / ")}\n`;
    });
    const text = `## Speed\n\n${pairs.join("")}
\`\`\`activity
make: tiles
\`\`\`

## Bench

- a roda = the wheel
- o selim = the saddle
- a bomba = the pump

\`\`\`activity
make: loop
from: [Speed, Bench]
take: 4
\`\`\`
`;
    const workshop = await testWorkshop();
    const reading = await readUnitText(text);
    const codes = (only?: string): string[] => workshop.blockers(reading, only).map(({ code }) => code);
    assert.ok(codes().includes("duplicate-answer"), codes().join());
    assert.deepEqual(codes("tiles"), codes());
    assert.deepEqual(codes("loop"), []);
    assert.ok((await workshop.make(reading, { only: "loop" })).length > 0);
    await assert.rejects(workshop.make(reading, { only: "tiles" }), BlockedError);
  });

  it("is a contradiction for those that deal both statements, though another deals some of the section", async () => {
    const text = sections({ story: "- [x] Neva.\n" }).replace(
      "make: calls\n",
      "make: calls\n```\n\n```activity\nmake: sort\ntake: 4\n",
    );
    const workshop = await testWorkshop();
    let spared = 0;
    for (let seed = 1; seed <= 12; seed++) {
      const reading = await readUnitText(text.replace("take: 4", `take: 4\nseed: ${seed}`));
      const codes = (only: string): string[] => workshop.blockers(reading, only).map(({ code }) => code);
      assert.deepEqual(codes("calls"), ["contradicting-statements"]);
      const sort = reading.activities.find(({ make }) => make === "sort");
      const [deal] = sort?.deals ?? [];
      assert.ok(sort && deal);
      const printed = workshop
        .view(reading, sort, deal, "dealt")
        .flatMap(({ items }) =>
          items.flatMap((item) => (item.type === "text" ? item.runs.map((run) => run.text) : [])),
        );
      const both = printed.filter((each) => each === "Neva.").length > 1;
      assert.deepEqual(codes("sort"), both ? ["contradicting-statements"] : [], printed.join(" "));
      if (!both) spared++;
    }
    assert.ok(spared > 0 && spared < 12, String(spared));
  });

  it("is a script that cannot be printed for all that would print some of it", async () => {
    const section = (name: string, words: readonly string[], make: string): string =>
      `## ${name}\n\n${words.map((word, i) => `- palavra ${i}${name} = ${word}\n`).join("")}\n\`\`\`activity\nmake: ${make}\n\`\`\`\n\n`;
    const text = `${section("A", ["家", "山", "川", "house"], "tiles")}${section("B", ["木", "tree", "leaf", "root"], "loop")}${section("C", ["car", "bus", "tram", "ship"], "board")}`;
    const workshop = await testWorkshop();
    const reading = await readUnitText(text);
    const codes = (only: string): string[] => workshop.blockers(reading, only).map(({ code }) => code);
    for (const only of ["tiles", "loop"]) assert.deepEqual(codes(only), ["missing-glyph"]);
    assert.deepEqual(codes("board"), []);
  });
});
