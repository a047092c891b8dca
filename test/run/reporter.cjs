/*
 * A short mocha reporter: one line a suite, then whatever went wrong in full, then the totals alone on a line, for the
 * program that started the run. It needs nothing but `console`, since it also runs in a web worker.
 */

const pathOf = (test) => test.titlePath().join(" › ");

class Reporter {
  constructor(runner) {
    const suites = new Map();
    const failures = [];
    const skipped = [];
    const startedAt = Date.now();

    // A failing hook is reported like a test: it belongs to the suite that it stands in.
    const suiteOf = (runnable) => {
      const name = runnable.titlePath()[0] ?? "";
      if (!suites.has(name)) suites.set(name, { passed: 0, failed: 0, skipped: 0, milliseconds: 0 });
      return suites.get(name);
    };

    runner.on("pass", (test) => {
      const suite = suiteOf(test);
      suite.passed++;
      suite.milliseconds += test.duration ?? 0;
    });
    runner.on("fail", (test, error) => {
      suiteOf(test).failed++;
      failures.push({ test, error });
    });
    runner.on("pending", (test) => {
      suiteOf(test).skipped++;
      skipped.push(test);
    });
    runner.on("end", () => {
      for (const [name, suite] of suites) console.log(line(name, suite));
      for (const test of skipped) console.log(`  - not run: ${pathOf(test)}`);
      failures.forEach(({ test, error }, index) => {
        console.log(`\n  ${index + 1}) ${pathOf(test)}\n${indented(explain(error))}`);
      });
      const sum = (key) => [...suites.values()].reduce((total, suite) => total + suite[key], 0);
      console.log(`\n  ${((Date.now() - startedAt) / 1000).toFixed(1)} s`);
      console.log(`${sum("passed")} passed, ${sum("failed")} failed, ${sum("skipped")} skipped`);
    });
  }
}

function line(name, { passed, failed, skipped, milliseconds }) {
  const counts = [`${passed} passed`];
  if (failed > 0) counts.push(`${failed} FAILED`);
  if (skipped > 0) counts.push(`${skipped} not run`);
  const time = milliseconds >= 500 ? `, ${(milliseconds / 1000).toFixed(1)} s` : "";
  return `  ${failed > 0 ? "✗" : "✓"} ${name} (${counts.join(", ")}${time})`;
}

function explain(error) {
  const stack = typeof error?.stack === "string" ? error.stack : "";
  const frames = stack
    .split("\n")
    .filter((text) => /^\s+at /.test(text) && !/node_modules|node:internal/.test(text))
    .slice(0, 6);
  const message = String(error?.message ?? error);
  return [message, ...frames].join("\n");
}

const indented = (text) =>
  text
    .split("\n")
    .map((row) => `     ${row}`)
    .join("\n");

module.exports = Reporter;
