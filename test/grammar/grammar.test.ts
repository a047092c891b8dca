import assert from "node:assert/strict";
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { openGrammar, scopesOf } from "./grammars";

/*
 * A snapshot is a unit's text with its scopes under each line. CUTWORK_SNAPSHOTS=write writes those anew; look at what changed
 * before you commit it.
 */

const folder = path.join(__dirname, "units");

describe("the grammar", () => {
  for (const name of readdirSync(folder).sort()) {
    it(name, async function () {
      const grammar = await openGrammar();
      // Without VS Code there is no Markdown grammar to build on; `npm test` brings it first.
      if (!grammar) return this.skip();
      const scopes = `${scopesOf(grammar, readFileSync(path.join(folder, name), "utf8").trimEnd())}\n`;
      const snapshot = path.join(__dirname, "snapshots", name.replace(/\.unit\.md$/, ".txt"));
      if (process.env["CUTWORK_SNAPSHOTS"] === "write") writeFileSync(snapshot, scopes);
      assert.ok(existsSync(snapshot), "there is no snapshot yet");
      assert.equal(scopes, readFileSync(snapshot, "utf8"));
    });
  }
});
