/*
 * Stands in for VS Code's native logger: the same functions, writing plain lines to the given files. The names are
 * assigned one by one, since `import()` of a CommonJS module must see them.
 */
const fs = require("node:fs");
const path = require("node:path");

const levels = ["trace", "debug", "info", "warn", "error", "critical"];

function createLogger(_name, file) {
  let threshold = levels.indexOf("info");
  const logger = {
    getLevel: () => threshold,
    setLevel: (level) => {
      threshold = level;
    },
    setPattern() {},
    clearFormatters() {},
    flush() {},
    drop() {},
  };
  levels.forEach((name, level) => {
    logger[name] = (message) => {
      if (level >= threshold) write(file, `${new Date().toISOString()} [${name}] ${message}\n`);
    };
  });
  return logger;
}

// A log that cannot be written must not take VS Code down with it.
function write(file, text) {
  try {
    fs.mkdirSync(path.dirname(file), { recursive: true });
    fs.appendFileSync(file, text);
  } catch {}
}

exports.version = 0;
exports.setLevel = () => {};
exports.setFlushOn = () => {};
exports.shutdown = () => {};
exports.createRotatingLogger = createLogger;
exports.createAsyncRotatingLogger = async (name, file) => createLogger(name, file);
