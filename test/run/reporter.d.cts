/** The project's mocha reporter. It keeps none of what mocha's own reporters keep; mocha asks only for a constructor. */
declare const Reporter: Mocha.ReporterConstructor;
export = Reporter;
