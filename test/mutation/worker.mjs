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

process.on("message", ({ code, durations, slowest }) => {
  const mocha = new Mocha({ bail: true, timeout: 0, reporter: Silent });
  mocha.suite.emit("pre-require", globalThis, null, mocha);
  try {
    vm.runInThisContext(`(function (require, module, exports) {${code}\n})`, options)(require, { exports: {} }, {});
  } catch (error) {
    process.send({ done: true, failed: `while loading: ${error}`, times: {} });
    return;
  }
  quickFirst(mocha.suite, durations, slowest);
  const times = {};
  let failed;
  let before;
  mocha
    .run(() => process.send({ done: true, failed, times }))
    .on("test", (test) => {
      before = process.cpuUsage();
      process.send({ begins: test.fullTitle() });
    })
    .on("pass", (test) => {
      const { user, system } = process.cpuUsage(before);
      times[test.fullTitle()] = (user + system) / 1000;
    })
    .on("fail", (test, error) => {
      failed ??= `${test.fullTitle()}: ${error?.message}`;
    });
});

/** Leaves out tests that took longer than `slowest` and sorts the others and their suites by how long they took. */
function quickFirst(suite, durations, slowest) {
  const timeOf = (test) => durations[test.fullTitle()] ?? 0;
  const total = (part) =>
    part.tests.reduce((sum, test) => sum + timeOf(test), 0) + part.suites.reduce((sum, other) => sum + total(other), 0);
  suite.tests = suite.tests.filter((test) => timeOf(test) <= slowest).sort((a, b) => timeOf(a) - timeOf(b));
  for (const part of suite.suites) quickFirst(part, durations, slowest);
  suite.suites.sort((a, b) => total(a) - total(b));
}
