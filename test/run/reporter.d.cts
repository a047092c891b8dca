/** The project's mocha reporter, given to mocha as its `reporter`. */
declare class Reporter {
  constructor(runner: Mocha.Runner, options: Mocha.MochaOptions);
}
export = Reporter;
