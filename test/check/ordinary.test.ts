import assert from "node:assert/strict";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { tests } from "commonmark-spec";
import { readUnitText } from "../support/units";

/*
 * Ordinary Markdown gives no finding. The examples of the CommonMark specification (npm commonmark-spec) and the README files
 * of the packages that are installed here, none of which is a unit. An item that really has a shape and is wrong as such may
 * be found: those are named, with the reason.
 */

/** Examples of the specification with an item that has a shape and is wrong as such. */
const shaped: Readonly<Record<number, string>> = {};

describe("ordinary Markdown", () => {
  it("the examples of the CommonMark specification give no finding", async () => {
    assert.ok(tests.length > 600);
    const found: string[] = [];
    for (const { markdown, number } of tests) {
      for (const text of [markdown, `## Section\n\n${markdown}`]) {
        const { findings } = await readUnitText(text.replaceAll("→", "\t"));
        for (const { code } of findings) if (shaped[number] !== code) found.push(`${number}: ${code}`);
      }
    }
    assert.deepEqual(found, []);
  });

  it("README files of installed packages give no finding", async () => {
    const modules = path.join(__dirname, "../../node_modules");
    const folders = readdirSync(modules)
      .flatMap((name) =>
        name.startsWith("@") ? readdirSync(path.join(modules, name)).map((inner) => path.join(name, inner)) : [name],
      )
      .map((name) => path.join(modules, name));
    let read = 0;
    const found: string[] = [];
    for (const folder of folders) {
      const file = ["README.md", "readme.md", "Readme.md"]
        .map((name) => path.join(folder, name))
        .find((each) => existsSync(each));
      if (!file) continue;
      read++;
      const { findings, unit } = await readUnitText(readFileSync(file, "utf8"));
      for (const { code, range } of findings) {
        const line = unit.lines.line(unit.lines.lineAt(range.start));
        found.push(`${path.relative(modules, file)}: ${code}: ${unit.text.slice(line.start, line.end)}`);
      }
    }
    assert.ok(read > 50, `${read} files`);
    assert.deepEqual(found, []);
  });
});
