import assert from "node:assert/strict";
import { clock, groupSizes, rotation, throughFrom, williams } from "../../src/activities/rotation";
import { paperPages } from "../support/guide";
import { readPrint } from "../support/print";
import { applyEdits, readUnitText, testWorkshop, unitOf } from "../support/units";

const plain = { work: 6, move: 1, setup: 3, close: 2, period: 50, order: "turn" } as const;

describe("rotation", () => {
  it("agrees with worked values (computed: setup + N·work + (N − 1)·move, the longest work time that fits)", () => {
    // 8 desks of 180 s, 20 s to move, 120 s to set up: 1700 s.
    const desks = rotation({ ...plain, stations: 8, groups: 8, work: 3, move: 20 / 60, setup: 2, close: 0 });
    assert.equal(Math.round(desks.total * 60), 1700);
    // Interval timer: 8 rounds of 20 s with 10 s between them: 230 s without a last pause.
    assert.equal(
      Math.round(
        rotation({ ...plain, stations: 8, groups: 8, work: 1 / 3, move: 1 / 6, setup: 0, close: 0 }).total * 60,
      ),
      230,
    );
    // T = 50, R = 6, m = 1, setup 3, close 2: 6 minutes.
    const six = rotation({ ...plain, stations: 6, groups: 6, work: 8 });
    assert.equal(six.longest, 6);
    assert.equal(six.fits, false);
    assert.equal(rotation({ ...plain, stations: 6, groups: 6, work: 6 }).fits, true);
  });

  for (const [stations, groups] of [
    [4, 4],
    [6, 4],
    [4, 6],
    [5, 5],
    [1, 3],
  ] as const) {
    it(`${groups} groups at ${stations} stations: each group is everywhere once, and no station has two`, () => {
      for (const order of ["turn", "balanced"] as const) {
        const { at } = rotation({ ...plain, stations, groups, order });
        assert.equal(at.length, Math.max(stations, groups));
        for (const round of at) {
          const taken = round.filter((station) => station !== undefined);
          assert.equal(new Set(taken).size, taken.length);
        }
        for (let group = 0; group < groups; group++) {
          const visited = at.map((round) => round[group]).filter((station) => station !== undefined);
          assert.deepEqual(
            [...visited].sort(),
            Array.from({ length: stations }, (_, i) => i),
          );
        }
      }
    });
  }

  it("has Williams's squares (1949, Aust. J. Sci. Res. A 2:149–168)", () => {
    assert.deepEqual(
      williams(4)
        .map((row) => row.join(""))
        .sort(),
      ["0132", "1203", "2310", "3021"],
    );
    assert.deepEqual(williams(6)[0], [0, 1, 5, 2, 4, 3]);
    for (const n of [2, 4, 6, 8, 10, 12]) {
      const square = williams(n);
      const all = Array.from({ length: n }, (_, i) => i);
      const following = new Map<string, number>();
      for (const row of square) {
        assert.deepEqual(
          [...row].sort((a, b) => a - b),
          all,
        );
        row.slice(1).forEach((next, i) => {
          following.set(`${row[i]} ${next}`, (following.get(`${row[i]} ${next}`) ?? 0) + 1);
        });
      }
      for (const round of all) assert.equal(new Set(square.map((row) => row[round])).size, n);
      // Each station follows each other one once.
      assert.equal(following.size, n * (n - 1));
      assert.deepEqual([...new Set(following.values())], [1]);
    }
  });

  it("sends groups round the copies of stations: each is at every station of its copy once, and no station has two", () => {
    for (const [stations, groups, copies] of [
      [3, 8, 3],
      [3, 5, 2],
      [4, 8, 2],
      [2, 7, 3],
      [4, 10, 2],
    ] as const)
      for (const order of ["turn", "balanced"] as const) {
        const plan = rotation({ ...plain, stations, groups, copies, order });
        const most = Math.ceil(groups / copies);
        assert.equal(plan.at.length, Math.max(stations, most));
        assert.equal(plan.order === "balanced", order === "balanced" && stations % 2 === 0 && most <= stations);
        for (const round of plan.at) {
          const taken = round.filter((station) => station !== undefined);
          assert.equal(new Set(taken).size, taken.length);
          assert.ok(taken.every((station) => station < stations * copies));
          assert.ok(plan.varies || groups - taken.length === plan.waiting);
          assert.ok(plan.varies || stations * copies - taken.length === plan.idle);
        }
        const waits = plan.at.map((round) => round.filter((station) => station === undefined).length);
        assert.equal(plan.waiting, Math.max(...waits));
        assert.equal(plan.varies, new Set(waits).size > 1);
        if (most <= stations) assert.equal(plan.waiting, 0);
        for (let group = 0; group < groups; group++) {
          const visited = plan.at.flatMap((round) => round[group] ?? []);
          assert.equal(new Set(visited.map((station) => Math.floor(station / stations))).size, 1);
          assert.deepEqual(
            visited.map((station) => station % stations).sort(),
            Array.from({ length: stations }, (_, i) => i),
          );
        }
      }
  });

  it("knows from when a group has been everywhere", () => {
    const { at } = rotation({ ...plain, stations: 2, groups: 4 });
    // Stations from 1, – where a group waits: 12––, 2––1, ––12, –12–.
    assert.deepEqual(throughFrom({ at }), [
      { group: 0, round: 2 },
      { group: 3, round: 3 },
    ]);
    assert.deepEqual(throughFrom(rotation({ ...plain, stations: 3, groups: 3 })), []);
  });

  it("shares classes out evenly and tells clock times", () => {
    assert.deepEqual(groupSizes(27, 6), [5, 5, 5, 4, 4, 4]);
    assert.equal(clock("9:00", 62.5), "10:02:30");
    assert.equal(clock("23:50", 15), "0:05");
    assert.equal(clock(undefined, 3), "0:03");
  });
});

describe("the plan of stations", () => {
  it("stands in the guide with times, groups, a card for each station, and the truth about what does not fit", async () => {
    const front = "---\nclasses: [27]\n---\n\n";
    const unit = `${unitOf(12, "title: One", front)}\n${unitOf(4, "title: Two\nseed: 2").replace("## Words", "## More")}\n\`\`\`stations\ngroups: 3\nminutes: 20\nstart: "9:00"\nperiod: 45\n\`\`\`\n`;
    const reading = await readUnitText(unit);
    const codes = reading.findings.map(({ code }) => code);
    assert.ok(codes.includes("long-stations") && codes.includes("uneven-stations"), codes.join(" "));
    const files = await (await testWorkshop()).make(reading, {});
    const guide = files.find(({ name }) => name === "unit.guide.pdf");
    assert.ok(guide);
    const pages = (await readPrint(guide.bytes)).map(({ texts }) =>
      texts
        .map(({ text }) => text)
        .join(" ")
        .replace(/\s+/g, " "),
    );
    const plan = pages.find((page) => page.includes("Plan of the stations")) ?? "";
    for (const part of [
      "9:00 to 10:07",
      "3 rounds of 20 min",
      "It would fit with 12 min of work",
      "3 groups of 9",
      "9:03",
      "9:24",
      "9:45",
    ]) {
      assert.ok(plan.includes(part), `${part} in ${plan}`);
    }
    // A card that lies among a group is read from further away than a paper in the hand.
    const card = (await readPrint(guide.bytes)).find(({ texts }) =>
      texts.some(({ text }) => text === "Station 1: One"),
    );
    const step = card?.texts.find(({ text }) => text.startsWith("Spread the tiles"));
    assert.equal(step?.size, 16);
    const first = pages.find((page) => page.includes("Station 1: One")) ?? "";
    assert.match(first, /Spread the tiles.*9:03 group 1 go to station 2.*9:24 group 3 go to station 2.*9:45 group 2/);
  });

  it("has cards of one page each, however much stands on them", async () => {
    const steps = Array.from(
      { length: 14 },
      (_, i) => `Step ${i} is told at some length, so that it needs more than a line.`,
    );
    const front = `---\nclasses: [30]\n---\n\n`;
    const unit = `${unitOf(12, `title: One\ndirections:\n  en: ${JSON.stringify(steps)}`, front)}\n\`\`\`stations\ngroups: 15\nminutes: 3\nperiod: 90\n\`\`\`\n`;
    const files = await (await testWorkshop()).make(await readUnitText(unit), {});
    const pages = await readPrint(files.find(({ name }) => name === "unit.guide.pdf")?.bytes ?? new Uint8Array());
    const at = pages.findIndex(({ texts }) => texts.some(({ text }) => text === "Station 1: One"));
    const [card, after] = [pages[at], pages[at + 1]];
    assert.ok(card?.texts.some(({ text }) => text === "stay for the end"));
    assert.ok(after?.texts.some(({ text }) => text === "Prep sheet"));
    const size = card?.texts.find(({ text }) => text.startsWith("Step 3 is"))?.size ?? 0;
    assert.ok(size >= 10 && size < 16, `${size}`);
  });

  it("has answers for those alone who have been everywhere", async () => {
    const two = unitOf(4, "title: Two\nseed: 2").replace("## Words", "## More");
    const plan = (groups: number): string =>
      `${unitOf(12, "title: One", "---\nclasses: [24]\n---\n\n")}\n${two}\n\`\`\`stations\ngroups: ${groups}\nminutes: 5\nstart: "9:00"\nsetup: 0\n\`\`\`\n`;
    const said = (await paperPages(plan(4))).join(" ");
    assert.match(said, /In each round 2 groups wait: give them a task that shows none of the answers\./);
    assert.match(said, /the list of answers to learn: group 1 from 9:12, group 4 from 9:18\./);
    assert.doesNotMatch((await paperPages(plan(2))).join(" "), /groups? waits?|answers to learn/);
  });

  it("wants scissors only where there is something to cut", async () => {
    const board = unitOf(12, "title: Two\nslip: none")
      .replace("make: tiles", "make: board")
      .replace("## Words", "## More");
    const said = await paperPages(
      `${unitOf(12, "title: One", "---\nclasses: [24]\ncutting: learners\n---\n\n")}\n${board}\n\`\`\`stations\nminutes: 5\n\`\`\`\n`,
    );
    const [one, two] = [1, 2].map((at) => said.find((page) => page.includes(`Station ${at}: `)) ?? "");
    assert.match(one ?? "", /At hand the pieces, scissors/);
    assert.match(two ?? "", /At hand the pieces, a clear table/);
    assert.equal(said.join(" ").match(/scissors for each learner/g)?.length, 2);
  });

  it("says how many sets lie at a station, who shares one, and who calls", async () => {
    const board = (title: string, players: number): string =>
      unitOf(12, `title: ${title}\nseed: ${players}\nplayers: ${players}\nslip: none`)
        .replace("make: tiles", "make: board")
        .replace("## Words", `## ${title}`);
    const text = (classes: string, options: string, explains = "en"): string =>
      `${unitOf(12, "title: One", `---\nclasses: [${classes}]\nexplains: ${explains}\n---\n\n`)}\n${board("Two", 2)}\n${board("Three", 3)}\n\`\`\`stations\nminutes: 5\n${options}\n\`\`\`\n`;
    const cards = async (unit: string): Promise<string[]> =>
      (await paperPages(unit)).filter((page) => /(Station|Desk|Estação) \d: /.test(page));
    // Eight a group: four pairs at tiles; one calls at the boards, and seven play at three of two, or at two of three.
    const pages = await paperPages(text("24", "groups: 3"));
    assert.match(pages.join(" "), /One \(4 sets\) 2 Two \(3 sets; one of the group calls\) 3 Three \(2 sets; one/);
    const [one, two, three] = await cards(text("24", "groups: 3"));
    assert.match(one ?? "", /Sets 4, one for every 2 of you What/);
    assert.match(two ?? "", /Sets 3, one for every 2 or 3 of you Caller One of you calls from the list/);
    assert.match(three ?? "", /Sets 2, one for every 3 or 4 of you Caller One/);
    // Three a group: all play at a board of three, and two at one of two.
    const [, few, full] = await cards(text("9", "groups: 3"));
    assert.match(few ?? "", /Sets 1, for all of you Caller One of you/);
    assert.match(full ?? "", /Sets 1, for all of you Caller Ask the teacher/);
    // Groups of three and two: one of three calls at a board of two.
    const [, mixed] = await cards(text("8", "groups: 3"));
    assert.match(mixed ?? "", /Sets 1, for all of you Caller One of you .* Only 2 of you\? Then ask the teacher/);
    const twice = (await paperPages(text("12", "groups: 6\ncopies: 2"))).join(" ");
    assert.match(twice, /Two \(1 set; you call\)/);
    assert.match(twice, /Calling You call at 2, 3, 5 and 6 at once/);
    assert.doesNotMatch(pages.join(" "), /Calling You/);
    const [desk] = await cards(text("24", "stations: [Two]\ndesks: 3"));
    assert.match(desk ?? "", /Sets 1, for all of you What/);
    const [, dois] = await cards(text("24", "groups: 3", "pt"));
    assert.match(dois ?? "", /Conjuntos 3, um para cada 2 ou 3 Quem lê Uma pessoa do grupo/);
  });

  it("tells nobody on a card to ask for more: all leave by the clock", async () => {
    const pairs = Array.from({ length: 8 }, (_, i) => `- o pneu ${i} = the tyre ${i}`).join("\n");
    const ring = "```activity\nmake: loop\nsize: mini\nversions: 2\ntitle: Ring\n```";
    const text = `---\nteaches: pt\nclasses: [8]\n---\n\n## Words\n\n${pairs}\n\n${ring}\n\n\`\`\`stations\nstations: [Ring]\ndesks: 4\nminutes: 5\n\`\`\`\n`;
    const pages = await paperPages(text);
    const cards = pages.filter((page) => /Desk \d: Ring/.test(page));
    assert.equal(cards.length, 4);
    for (const card of cards) assert.doesNotMatch(card, /If you finish first/);
    assert.match(pages[0] ?? "", /If you finish first, ask for another circle/);
  });

  it("names classes of one size once, and a single minute as one", async () => {
    const two = unitOf(4, "title: Two\nseed: 2").replace("## Words", "## More");
    const text = `${unitOf(12, "title: One", "---\nclasses: [25, 30, 25, 25]\n---\n\n")}\n${two}\n\`\`\`stations\nminutes: 4\nperiod: 9\n\`\`\`\n`;
    const said = (await paperPages(text)).join(" ");
    assert.match(said, /3 classes of 25 1 group of 13 and 1 group of 12 Class of 30 2 groups of 15 /);
    assert.equal(said.match(/of 25/g)?.length, 1);
    const long = (await readUnitText(text)).findings.find(({ code }) => code === "long-stations");
    assert.match(long?.message ?? "", /With 1 minute of work it would fit/);
    assert.equal(long?.fixes[0]?.title, "Work 1 minute");
  });

  it("lays stations out more than once for more groups, as far as there are sets", async () => {
    const two = unitOf(12, "title: Two\nseed: 2").replace("## Words", "## More");
    const unit = (options: string, own = ""): string =>
      `${unitOf(12, `title: One\n${own}`, "---\nclasses: [24]\n---\n\n")}\n${two}\n\`\`\`stations\nminutes: 5\n${options}\n\`\`\`\n`;
    const uneven = async (text: string) =>
      (await readUnitText(text)).findings.filter(({ code }) => code === "uneven-stations");
    const text = unit("groups: 5");
    const [finding] = await uneven(text);
    const [fix] = finding?.fixes ?? [];
    assert.equal(fix?.title, "Set up each station 3 times");
    const mended = applyEdits(text, fix?.edits ?? []);
    assert.ok(mended.includes("copies: 3\n"));
    const after = (await readUnitText(mended)).findings.map(({ code }) => code);
    assert.ok(!after.includes("uneven-stations") && !after.includes("few-sets"), after.join(" "));
    // Twelve sets of One, but two where the unit says so: not enough for three copies.
    const titles = (await uneven(unit("groups: 5", "copies: 2")))[0]?.fixes.map(({ title }) => title);
    assert.deepEqual(titles, ["Take 2 groups"]);
    assert.match((await uneven(unit("groups: 3\ncopies: 3")))[0]?.message ?? "", /^3 of 6 stations stand idle/);
    const said = (await paperPages(mended)).join(" ");
    assert.match(said, /2 rounds of 5 min/);
    assert.match(said, /1 One \(2 sets\) 2 Two \(2 sets\) 3 One \(2 sets\) 4 Two/);
    assert.match(said, /Station 3: One .* 0:03 group 2 go to station 4 0:09 group 5 stay for the end/);
    assert.doesNotMatch(said, /groups? waits? in/);
    // Both copies share the two sets of One.
    const shared = (await paperPages(unit("groups: 2\ncopies: 2", "copies: 2"))).join(" ");
    assert.match(shared, /1 One \(1 set\) 2 Two \(6 sets\) 3 One \(1 set\)/);
  });
});
