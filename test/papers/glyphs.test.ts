import assert from "node:assert/strict";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { testTypeface } from "../support/typeface";

/** Everything that pieces and papers say by themselves is written in these folders. */
const folders = ["src/activities", "src/make", "src/page"];
/** Rules print nothing, and these only look for marks in what the unit says. */
const printsNothing = /[\\/]rules[\\/]|rebuild[\\/]hide\.ts$|activities[\\/]plain-bullets\.ts$/;

describe("built-in texts of pieces and papers", () => {
  it("have no character that the typeface lacks", async () => {
    const typeface = await testTypeface();
    const root = join(__dirname, "../..");
    const files = folders.flatMap((folder) =>
      readdirSync(join(root, folder), { recursive: true, encoding: "utf8" }).map((name) => join(root, folder, name)),
    );
    const sources = files.filter((file) => file.endsWith(".ts") && !printsNothing.test(file));
    assert.ok(sources.length > 80);
    for (const file of sources) {
      const beyondAscii = [...new Set(readFileSync(file, "utf8").match(/[^\n -~]/gu))].join(" ");
      for (const face of ["regular", "bold", "italic", "boldItalic"] as const)
        assert.deepEqual(typeface.missing(beyondAscii, face), [], `${file}, ${face}`);
    }
  });
});
