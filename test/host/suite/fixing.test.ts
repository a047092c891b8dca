import assert from "node:assert/strict";
import * as vscode from "vscode";
import { until } from "./driver";
import { closeAll, findingsIn, openUnit } from "./units";

const unit =
  "## Food\n\n- pão – bread\n- mel: honey\n- sal = salt\n- chá = tea\n\n```activity\nmake: tiles\ngird: 2 x 2\n```\n";

describe("fixing all", () => {
  afterEach(closeAll);

  it("offers all of one code beside the single fix", async () => {
    const editor = await openUnit("fixcode.unit.md", unit);
    const { document } = editor;
    const range = new vscode.Range(2, 0, 2, 13);
    /** The action; the first `asked` of all are asked what they change. */
    const offered = async (asked: number): Promise<vscode.CodeAction | undefined> => {
      const actions = await vscode.commands.executeCommand<vscode.CodeAction[]>(
        "vscode.executeCodeActionProvider",
        document.uri,
        range,
        vscode.CodeActionKind.QuickFix.value,
        asked,
      );
      return actions.find(({ title }) => title === "Fix all of “meant-as-pair”");
    };
    await until("the fixes", async () => (await offered(0)) !== undefined);
    // It is worked out for whoever chooses it, and not while the cursor passes.
    assert.equal((await offered(0))?.edit, undefined);
    const all = await offered(50);
    assert.ok(all?.edit);
    await vscode.workspace.applyEdit(all.edit);
    assert.match(document.getText(), /- pão = bread\n- mel = honey\n/);
    assert.match(document.getText(), /gird/);
  });

  it("fixes everything on save where the user wants that", async () => {
    const setting = vscode.workspace.getConfiguration("editor");
    await setting.update(
      "codeActionsOnSave",
      { "source.fixAll.cutwork": "explicit" },
      vscode.ConfigurationTarget.Workspace,
    );
    try {
      const editor = await openUnit("fixsave.unit.md", `${unit}\n`);
      const { document } = editor;
      await until("the findings", () => findingsIn(document.uri).length > 2);
      // Saving waits for fixes only so long; a person whose machine was busy saves again.
      await until("the mended unit", async () => {
        await editor.edit((edit) => edit.insert(new vscode.Position(document.lineCount - 1, 0), "\n"));
        await document.save();
        return /pão = bread\n- mel = honey[\s\S]*\ngrid: 2 x 2/.test(document.getText());
      });
    } finally {
      await setting.update("codeActionsOnSave", undefined, vscode.ConfigurationTarget.Workspace);
    }
  });
});
