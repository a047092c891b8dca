import assert from "node:assert/strict";
import * as vscode from "vscode";
import { keyboard, until, workbench } from "./driver";
import { closeAll, findingsIn, focusEditor, goTo, marketUnit, openUnit, place, setOutputFolder } from "./units";

const verbs = `## Verbs

|     | medir | trazer |
| --- | ----- | ------ |
| eu  | meço  | trago  |
| ela | mede  | traz   |

## Story

- [x] Ela [traz](#trazer "ela") o pão.
- [ ] Eu [meço](#medir) a conta.
  - Ela [mede](#medir) a conta.

## Articles

### o
- disco
- mel

### a
- conta
- roda

\`\`\`activity
make: sort
piles: [o, a]
\`\`\`

\`\`\`activity
make: sort
piles: [a, o]
\`\`\`
`;

const link = '.view-lines .detected-link:has-text("far.unit.md")';

const selected = (): string => {
  const editor = vscode.window.activeTextEditor;
  return editor ? `${editor.selection.active.line} ${editor.document.uri.path.split("/").at(-1)}` : "";
};

/** Gives what is at the cursor another name, as a person does. */
async function rename(name: string): Promise<void> {
  await focusEditor();
  await keyboard.press("F2");
  await workbench.waitFor(".rename-box input");
  await workbench.fill(".rename-box input", name);
  await keyboard.press("Enter");
}

describe("a person who follows names", () => {
  afterEach(closeAll);

  it("comes from a tie to its column, and from a list of piles to the heading", async () => {
    const editor = await openUnit("go.unit.md", verbs);
    for (const [near, line] of [
      ["#trazer", 2],
      ['"ela"', 5],
      ["[o, a]", 15],
    ] as const) {
      goTo(editor, near, false);
      editor.selection = new vscode.Selection(
        editor.selection.active.translate(0, 1),
        editor.selection.active.translate(0, 1),
      );
      await focusEditor();
      await keyboard.press("F12");
      await until(near, () => selected() === `${line} go.unit.md`).catch(() => assert.equal(selected(), near));
    }
  });

  it("comes to a section of another unit, by key and by a click on the file", async () => {
    await openUnit("far.unit.md", verbs);
    await vscode.commands.executeCommand("workbench.action.closeAllEditors");
    const user = "## Mine\n\n- a = b\n\n```activity\nmake: calls\nfrom: far.unit.md#Story\n```\n";
    const editor = await openUnit("near.unit.md", user);
    goTo(editor, "#Sto", true);
    await focusEditor();
    await keyboard.press("F12");
    await until("the other unit", () => selected() === "7 far.unit.md").catch(() => assert.equal(selected(), ""));
    await vscode.window.showTextDocument(editor.document);
    await focusEditor();
    await until("the other unit again", async () => {
      if (selected().endsWith("far.unit.md")) return true;
      // A click opens a link only where VS Code has found it.
      if ((await workbench.count(link)) > 0) await workbench.click(link, { modifiers: ["Control"], force: true });
      return false;
    });
  });

  it("sees all places of a pile", async () => {
    const editor = await openUnit("places.unit.md", verbs);
    goTo(editor, "### o", true);
    await focusEditor();
    await keyboard.press("Shift+F12");
    await workbench.waitFor(".peekview-widget .monaco-list-row");
    const rows = await until("three places", async () => {
      const texts = await workbench.text(
        ".peekview-widget .monaco-list-row .label-name, .peekview-widget .monaco-list-row",
      );
      return texts.filter((text) => /^(### o|piles: .*)$/.test(text.trim())).length >= 3 ? texts : undefined;
    });
    for (const text of ["### o", "piles: [o, a]", "piles: [a, o]"])
      assert.ok(
        rows.some((row) => row.trim() === text),
        `${text} among ${rows.join("; ")}`,
      );
    await keyboard.press("Escape");
  });

  it("renames a pile in the list that names it, and a column and a person in their ties", async () => {
    const editor = await openUnit("newnames.unit.md", verbs);
    goTo(editor, "[o", true);
    await rename("os");
    await until("the pile", () =>
      /### os\n[\s\S]*piles: \[os, a\][\s\S]*piles: \[a, os\]/.test(editor.document.getText()),
    );
    goTo(editor, "#med", true);
    await rename("to measure");
    await until("the column", () => editor.document.getText().includes("[meço](<#to measure>)"));
    assert.match(editor.document.getText(), /\| {5}\| to measure \|/);
    goTo(editor, '"el', true);
    await rename("a Inês");
    await until("the person", () => editor.document.getText().includes('(#trazer "a Inês")'));
    assert.match(editor.document.getText(), /\n\| a Inês \| mede/);
    await until("no error", () =>
      findingsIn(place("newnames.unit.md")).every(({ severity }) => severity !== vscode.DiagnosticSeverity.Error),
    );
  });
});

describe("a person who looks closer", () => {
  afterEach(async () => {
    await setOutputFolder(undefined);
    await closeAll();
  });

  async function hover(): Promise<string> {
    await focusEditor();
    await keyboard.press("Control+K");
    await keyboard.press("Control+I");
    await workbench.waitFor(".monaco-resizable-hover .hover-contents, .monaco-editor .monaco-hover .hover-contents");
    return until("the hover", async () => (await workbench.text(".monaco-hover .hover-contents")).join("\n"));
  }

  it("is told what an answer fits, and what an option does", async () => {
    const editor = await openUnit("closer.unit.md", marketUnit);
    goTo(editor, "the gar", true);
    assert.match(await hover(), /the garlic is printed\. It fits “o alho”/);
    await keyboard.press("Escape");
    goTo(editor, "mak", true);
    await until("the option", async () => {
      const text = await hover();
      return /What to make of the words/.test(text) && /strips/.test(text);
    });
    await keyboard.press("Escape");
  });

  it("makes the PDFs from the line over an activity", async () => {
    await setOutputFolder("overlens");
    await openUnit("overlens.unit.md", marketUnit);
    await workbench.waitFor('.codelens-decoration:has-text("one solution, proven")');
    await workbench.click('.codelens-decoration a:has-text("Make")');
    await workbench.waitFor('.notification-toast:has-text("PDFs are in")');
    const names = (await vscode.workspace.fs.readDirectory(place("overlens"))).map(([name]) => name);
    assert.ok(
      names.some((name) => name.startsWith("overlens.") && name.endsWith(".card.pdf")),
      names.join(),
    );
    await vscode.commands.executeCommand("notifications.clearAll");
  });
});
