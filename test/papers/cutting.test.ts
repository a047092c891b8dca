import assert from "node:assert/strict";
import { paperPages, prepSheet } from "../support/guide";
import { type PrintedPage, readPrint } from "../support/print";
import { readUnitText, testWorkshop, unitOf } from "../support/units";

const front = (more = ""): string => `---\nteaches: pt\nclasses: [9, 6]\n${more}---\n\n`;
const tiles = (options = ""): string => unitOf(12, `title: My tiles\ngrid: 3 x 3\n${options}`);
const story =
  "\n## Story\n\n1. Um.\n2. Dois.\n3. Três.\n\n```activity\nmake: strips\ntitle: My strips\nslip: none\n```\n";

async function card(unit: string): Promise<readonly PrintedPage[]> {
  const files = await (await testWorkshop()).make(await readUnitText(unit), {});
  return readPrint(files.find(({ name }) => name.endsWith("tiles.card.pdf"))?.bytes ?? new Uint8Array());
}

describe("pieces that learners cut", () => {
  it("have wide cut lines on paper and in the preview, hairlines where the teacher cuts", async () => {
    for (const [unit, weight] of [
      [front() + tiles(), 0.25],
      [front("cutting: learners\n") + tiles(), 0.75],
      [front() + tiles("cutting: learners"), 0.75],
      [front("cutting: learners\n") + tiles("cutting: teacher"), 0.25],
    ] as const) {
      const [page] = await card(unit);
      const other = weight === 0.25 ? 0.75 : 0.25;
      const weights = (page?.lines ?? []).map((line) => line.weight);
      // 3 × 3 tiles share eight cuts.
      assert.equal(weights.filter((each) => each === weight).length, 8);
      assert.equal(weights.filter((each) => each === other).length, 0);
      const reading = await readUnitText(unit);
      const [activity] = reading.activities;
      const [deal] = activity?.deals ?? [];
      assert.ok(activity && deal);
      const [sheet] = (await testWorkshop()).view(reading, activity, deal, "dealt");
      const cuts = sheet?.items.filter((item) => item.type === "line" && item.role === "cut") ?? [];
      assert.ok(cuts.length === 8 && cuts.every((line) => line.type === "line" && line.weight === weight));
    }
  });

  it("inherit who cuts from cutwork.yml", async () => {
    const settings = [{ path: "cutwork.yml", text: "cutting: learners\n" }];
    const reading = await readUnitText(front() + tiles(), { settings });
    assert.deepEqual(reading.elsewhere, []);
    const files = await (await testWorkshop()).make(reading, {});
    const pages = await readPrint(files.find(({ name }) => name.endsWith(".card.pdf"))?.bytes ?? new Uint8Array());
    assert.ok(pages[0]?.lines.some(({ weight }) => weight === 0.75));
  });

  it("are counted a learner on the prep sheet, and are no work for the cutter", async () => {
    const all = await prepSheet(front() + tiles("cutting: learners") + story);
    // Nine pieces one at a time, 8 cuts, and 4 along the outer edges: 12, six for each of two; six cuts of 20 s are 2 minutes.
    assert.match(all, /Cut by learners of the first class .* My tiles 1 2 6 2 /);
    assert.match(all, /My tiles card 4 4 learners My tiles paper/);
    assert.match(all, /Do not cut the pieces of “My tiles”: learners do/);
    assert.match(all, /Cut along the hairlines/);
    const alone = await prepSheet(front() + tiles("cutting: learners"));
    assert.doesNotMatch(alone, /hairlines/);
    assert.doesNotMatch(await prepSheet(front() + tiles() + story), /learners of the first class|wide lines/);
    const time = (said: string): number => Number(/Time about (\d+) minutes/.exec(said)?.[1]);
    const many = front().replace("9, 6", "60, 80");
    assert.ok(time(await prepSheet(many + tiles("cutting: learners"))) < time(await prepSheet(many + tiles())));
  });

  it("a set for the whole class is cut by all of it", async () => {
    const loop = `${front("cutting: learners\n")}${unitOf(9, "title: Round\nsize: room").replace("make: tiles", "make: loop")}`;
    const all = await prepSheet(loop);
    const [, learners] = /Cut by learners .* Round \d+ (\d+) /.exec(all) ?? [];
    // The first class has nine.
    assert.equal(learners, "9", all);
  });

  it("are counted for the first class, and sets that it has no learners for are told", async () => {
    const unit = (classes: string): string => (front() + tiles("cutting: learners")).replace("9, 6", classes);
    // 23 learners make 11 sets in pairs, 31 make 15.
    const one = await paperPages(unit("23, 31, 18"));
    const said = /it cuts 11 of 15 sets; 4 stay whole: the class of 31 cuts them when its turn comes, or you do/;
    assert.match(one.at(-1) ?? "", said);
    assert.match(one.at(-1) ?? "", /My tiles 1 2 6 2 • “My tiles”: it cuts/);
    assert.match(one[0] ?? "", said);
    assert.match(await prepSheet(unit("4, 9, 6")), /it cuts 2 of 4 sets; 2 stay whole: larger classes cut them/);
    assert.match(
      await prepSheet((front() + tiles("cutting: learners\ncopies: 5")).replace("9, 6", "8, 4")),
      /it cuts 4 of 5 sets; 1 stays whole: cut it when you need it/,
    );
    assert.doesNotMatch(await prepSheet(unit("31, 23")), /stays? whole/);
    // Of masters as many copies are cut as the class has pairs.
    const master = front() + tiles("cutting: learners\ncopies: by copier");
    assert.match(await prepSheet(master.replace("9, 6", "6, 9")), /it cuts 3 of 4 sets; 1 stays whole: the class of 9/);
    // A set for the room is for all.
    const loop = unitOf(9, "title: Round\nsize: room\ncutting: learners").replace("make: tiles", "make: loop");
    const room = await prepSheet(front().replace("9, 6", "23, 31, 18") + loop);
    assert.match(room, /Cut by learners .* Round \d+ 23 /);
    assert.doesNotMatch(room, /stays? whole/);
  });

  it("want scissors, time and care in the guide", async () => {
    const [cut, uncut] = await Promise.all(
      [tiles("cutting: learners"), tiles()].map(async (unit) => (await paperPages(front() + unit)).join(" ")),
    );
    assert.match(cut ?? "", /1 sheet for 2 learners, 6 cuts each, about 2 minutes more/);
    assert.match(cut ?? "", /At hand the pieces, scissors for each learner of the first class, a clear table/);
    assert.match(cut ?? "", /Scissors: round tips/);
    assert.doesNotMatch(cut ?? "", /Paper cutter/);
    assert.match(uncut ?? "", /Paper cutter/);
    assert.doesNotMatch(uncut ?? "", /scissors for each|Cutting learners/);
    const minutes = (said = ""): number => Number(/about (\d+) minutes in all/.exec(said)?.[1]);
    assert.equal(minutes(cut) - minutes(uncut), 2);
  });

  it("are laminated whole", async () => {
    const all = await prepSheet(front() + tiles("cutting: learners\nreuse: laminate"));
    assert.match(all, /Laminate the sheets of pieces of “My tiles” whole; learners cut them on the lines/);
    assert.doesNotMatch(all, /without a rim|after cutting/);
  });
});

describe("telling sets apart", () => {
  it("gives each set of an activity a colour and, where colours come again, a sign; its characters stand in the marks", async () => {
    const unit = front().replace("9, 6", "16") + tiles("levels: [gentle, hard]\ndecoys: 0") + story;
    const all = await prepSheet(unit);
    assert.match(all, /My tiles, gentle 1 AA 2 AC 3 AD 4 AE My tiles, hard 2 AC dot 3 AD dot 4 AE dot 1 AA /);
    assert.match(all, /My strips 1 AA, 6 AH dot 2 AC, 7 AK dot 3 AD, 8 AN dot 4 AE 5 AF/);
    const marks = (await card(unit)).flatMap(({ texts }) => texts.map(({ text }) => text)).join(" ");
    for (const characters of ["AA", "AC", "AD", "AE"])
      assert.match(marks, new RegExp(`\\b${characters}-[A-Z0-9]{2}\\b`));
    assert.doesNotMatch(await prepSheet(front().replace("9, 6", "2") + tiles()), /Telling sets apart/);
    assert.doesNotMatch(await prepSheet(front() + tiles("copies: by copier")), /Telling sets apart/);
    const alike = await prepSheet(front() + tiles() + story);
    assert.match(alike, /My tiles; My strips 1 AA 2 AC 3 AD 4 AE/);
  });

  it("leaves out boards: no piece of one can get among those of another", async () => {
    const board = unitOf(12, "title: Boards\nseed: 2\nslip: none\nboards: different")
      .replace("make: tiles", "make: board")
      .replace("## Words", "## More");
    const all = await prepSheet(front() + tiles() + board);
    const [, table = ""] = /Telling sets apart(.*)/.exec(all) ?? [];
    assert.match(table, /My tiles 1 AA 2 AC/);
    assert.doesNotMatch(table, /Boards/);
    assert.doesNotMatch(await prepSheet(front() + board), /Telling sets apart/);
  });

  it("leave slips to the teacher, and the clock of stations says that it has no time for the cutting", async () => {
    const plan = "\n```stations\nminutes: 5\n```\n";
    const learners = `${front()}${tiles("cutting: learners")}${story.replace("slip: none", "cutting: learners")}${plan}`;
    const pages = await paperPages(learners);
    const said = pages.join(" ");
    assert.match(said, /Slips are yours to cut, also where learners cut the pieces\./);
    const [, own = "", others = ""] =
      /Not in these times: .*?\(1: about (\d+) min, 2: about (\d+) min\)/.exec(said) ?? [];
    // The same minutes as in the table of what learners cut.
    assert.match(said, new RegExp(`My tiles 1 2 6 ${own} My strips 1 2 \\d+ ${others} `));
    const teacher = (await paperPages(`${front()}${tiles()}${story}${plan}`)).join(" ");
    assert.doesNotMatch(teacher, /Not in these times|Slips are yours/);
  });
});
