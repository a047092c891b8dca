import assert from "node:assert/strict";
import * as vscode from "vscode";

describe("in an untrusted workspace, the extension", () => {
  it("becomes active all the same", async () => {
    assert.equal(vscode.workspace.isTrusted, false);
    const extension = vscode.extensions.getExtension("cutwork.cutwork");
    assert.ok(extension);
    await extension.activate();
    assert.equal(extension.isActive, true);
  });
});
