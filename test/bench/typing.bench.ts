/*
 * How long an edit takes from keystroke to findings (read, match, deal, prove, check with text fit and glyphs), what an item
 * costs as a unit grows, and how reading and checking compare with a Markdown linter on the same text in the same run.
 * Run with `npm run bench typing`; prints, asserts nothing.
 */
import { lint } from "markdownlint/sync";
import { nothingAround, openWorkshop, type Workshop } from "../../src/make/workshop";
import type { TypefaceAssets } from "../../src/text/typeface";
import { testAssets } from "../support/typeface";
import { word } from "../support/units";
import { allKinds, largeUnit, median, quantile, tilesOnly, typed } from "./support/typing";

const front = ["---", "title: The harbour", "teaches: pt", "explains: en", "classes: [24, 27]", "---", ""];

/** Words of eight or ten letters, of which neighbours are as unlike as words of a list are: by consecutive numbers all would begin alike. */
function scattered(n: number): string {
  return word(1_728 + ((n * 7_919) % 247_104));
}

/** `count` pairs in sections of fifty, all of them in use by one activity; their words are those from a number on. */
function listUnit(count: number, from: number): string {
  const names = Array.from({ length: count / 50 }, (_, i) => `Section ${i + 1}`);
  const lines = [...front, "```activity", "make: tiles", "grid: 4 x 4", `from: [${names.join(", ")}]`, "```"];
  for (let i = 0; i < count; i++) {
    if (i % 50 === 0) lines.push("", `## Section ${i / 50 + 1}`, "");
    const own = scattered(from + i);
    lines.push(`- o ${own} = the ${own}n`);
  }
  return `${lines.join("\n").trim()}\n`;
}

/** Of this process's own work so far, ms, so that a busy machine disturbs it little. */
function userTime(): number {
  return process.cpuUsage().user / 1000;
}

function milliseconds(work: () => void): number {
  const before = userTime();
  work();
  return userTime() - before;
}

function typing(workshop: Workshop, name: string, unit: string): void {
  let text = unit;
  const read = (): void => {
    workshop.needs(text);
    workshop.read({ name: "unit", text }, nothingAround);
  };
  const first = milliseconds(read);
  const times = Array.from({ length: 1000 }, (_, n) => {
    text = typed(text, n);
    return milliseconds(read);
  });
  console.log(`300 pairs, 60 statements, ten activities: ${name}; one edited word`);
  console.log(`  first reading ${first.toFixed(0)} ms`);
  // A session is long, and its first minutes run code that the engine has not compiled yet.
  const parts = { "the first 100 edits": times.slice(0, 100), "the 900 after them": times.slice(100) };
  for (const [part, some] of Object.entries(parts)) {
    console.log(
      `  keystroke to findings, ${part}: median ${median(some).toFixed(1)} ms, 95 % ${quantile(some, 0.95).toFixed(1)} ms, most ${Math.max(...some).toFixed(1)} ms`,
    );
  }
}

/** Words that no reading before had, in languages that rules know: nothing can be taken from another reading. */
function growth(workshop: Workshop): void {
  console.log("reading and checking anew, by size; markdownlint reads and checks, and deals nothing");
  let used = 0;
  for (const count of [100, 300, 1000, 3000, 10_000]) {
    const rounds = Math.max(5, Math.floor(6000 / count));
    // Half as many before them, in which code warms up that new words alone run, are not counted.
    const before = Math.floor(rounds / 2);
    const fresh = Array.from({ length: before + rounds }, (_, round) => listUnit(count, used + round * count));
    used += fresh.length * count;
    const [whole, rest, lints]: [number[], number[], number[]] = [[], [], []];
    // In turn, so that what disturbs one disturbs the other.
    for (const [round, text] of fresh.entries()) {
      const spent = byStep(workshop, text);
      const linting = milliseconds(() => lint({ strings: { unit: text } }));
      if (round < before) continue;
      whole.push(spent.dealing + spent.rest);
      rest.push(spent.rest);
      lints.push(linting);
    }
    const [all, own, other] = [median(whole), median(rest), median(lints)];
    console.log(
      `  ${count} pairs: ${own.toFixed(1)} ms, ${((1000 * own) / count).toFixed(1)} µs a pair; markdownlint ${other.toFixed(1)} ms; ratio ${(own / other).toFixed(2)}; with dealing and proving ${all.toFixed(1)} ms, ${(all / other).toFixed(2)}`,
    );
  }
}

/** What a reading spends on dealing and proving, and on all the rest, ms. */
function byStep(workshop: Workshop, text: string): { readonly dealing: number; readonly rest: number } {
  const steps = workshop.reading({ name: "unit", text }, nothingAround);
  const spent = { dealing: 0, rest: 0 };
  let now: keyof typeof spent = "rest";
  let since = userTime();
  // The clock is read only where the kind of work changes: reading it at each of the many steps costs as much as some of them.
  for (let step = steps.next(); ; step = steps.next()) {
    const then = !step.done && /^(?:Dealing|Proving)/.test(step.value) ? "dealing" : "rest";
    if (then !== now || step.done) {
      const time = userTime();
      spent[now] += time - since;
      [now, since] = [then, time];
    }
    if (step.done) return spent;
  }
}

/** The unit with its ten activities against the linter: everything anew, then after one edited word. */
async function againstLinter(assets: TypefaceAssets, workshop: Workshop): Promise<void> {
  const text = largeUnit(tilesOnly);
  const [whole, dealing]: [number[], number[]] = [[], []];
  // The first rounds are those of cold code, here and below.
  const warm = 5;
  for (let round = 0; round < 20; round++) {
    const spent = byStep(await openWorkshop(assets), text);
    if (round < warm) continue;
    whole.push(spent.dealing + spent.rest);
    dealing.push(spent.dealing);
  }
  const edited = Array.from({ length: 40 }, (_, n) => typed(text, n));
  const after = edited.map((each) => milliseconds(() => workshop.read({ name: "unit", text: each }, nothingAround)));
  const lints = edited.map((each) => milliseconds(() => lint({ strings: { unit: each } }))).slice(warm);
  const other = median(lints);
  console.log("the large unit against markdownlint");
  console.log(`  markdownlint ${other.toFixed(1)} ms`);
  const rest = whole.map((all, i) => all - (dealing[i] ?? 0));
  console.log(
    `  a new engine, nothing kept: ${median(whole).toFixed(1)} ms, ${median(dealing).toFixed(1)} of them for dealing and proving; the rest ${median(rest).toFixed(1)} ms; ratio ${(median(rest) / other).toFixed(2)}`,
  );
  console.log(`  one edited word: ${median(after).toFixed(1)} ms; ratio ${(median(after) / other).toFixed(2)}`);
}

async function main(): Promise<void> {
  const assets = testAssets();
  const workshop = await openWorkshop(assets);
  typing(workshop, "tiles", largeUnit(tilesOnly));
  typing(workshop, "all kinds", largeUnit(allKinds));
  // Before the large texts: to clear away what they leave would be counted as an engine's work.
  await againstLinter(assets, workshop);
  growth(workshop);
}

void main();
