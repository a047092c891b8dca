import assert from "node:assert/strict";
import * as vscode from "vscode";
import { keyboard, until, webview, workbench } from "./driver";
import { closeAll, codeOf, findingsIn, focusEditor, marketUnit, openUnit, place } from "./units";

const settingsFile = place("../cutwork.yml");
const otherFile = place("../cutwork.yaml");
const write = (text: string, file = settingsFile): Thenable<void> =>
  vscode.workspace.fs.writeFile(file, new TextEncoder().encode(text));

describe("settings around a unit", () => {
  afterEach(async () => {
    for (const file of [settingsFile, otherFile]) await vscode.workspace.fs.delete(file).then(undefined, () => {});
    await vscode.workspace
      .getConfiguration("cutwork")
      .update("severities", undefined, vscode.ConfigurationTarget.Workspace);
    await closeAll();
  });

  it("come from a cutwork.yml above it, and are followed", async () => {
    await write("paper: Letter\n");
    await openUnit("paper.unit.md", marketUnit);
    await vscode.commands.executeCommand("cutwork.preview");
    const page = webview("Sheets");
    await page.waitFor("rect.piece");
    const width = () => page.evaluate("document.querySelector('.paper').style.getPropertyValue('--width')");
    assert.equal(await width(), "215.9");
    await write("paper: A4\n");
    await until("the other paper", async () => (await width()) === "210");
    await vscode.workspace.fs.delete(settingsFile);
    await write("paper: Letter\n", otherFile);
    await until("the paper of a cutwork.yaml", async () => (await width()) === "215.9");
  });

  it("count no more when their file is gone, though VS Code still holds it", async () => {
    await write("paper: Letter\n");
    await vscode.window.showTextDocument(settingsFile);
    await vscode.commands.executeCommand("workbench.action.closeAllEditors");
    await vscode.workspace.fs.delete(settingsFile);
    await openUnit("gone.unit.md", marketUnit);
    await vscode.commands.executeCommand("cutwork.preview");
    const page = webview("Sheets");
    await page.waitFor("rect.piece");
    await until(
      "the usual paper",
      async () => (await page.evaluate("document.querySelector('.paper').style.getPropertyValue('--width')")) === "210",
    );
  });

  it("are checked at their own place", async () => {
    await write("margin: wide\n");
    await openUnit("margin.unit.md", marketUnit);
    const found = await until("the finding", () => findingsIn(settingsFile)[0]);
    assert.equal(found.range.start.line, 0);
    await write("margin: 12\n");
    await until("no finding", () => findingsIn(settingsFile).length === 0);
  });

  it("are mended there, and not nagged at while they are typed", async () => {
    await write("papr: A4\n");
    await openUnit("mended.unit.md", marketUnit);
    const found = await until("the finding", () => findingsIn(settingsFile)[0]);
    const editor = await vscode.window.showTextDocument(settingsFile);
    const actions = await vscode.commands.executeCommand<vscode.CodeAction[]>(
      "vscode.executeCodeActionProvider",
      settingsFile,
      found.range,
    );
    const action = actions.find(({ title }) => title === "Change to “paper”");
    assert.ok(action?.edit);
    await vscode.workspace.applyEdit(action.edit);
    await until("no finding", () => findingsIn(settingsFile).length === 0);
    assert.equal(editor.document.getText(), "paper: A4\n");
    const end = editor.document.positionAt(9);
    editor.selection = new vscode.Selection(end, end);
    await focusEditor();
    // Typed without a pause of a second, it is told of only in the end.
    for (const letter of "4 wide") {
      await keyboard.type(letter);
      await new Promise((resolve) => setTimeout(resolve, 300));
      assert.deepEqual(findingsIn(settingsFile), [], editor.document.getText());
    }
    await until("the finding", () => findingsIn(settingsFile).length === 1);
    await vscode.commands.executeCommand("workbench.action.files.revert");
  });

  it("say how much a finding matters", async () => {
    const unit = place("matters.unit.md");
    await openUnit("matters.unit.md", marketUnit);
    const found = await until("a finding", () => findingsIn(unit)[0]);
    await vscode.workspace
      .getConfiguration("cutwork")
      .update("severities", { [codeOf(found)]: "warning" }, vscode.ConfigurationTarget.Workspace);
    await until("a warning", () => findingsIn(unit)[0]?.severity === vscode.DiagnosticSeverity.Warning);
    await vscode.workspace
      .getConfiguration("cutwork")
      .update("severities", { [codeOf(found)]: "off" }, vscode.ConfigurationTarget.Workspace);
    await until("silence", () => findingsIn(unit).length === 0);
    await vscode.workspace
      .getConfiguration("cutwork")
      .update("severities", { "unused-pair": "off" }, vscode.ConfigurationTarget.Workspace);
    await workbench.waitFor('.notification-toast:has-text("“unused-pair” (“unused-pairs”?)")');
    await vscode.commands.executeCommand("notifications.clearAll");
  });
});
