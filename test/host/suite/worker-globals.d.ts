/** The browser build of mocha, which puts `mocha` into the global scope when it is loaded. */
declare module "mocha/mocha.js";
