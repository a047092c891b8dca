import assert from "node:assert/strict";
import * as vscode from "vscode";
import { arrived, keyboard, until, webview, workbench } from "./driver";
import { atEnd, closeAll, codeOf, findingsIn, focusEditor, goTo, ninePairs, openUnit, place, replace } from "./units";

const rest = (milliseconds: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, milliseconds));

/** Chooses a quick fix as a person does: from the list that Ctrl+. opens at the cursor. */
async function mend(title: string): Promise<void> {
  await focusEditor();
  await arrived();
  // A list that was opened before the finding had come is closed again and opened anew, as a person does it.
  await until(`“${title}” in the list`, async () => {
    await keyboard.press("Control+.");
    for (let look = 0; look < 20; look++) {
      if ((await workbench.count(`.action-widget .monaco-list-row:has-text("${title}")`)) > 0) return true;
      await rest(100);
    }
    await keyboard.press("Escape");
    return false;
  });
  await until(`“${title}” to be in focus`, async () => {
    if ((await workbench.count(`.action-widget .monaco-list-row.focused:has-text("${title}")`)) > 0) return true;
    await keyboard.press("ArrowDown");
    return false;
  });
  await keyboard.press("Enter");
}

describe("a teacher's first unit", () => {
  const unit = place("stall.unit.md");
  let editor: vscode.TextEditor;
  before(async () => {
    editor = await openUnit("stall.unit.md", "");
  });
  after(closeAll);

  it("is typed: the list goes on by itself and ends on an empty item", async () => {
    assert.equal(editor.document.languageId, "cutwork");
    await focusEditor();
    await keyboard.type("## At the stall\n\n- ");
    for (const pair of ninePairs) {
      await keyboard.type(pair);
      // What Enter does on an item hangs on news from the extension host.
      await until(pair, () => editor.document.getText().endsWith(`\n- ${pair}`) && atEnd(editor));
      await arrived();
      await keyboard.press("Enter");
    }
    await until("the empty item", () => editor.document.getText().endsWith("\n- "));
    // To rest on the empty item is what a person does here, and what says that the list is over; no event tells its end.
    await rest(1000);
    await keyboard.press("Enter");
    await until("the end of the list", () => editor.document.getText().endsWith("cabbage\n"));
    await until("the cursor", () => atEnd(editor));
    await arrived();
    await keyboard.type("\n```activity\nmake: tiles");
    // The list of kinds has come up by now; Enter on a word that is already whole is a line's end.
    await workbench.waitFor('.suggest-widget.visible .monaco-list-row:has-text("tiles")');
    await keyboard.type("\n```\n");
    const list = ninePairs.map((pair) => `- ${pair}\n`).join("");
    const expected = `## At the stall\n\n${list}\n\`\`\`activity\nmake: tiles\n\`\`\`\n`;
    await until("the typed text", () => editor.document.getText() === expected).catch(() =>
      assert.equal(editor.document.getText(), expected),
    );
  });

  it("lies beside the text as tiles, with the proof", async () => {
    await vscode.commands.executeCommand("cutwork.preview");
    const page = webview("Sheets");
    await page.waitFor("rect.piece");
    // Seven of nine pairs lie on the inner edges of 2 × 3 tiles.
    assert.equal(await page.count("rect.piece"), 6);
    assert.equal(await page.count("g.text[data-start]"), 14);
    assert.match((await page.text("#line")).join(), /One solution, proven/);
  });

  it("follows a fix: more tiles, so that every pair is used", async () => {
    const finding = await until("the finding", () => findingsIn(unit)[0]);
    editor.selection = new vscode.Selection(finding.range.start, finding.range.start);
    await mend("3 × 3 tiles");
    const page = webview("Sheets");
    await until("nine tiles", async () => (await page.count("rect.piece")) === 9);
    assert.equal(await page.count("g.text[data-start]"), 18);
    await until("no finding", () => findingsIn(unit).length === 0);
  });

  it("shows a finding when two pairs get the same answer, and mends it", async () => {
    await replace(editor, "the garlic", "the onion");
    const finding = await until("the finding", () =>
      findingsIn(unit).find((each) => codeOf(each) === "duplicate-answer"),
    );
    assert.equal(editor.document.getText(finding.range), "the onion");
    assert.ok(finding.relatedInformation?.length);
    goTo(editor, "o alho = ", true);
    await workbench.shot("finding");
    await mend("Take out");
    await until("the end of the finding", () => !findingsIn(unit).some(({ message }) => message === finding.message));
    assert.ok(!editor.document.getText().includes("o alho"));
  });

  it("is made: whole PDFs in a folder beside it", async () => {
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
    assert.ok(!names.some((name) => name.startsWith(".")), names.join());
  });
});
