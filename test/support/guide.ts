import assert from "node:assert/strict";
import { readPrint } from "./print";
import { readUnitText, testWorkshop } from "./units";

/** The texts of each page of one of a unit's papers about all activities, each in one line. */
export async function paperPages(unit: string, name: "guide" | "labels" = "guide"): Promise<string[]> {
  const files = await (await testWorkshop()).make(await readUnitText(unit), {});
  const file = files.find((each) => each.name === `unit.${name}.pdf`);
  assert.ok(file, name);
  return (await readPrint(file.bytes)).map(({ texts }) =>
    texts
      .map(({ text }) => text)
      .join(" ")
      .replace(/\s+/g, " "),
  );
}

/** The text of the prep sheet, the last page of the guide. */
export async function prepSheet(unit: string): Promise<string> {
  const said = (await paperPages(unit)).at(-1) ?? "";
  assert.ok(said.includes("Prep sheet"), said);
  return said;
}
