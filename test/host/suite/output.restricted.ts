import assert from "node:assert/strict";
import * as vscode from "vscode";
import { closeAll, marketUnit, openUnit, place } from "./units";

describe("in an untrusted workspace, the output folder", () => {
  after(closeAll);

  it("is not taken from the workspace's own settings", async () => {
    assert.equal(vscode.workspace.isTrusted, false);
    const settings = new TextEncoder().encode('{ "cutwork.outputFolder": "../../elsewhere" }');
    const changed = new Promise((resolve) => {
      vscode.workspace.onDidChangeConfiguration(resolve);
      setTimeout(resolve, 3000);
    });
    await vscode.workspace.fs.writeFile(place("../.vscode/settings.json"), settings);
    await changed;
    await openUnit("untrusted.unit.md", marketUnit);
    const made = await vscode.commands.executeCommand<{ files: vscode.Uri[]; error?: string }>("cutwork.make");
    assert.equal(made.error, undefined);
    assert.ok(made.files.length > 0);
    for (const { path } of made.files) assert.match(path, /\/units\/out\//);
  });
});
