import "mocha/mocha.js";
import Reporter from "../../run/reporter.cjs";

/** Runs the tests that `load` declares, in the extension host for the web. Rejects where one fails. */
export function runSuite(load: () => void, options: Mocha.MochaOptions): Promise<void> {
  mocha.setup({ ui: "bdd", reporter: Reporter, ...options });
  load();
  return new Promise((resolve, reject) => {
    mocha.run((failures) => (failures > 0 ? reject(new Error(`${failures} failed`)) : resolve()));
  });
}
