import assert from "node:assert/strict";
import * as vscode from "vscode";
import { keyboard, until, webview, workbench } from "./driver";
import { closeAll, findingsIn, ninePairs, openUnit, place } from "./units";

describe("a teacher's first unit", () => {
  const unit = place("stall.unit.md");
  after(closeAll);

  it("is typed: the list goes on by itself and ends on an empty item", async () => {
    const editor = await openUnit("stall.unit.md", "");
    assert.equal(editor.document.languageId, "cutwork");
    await vscode.commands.executeCommand("workbench.action.focusActiveEditorGroup");
    await keyboard.type("## At the stall\n\n- ");
    for (const pair of ninePairs) await keyboard.type(`${pair}\n`);
    await until("the empty item", () => editor.document.getText().endsWith("\n- "));
    // Resting on the empty item is what says that the list is over.
    await new Promise((resolve) => setTimeout(resolve, 1000));
    await keyboard.press("Enter");
    await until("the end of the list", () => editor.document.getText().endsWith("cabbage\n"));
    await new Promise((resolve) => setTimeout(resolve, 300));
    await keyboard.type("\n```activity\nmake: tiles");
    // Enter would take what is offered.
    await keyboard.press("Escape");
    await keyboard.type("\n```\n");
    const expected = `## At the stall\n\n${ninePairs.map((pair) => `- ${pair}\n`).join("")}\n\`\`\`activity\nmake: tiles\n\`\`\`\n`;
    await until("the typed text", () => editor.document.getText() === expected).catch(() =>
      assert.equal(editor.document.getText(), expected),
    );
  });

  it("lies beside the text as tiles, with the proof", async () => {
    await vscode.commands.executeCommand("cutwork.preview");
    const page = webview("Sheets");
    await page.waitFor("rect.piece");
    assert.ok((await page.count("rect.piece")) >= 4);
    await until("every pair on the tiles", async () => {
      const labels = await page.evaluate(
        "[...document.querySelectorAll('g.text')].map((text) => text.getAttribute('aria-label')).join('|')",
      );
      return String(labels).includes("a cebola");
    });
    assert.match((await page.text("#line")).join(), /solution|ways/);
  });

  it("shows a finding when two pairs get the same answer, and mends it", async () => {
    const editor = await vscode.window.showTextDocument(await vscode.workspace.openTextDocument(unit));
    const before = findingsIn(unit).length;
    const text = editor.document.getText();
    const at = text.indexOf("the garlic");
    await editor.edit((edit) =>
      edit.replace(
        new vscode.Range(editor.document.positionAt(at), editor.document.positionAt(at + "the garlic".length)),
        "the onion",
      ),
    );
    const found = await until("the finding", () => {
      const findings = findingsIn(unit);
      return findings.length > before
        ? findings.find(({ relatedInformation }) => relatedInformation?.length)
        : undefined;
    });
    editor.selection = new vscode.Selection(found.range.start, found.range.start);
    await vscode.commands.executeCommand("workbench.action.focusActiveEditorGroup");
    await workbench.shot("finding");
    const fixes = await vscode.commands.executeCommand<vscode.CodeAction[]>(
      "vscode.executeCodeActionProvider",
      unit,
      found.range,
      vscode.CodeActionKind.QuickFix.value,
    );
    const fix = fixes.find(({ edit }) => edit);
    assert.ok(fix?.edit, "no fix is offered");
    await vscode.workspace.applyEdit(fix.edit);
    await until("the end of the finding", () => findingsIn(unit).length === before);
  });

  it("is made: whole PDFs in a folder beside it", async () => {
    await vscode.commands.executeCommand("undo");
    await until("the finding again", () => findingsIn(unit).length > 0);
    await vscode.commands.executeCommand("undo");
    await until("no finding", () => findingsIn(unit).every(({ relatedInformation }) => !relatedInformation?.length));
    const made = await vscode.commands.executeCommand<{ files: vscode.Uri[]; error?: string }>("cutwork.make");
    assert.equal(made.error, undefined);
    assert.ok(made.files.some(({ path }) => path.endsWith(".card.pdf")));
    assert.ok(made.files.some(({ path }) => path.endsWith("/units/out/stall.pieces.json")));
    for (const file of made.files) {
      const bytes = await vscode.workspace.fs.readFile(file);
      if (file.path.endsWith(".pdf")) assert.equal(new TextDecoder().decode(bytes.slice(0, 5)), "%PDF-");
      else JSON.parse(new TextDecoder().decode(bytes));
    }
    const names = (await vscode.workspace.fs.readDirectory(place("out"))).map(([name]) => name);
    assert.deepEqual(
      names.filter((name) => name.startsWith(".")),
      [],
    );
  });
});
