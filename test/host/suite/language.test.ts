import assert from "node:assert/strict";
import * as vscode from "vscode";
import { keyboard, until, webview, workbench } from "./driver";
import { closeAll, focusEditor, goTo, marketUnit, openUnit, place } from "./units";

const verbs = `## Verbs

|     | pedir | trazer |
| --- | ----- | ------ |
| eu  | peço  | trago  |
| ela | pede  | traz   |

## Words

- o copo = the glass / the tumbler
  - O copo está cheio.
- o vidro = the glass
- ![a spoon](img/spoon.png) = a colher

### o
- galão

## Story

- [x] Ela [traz](#trazer) o pão.
- [ ] Eu [peço](#Verbs/pedir "eu") a conta.

\`\`\`activity
make: tiles
from: [Words, "Verbs"]
\`\`\`
`;

/** Runs a command that answers for a place in the document in front, as VS Code's own views do. */
async function ask<T>(command: string, editor: vscode.TextEditor, ...more: readonly unknown[]): Promise<T> {
  return vscode.commands.executeCommand<T>(command, editor.document.uri, ...more);
}

function positionOf(editor: vscode.TextEditor, near: string, add = 0): vscode.Position {
  const at = editor.document.getText().indexOf(near);
  assert.ok(at >= 0, near);
  return editor.document.positionAt(at + add);
}

describe("the outline", () => {
  afterEach(closeAll);

  it("shows sections with counts, and what they hold", async () => {
    const editor = await openUnit("outline.unit.md", marketUnit);
    const symbols = await ask<vscode.DocumentSymbol[]>("vscode.executeDocumentSymbolProvider", editor);
    assert.deepEqual(
      symbols.map(({ name, detail, children }) => [name, detail, children.length]),
      [["At the stall", "9 pairs, 1 activity", 10]],
    );
    await vscode.commands.executeCommand("outline.focus");
    await workbench.waitFor('.outline-pane .monaco-list-row:has-text("At the stall")');
    const row = await workbench.text('.outline-pane .monaco-list-row:has-text("At the stall")');
    assert.match(row.join(), /9 pairs, 1 activity/);
    await workbench.shot("outline");
  });

  it("folds front matter, sections, activities, and items with something under them", async () => {
    const editor = await openUnit("folds.unit.md", `---\ntitle: A\n---\n\n${verbs}`);
    const folds = await ask<vscode.FoldingRange[]>("vscode.executeFoldingRangeProvider", editor);
    const lines = folds.map(({ start, end }) => `${editor.document.lineAt(start).text} … ${end - start}`);
    for (const line of ["--- … 2", "## Verbs … 5", "- o copo = the glass / the tumbler … 1", "```activity … 3"])
      assert.ok(lines.includes(line), lines.join("\n"));
    goTo(editor, "## Words");
    await focusEditor();
    await vscode.commands.executeCommand("editor.fold");
    await until("the fold", async () => !(await workbench.text(".view-lines")).join().includes("O copo está"));
  });

  it("grows a selection from answer to side, item, list and section", async () => {
    const editor = await openUnit("select.unit.md", verbs);
    goTo(editor, "tumb", true);
    await focusEditor();
    const grown: string[] = [];
    for (let i = 0; i < 5; i++) {
      await keyboard.press("Shift+Alt+ArrowRight");
      const before = grown.at(-1);
      grown.push(
        await until("a larger selection", () => {
          const text = editor.document.getText(editor.selection);
          return text === before ? undefined : text;
        }),
      );
    }
    // VS Code puts its own steps by words between ours.
    for (const text of ["the tumbler", "the glass / the tumbler", "o copo = the glass / the tumbler"])
      assert.ok(grown.includes(text), grown.join("\n---\n"));
  });
});

describe("names", () => {
  afterEach(closeAll);

  it("lead from a tie and from `from` to what they name", async () => {
    const editor = await openUnit("names.unit.md", verbs);
    const definitions = async (near: string, add: number): Promise<string[]> => {
      const found = await ask<vscode.LocationLink[]>(
        "vscode.executeDefinitionProvider",
        editor,
        positionOf(editor, near, add),
      );
      return found.map(({ targetRange }) => `${targetRange.start.line} ${editor.document.getText(targetRange)}`);
    };
    assert.deepEqual(await definitions("#trazer", 3), ["2 trazer"]);
    assert.deepEqual(await definitions('"eu"', 2), ["4 eu"]);
    assert.deepEqual(await definitions('"Verbs"', 2), ["0 Verbs"]);
  });

  it("are renamed everywhere, as a person does it", async () => {
    const editor = await openUnit("rename.unit.md", verbs);
    goTo(editor, "Verbs");
    await focusEditor();
    await keyboard.press("F2");
    await workbench.waitFor(".rename-box input");
    await workbench.fill(".rename-box input", "Verbos: dois");
    await keyboard.press("Enter");
    await until("the new name", () => editor.document.getText().includes("## Verbos: dois"));
    assert.ok(editor.document.getText().includes('(<#Verbos: dois/pedir> "eu")'));
    assert.ok(editor.document.getText().includes('from: [Words, "Verbos: dois"]'));
  });

  it("are refused with a sentence where they are taken", async () => {
    const editor = await openUnit("refused.unit.md", verbs);
    const refused = ask("vscode.executeDocumentRenameProvider", editor, positionOf(editor, "Verbs"), "Story");
    await assert.rejects(async () => refused, /has a section “Story” already/);
    assert.equal(editor.document.getText(), verbs);
  });

  it("are found and renamed in other units of the workspace", async () => {
    const user = "## Mine\n\n- a = b\n\n```activity\nmake: tiles\nfrom: [source.unit.md#Words, Mine]\n```\n";
    await openUnit("user.unit.md", user);
    await vscode.commands.executeCommand("workbench.action.closeAllEditors");
    const editor = await openUnit("source.unit.md", verbs);
    const at = positionOf(editor, "## Words", 4);
    const found = await ask<vscode.Location[]>("vscode.executeReferenceProvider", editor, at);
    assert.ok(found.some(({ uri }) => uri.path === place("user.unit.md").path));
    const edit = await ask<vscode.WorkspaceEdit>("vscode.executeDocumentRenameProvider", editor, at, "Things, more");
    assert.ok(await vscode.workspace.applyEdit(edit));
    const changed = await vscode.workspace.openTextDocument(place("user.unit.md"));
    assert.ok(changed.getText().includes('from: ["source.unit.md#Things, more", Mine]'), changed.getText());
    await vscode.workspace.saveAll();
  });
});

describe("links, lens and hover", () => {
  afterEach(closeAll);

  it("open pictures and other units", async () => {
    const editor = await openUnit("links.unit.md", verbs.replace('"Verbs"', "names.unit.md#Verbs"));
    const links = await ask<vscode.DocumentLink[]>("vscode.executeLinkProvider", editor);
    const shown = links.map(({ range, target }) => [editor.document.getText(range), target?.path.split("/").pop()]);
    assert.deepEqual(shown, [
      ["img/spoon.png", "spoon.png"],
      ["names.unit.md", "names.unit.md"],
    ]);
  });

  it("tell over an activity what it makes, and show it", async () => {
    await openUnit("lens.unit.md", marketUnit);
    const lens = '.codelens-decoration:has-text("one solution, proven")';
    await workbench.waitFor(lens);
    assert.match(
      (await workbench.text(lens)).join(),
      /2 × 3 tiles · 6 pieces · 1 sheet a set · 1 set · one solution, proven/,
    );
    await workbench.shot("lens");
    await workbench.click('.codelens-decoration a:has-text("Show")');
    await webview("Sheets").waitFor("rect.piece");
  });

  it("tell what an answer fits", async () => {
    const editor = await openUnit("fits.unit.md", verbs);
    const hovers = await ask<vscode.Hover[]>("vscode.executeHoverProvider", editor, positionOf(editor, "the glass", 5));
    const text = hovers.flatMap(({ contents }) =>
      contents.map((each) => (typeof each === "string" ? each : each.value)),
    );
    assert.match(text.join("\n"), /It fits “o copo” and “o vidro”[\s\S]*o vidro = the glass \(\[line 12\]/);
  });
});
