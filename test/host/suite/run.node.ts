import Mocha from "mocha";
import Reporter from "../../run/reporter.cjs";

/** Runs the tests that `load` declares, in the extension host for Node. Rejects where one fails. */
export function runSuite(load: () => void, options: Mocha.MochaOptions): Promise<void> {
  const mocha = new Mocha({ ui: "bdd", reporter: Reporter, ...options });
  mocha.suite.emit("pre-require", globalThis, "", mocha);
  load();
  return new Promise((resolve, reject) => {
    mocha.run((failures) => (failures > 0 ? reject(new Error(`${failures} failed`)) : resolve()));
  });
}
