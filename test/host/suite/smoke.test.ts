import assert from "node:assert/strict";
import * as vscode from "vscode";

describe("the extension", () => {
  it("is there and becomes active", async () => {
    const extension = vscode.extensions.getExtension("cutwork.cutwork");
    assert.ok(extension);
    await extension.activate();
    assert.equal(extension.isActive, true);
  });
});
