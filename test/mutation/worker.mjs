import { createRequire } from "node:module";
import vm from "node:vm";
import Mocha from "mocha";
import { inProject } from "../../src/build/project.mjs";

/*
 * Runs bundles of tests that it is sent, each in a fresh Mocha but all in one process, up to the first test that fails, and
 * the quick tests first. It says which test begins, since a test that never ends can be stopped only from outside.
 */

const require = createRequire(inProject("package.json"));
const options = { importModuleDynamically: vm.constants.USE_MAIN_CONTEXT_DEFAULT_LOADER };

class Silent {}

process.on("disconnect", () => process.exit());

process.on("message", async ({ code, durations, bail }) => {
  const mocha = new Mocha({ bail, timeout: 0, reporter: Silent });
  mocha.suite.emit("pre-require", globalThis, null, mocha);
  try {
    vm.runInThisContext(`(function (require, module, exports) {${code}\n})`, options)(require, { exports: {} }, {});
  } catch (error) {
    process.send({ done: true, failed: `while loading: ${error}`, times: {} });
    return;
  }
  quickFirst(mocha.suite, durations);
  const times = {};
  let failed;
  mocha
    .run(() => process.send({ done: true, failed, times }))
    .on("test", (test) => process.send({ begins: test.fullTitle() }))
    .on("pass", (test) => {
      times[test.fullTitle()] = test.duration;
    })
    .on("fail", (test, error) => {
      failed ??= `${test.fullTitle()}: ${error?.message}`;
    });
});

/** Sorts tests and suites by how long they took. */
function quickFirst(suite, durations) {
  const timeOf = (test) => durations[test.fullTitle()] ?? 0;
  const total = (part) =>
    part.tests.reduce((sum, test) => sum + timeOf(test), 0) + part.suites.reduce((sum, other) => sum + total(other), 0);
  suite.tests.sort((a, b) => timeOf(a) - timeOf(b));
  suite.suites.sort((a, b) => total(a) - total(b));
  for (const part of suite.suites) quickFirst(part, durations);
}
