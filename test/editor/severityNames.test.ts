import assert from "node:assert/strict";
import { unknownNames } from "../../src/editor/severityNames";

describe("names in the setting for severities", () => {
  it("that are no findings are told, with what is near", () => {
    const start = "The setting cutwork.severities names what is no finding, which changes nothing: ";
    assert.equal(
      unknownNames({ "unused-pair": "off", "look-alike": "hint", zzzzzzzz: "off" }),
      `${start}“unused-pair” (“unused-pairs”?), “zzzzzzzz”.`,
    );
  });

  it("that are findings are not", () => {
    for (const setting of [{}, { "look-alike": "off" }, undefined, null, "off"])
      assert.equal(unknownNames(setting), undefined);
  });
});
