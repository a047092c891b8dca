import assert from "node:assert/strict";
import * as vscode from "vscode";
import { keyboard, until, workbench } from "./driver";
import { closeAll, focusEditor, goTo, marketUnit, openUnit, place, setOutputFolder } from "./units";

const row = ".suggest-widget.visible .monaco-list-row";
const pick = ".quick-input-widget .monaco-list-row";

const write = (path: string, text: string): Thenable<void> =>
  vscode.workspace.fs.writeFile(place(path), new TextEncoder().encode(text));

const textOf = async (path: string): Promise<string> => {
  const open = vscode.workspace.textDocuments.find(({ uri }) => uri.path === place(path).path);
  return open ? open.getText() : new TextDecoder().decode(await vscode.workspace.fs.readFile(place(path)));
};

describe("what lies around a unit", () => {
  before(async () => vscode.extensions.getExtension("cutwork.cutwork")?.activate());
  afterEach(async () => {
    await vscode.workspace.saveAll();
    await closeAll();
  });

  it("is offered where a picture's path is written", async () => {
    await write("img/market bell.png", "");
    const editor = await openUnit("pictures.unit.md", "## A\n\n- ![a bell]() = a campainha\n");
    goTo(editor, "](", true);
    await focusEditor();
    await until("the picture", async () => {
      await keyboard.press("Control+Space");
      return until("the picture", async () => (await workbench.count(`${row}:has-text("market bell.png")`)) > 0, 3000);
    });
    await keyboard.press("Enter");
    await until("the path", () =>
      editor.document.getText().includes("- ![a bell](<img/market bell.png>) = a campainha"),
    );
  });

  it("is gone to by the name of a section, wherever it lies", async () => {
    await write("elsewhere.unit.md", "## Something\n\n## Quince and medlar\n\n- a = b\n");
    await openUnit("here.unit.md", marketUnit);
    await vscode.commands.executeCommand("workbench.action.quickOpen", "#quincemed");
    await workbench.waitFor(`${pick}:has-text("Quince and medlar")`);
    await keyboard.press("Enter");
    await until("the section", () => {
      const editor = vscode.window.activeTextEditor;
      return editor?.document.uri.path.endsWith("/elsewhere.unit.md") && editor.selection.active.line === 2;
    });
  });

  it("is named anew when it is given another name in the explorer", async () => {
    await write("lexicon.unit.md", "## Words\n\n- a = b\n");
    const editor = await openUnit(
      "uses-lexicon.unit.md",
      "## Mine\n\n- c = d\n\n```activity\nmake: tiles\nfrom: [Mine, lexicon.unit.md#Words]\n```\n",
    );
    await vscode.commands.executeCommand("revealInExplorer", place("lexicon.unit.md"));
    await workbench.waitFor('.explorer-folders-view .monaco-list-row.focused:has-text("lexicon.unit.md")');
    await keyboard.press("F2");
    await workbench.waitFor(".explorer-folders-view input");
    await workbench.fill(".explorer-folders-view input", "word list.unit.md");
    await keyboard.press("Enter");
    await until("the new name", () => editor.document.getText().includes("from: [Mine, word list.unit.md#Words]"));
    await until("the file", async () => (await textOf("word list.unit.md")) === "## Words\n\n- a = b\n");
  });

  it("is explained in a cutwork.yml", async () => {
    await write("../cutwork.yml", "\n");
    try {
      const document = await vscode.workspace.openTextDocument(place("../cutwork.yml"));
      const editor = await vscode.window.showTextDocument(document);
      await focusEditor();
      await keyboard.type("pap");
      await until("the option", async () => {
        const there = async () => (await workbench.count(`${row}:has-text("paper")`)) > 0;
        if (await until("the option", there, 4000).catch(() => false)) return true;
        await keyboard.press("Control+Space");
        return false;
      });
      await keyboard.press("Enter");
      await until("the values", async () => (await workbench.count(`${row}:has-text("Letter")`)) > 0);
      await keyboard.press("ArrowDown");
      await keyboard.press("Enter");
      await until("the value", () => editor.document.getText().startsWith("paper: Letter"));
      await document.save();
    } finally {
      await closeAll();
      await vscode.workspace.fs.delete(place("../cutwork.yml"));
    }
  });
});

describe("a person who starts and ends", () => {
  before(async () => vscode.extensions.getExtension("cutwork.cutwork")?.activate());
  afterEach(async () => {
    await setOutputFolder(undefined);
    await closeAll();
  });

  it("gets a starter from the palette that is ready to be overwritten", async () => {
    await keyboard.press("F1");
    await workbench.waitFor(".quick-input-widget input");
    await keyboard.type("Cutwork: New Unit");
    await workbench.waitFor(`${pick}:has-text("Cutwork: New Unit")`);
    await keyboard.press("Enter");
    const editor = await until("the starter", () => {
      const active = vscode.window.activeTextEditor;
      return active?.document.isUntitled && active.document.getText().includes("make: tiles") ? active : undefined;
    });
    assert.equal(editor.document.languageId, "cutwork");
    await focusEditor();
    await keyboard.type("The greengrocer");
    await until("the title", () => editor.document.getText().startsWith("---\ntitle: The greengrocer\n"));
    await keyboard.press("Escape");
    await workbench.waitFor('.codelens-decoration:has-text("one solution, proven")');
    await vscode.commands.executeCommand("workbench.action.revertAndCloseActiveEditor");
  });

  it("types the mark of a lost piece and gets it printed", async () => {
    await setOutputFolder("mislaid");
    await openUnit("mislaid.unit.md", marketUnit);
    const { files } = await vscode.commands.executeCommand<{ files: vscode.Uri[] }>("cutwork.make");
    const pieces = files.find(({ path }) => path.endsWith(".pieces.json"));
    assert.ok(pieces);
    const { pieces: list } = JSON.parse(new TextDecoder().decode(await vscode.workspace.fs.readFile(pieces)));
    await vscode.commands.executeCommand("notifications.clearAll");
    const done = vscode.commands.executeCommand<{ files: vscode.Uri[] }>("cutwork.reprint");
    await workbench.waitFor(".quick-input-widget input");
    await keyboard.type(String(list[0].mark).toLowerCase());
    await keyboard.press("Enter");
    assert.equal((await done).files.length, 1);
    await workbench.waitFor('.notification-toast:has-text("One piece is in")');
    await vscode.commands.executeCommand("notifications.clearAll");
  });

  it("finds a task that checks all units, where programs can be run", async () => {
    await openUnit("task.unit.md", marketUnit);
    const tasks = await vscode.tasks.fetchTasks({ type: "cutwork" });
    const local = vscode.extensions.getExtension("cutwork.cutwork")?.extensionUri.scheme === "file";
    assert.deepEqual(
      tasks.map(({ name }) => name),
      local ? ["check all units"] : [],
    );
    // A teacher has VS Code, and no Node besides.
    for (const { execution } of tasks) {
      assert.ok(execution instanceof vscode.ProcessExecution);
      assert.equal(execution.process, globalThis.process.execPath);
      assert.deepEqual(execution.options?.env, { ELECTRON_RUN_AS_NODE: "1" });
      // However many units there are, the call is as long: Windows takes 32,000 characters.
      const [folder] = vscode.workspace.workspaceFolders ?? [];
      assert.deepEqual(execution.args.slice(1), ["check", "--", folder?.uri.fsPath]);
    }
  });
});
