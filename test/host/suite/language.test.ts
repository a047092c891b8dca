import assert from "node:assert/strict";
import * as vscode from "vscode";
import { arrived, keyboard, until, webview, workbench } from "./driver";
import { atEnd, closeAll, focusEditor, goTo, marketUnit, openUnit, place } from "./units";

const verbs = `## Verbs

|     | medir | trazer |
| --- | ----- | ------ |
| eu  | meço  | trago  |
| ela | mede  | traz   |

## Words

- o copo = the glass / the tumbler
  - O copo está cheio.
- o vidro = the glass
- ![a spoon](img/spoon.png) = a colher

### o
- disco

## Story

- [x] Ela [traz](#trazer) o pão.
- [ ] Eu [meço](#Verbs/medir "eu") a conta.

\`\`\`activity
make: tiles
from: [Words, "Verbs"]
\`\`\`
`;

/** Runs a command that answers for a place in the document in front, as VS Code's own views do. */
async function ask<T>(command: string, editor: vscode.TextEditor, ...more: readonly unknown[]): Promise<T> {
  // In a run's first moments the extension may still be on its way.
  await vscode.extensions.getExtension("cutwork.cutwork")?.activate();
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
    assert.ok(editor.document.getText().includes('(<#Verbos: dois/medir> "eu")'));
    assert.ok(editor.document.getText().includes('from: [Words, "Verbos: dois"]'));
  });

  const planned = `${verbs}
\`\`\`activity
make: sort
title: True or not
from: Story
\`\`\`

\`\`\`stations
stations: [True or not, tiles]
\`\`\`
`;

  it("lead with F12 from a plan of stations to the activity", async () => {
    const editor = await openUnit("stations-lead.unit.md", planned);
    for (const [name, line] of [
      ["True or not", "title: True or not"],
      ["tiles", "```activity"],
    ] as const) {
      const from = planned.lastIndexOf(name) + 2;
      const position = editor.document.positionAt(from);
      editor.selection = new vscode.Selection(position, position);
      await focusEditor();
      await keyboard.press("F12");
      const active = () => editor.document.lineAt(editor.selection.active.line).text;
      await until(`the place of ${name}`, () => active() === line).catch(() => assert.equal(active(), line, name));
    }
  });

  it("of activities are renamed with F2 in the plan and where they stand", async () => {
    const editor = await openUnit("stations-renamed.unit.md", planned);
    const position = editor.document.positionAt(planned.lastIndexOf("True or not") + 2);
    editor.selection = new vscode.Selection(position, position);
    await focusEditor();
    await keyboard.press("F2");
    await workbench.waitFor(".rename-box input");
    await workbench.fill(".rename-box input", "Right, wrong");
    await keyboard.press("Enter");
    await until("the new name", () => editor.document.getText().includes("title: Right, wrong\n"));
    assert.ok(editor.document.getText().includes('stations: ["Right, wrong", tiles]'), editor.document.getText());
  });

  it("are refused with a sentence where they are taken", async () => {
    const editor = await openUnit("refused.unit.md", verbs);
    const refused = ask("vscode.executeDocumentRenameProvider", editor, positionOf(editor, "Verbs"), "Story");
    await assert.rejects(refused, /has a section “Story” already/);
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

  it("tell in the language status what is to be mended and what is proven", async () => {
    await openUnit("status.unit.md", marketUnit);
    await workbench.waitFor('.codelens-decoration:has-text("one solution, proven")');
    await workbench.hover('[id="status.languageStatus"]');
    await until("the status", async () =>
      /Nothing to mend[\s\S]*proven to have one solution/.test((await workbench.text(".hover-language-status")).join()),
    );
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

describe("typing", () => {
  afterEach(closeAll);

  /** Types line after line with Enter, as a person at a calm pace, and waits for each to be there. */
  async function typeLines(editor: vscode.TextEditor, lines: readonly string[]): Promise<void> {
    for (const [index, line] of lines.entries()) {
      await keyboard.type(line);
      await until(line, () => editor.document.getText().trimEnd().endsWith(line.trimEnd()));
      if (index === lines.length - 1) return;
      // What Enter does on an item hangs on news from the extension host.
      await until("the cursor", () => atEnd(editor));
      await arrived();
      await keyboard.press("Enter");
    }
  }

  it("goes on with lists and marks on Enter", async () => {
    const editor = await openUnit("enter.unit.md", "## A\n\n");
    goTo(editor, "\n\n", true);
    await focusEditor();
    await typeLines(editor, ["- [x] um", "dois"]);
    await until("the mark", () => editor.document.getText() === "## A\n\n- [x] um\n- [ ] dois");
    await vscode.commands.executeCommand("editor.action.selectAll");
    await typeLines(editor, ["9. nove", "dez", "onze"]);
    await until("numbers", () => editor.document.getText() === "9. nove\n10. dez\n11. onze");
    await vscode.commands.executeCommand("editor.action.selectAll");
    await typeLines(editor, ["2. Ela mede:", "Ela paga."]);
    await until("numbers", () => editor.document.getText() === "2. Ela mede:\n3. Ela paga.");
    await vscode.commands.executeCommand("editor.action.selectAll");
    await typeLines(editor, ["1) Ela chega.", "Ela sai.", ""]);
    await until("numbers", () => editor.document.getText() === "1) Ela chega.\n2) Ela sai.\n3) ");
    // To rest on the empty item says that the list is over; no event tells its end.
    await new Promise((resolve) => setTimeout(resolve, 1000));
    await keyboard.press("Enter");
    await until("the end of the list", () => editor.document.getText() === "1) Ela chega.\n2) Ela sai.\n");
    await vscode.commands.executeCommand("editor.action.selectAll");
    await typeLines(editor, ["- a = b", "c = d"]);
    await until("bullets", () => editor.document.getText() === "- a = b\n- c = d");
    await vscode.commands.executeCommand("editor.action.selectAll");
    await typeLines(editor, ["  - um disco", "uma mochila"]);
    await until("nested bullets", () => editor.document.getText() === "  - um disco\n  - uma mochila");
  });

  it("keeps an item one, with its mark, on Enter right before its words", async () => {
    const editor = await openUnit("enter-before.unit.md", "## A\n\n- [x] nove\n\n1. dez\n");
    await focusEditor();
    goTo(editor, "[x] ", true);
    await arrived();
    await keyboard.press("Enter");
    await until("the mark", () => editor.document.getText() === "## A\n\n- [x] \n- [x] nove\n\n1. dez\n");
    goTo(editor, "1. ", true);
    await arrived();
    await keyboard.press("Enter");
    await until("the number", () => editor.document.getText().endsWith("\n\n1. \n2. dez\n"));
  });

  it("says no less of the second half of a statement that Enter parts", async () => {
    const editor = await openUnit("enter-among.unit.md", "## A\n\n- [x] Ela sai. Ele fica.\n- [ ] Um, dois.\n");
    await focusEditor();
    goTo(editor, "sai. ", true);
    await arrived();
    await keyboard.press("Enter");
    await until("a true half", () => editor.document.getText().includes("- [x] Ela sai. \n- [x] Ele fica.\n"));
    goTo(editor, "Um, ", true);
    await arrived();
    await keyboard.press("Enter");
    await until("a false half", () => editor.document.getText().endsWith("- [ ] Um, \n- [ ] dois.\n"));
  });

  it("offers columns behind the number sign of a tie, and the persons", async () => {
    const text = `${verbs.slice(0, verbs.indexOf("## Words"))}| você | mede | traz |\n\n## More\n\n- [x] Ela [traz]\n`;
    const editor = await openUnit("ties.unit.md", text.replace("\n\n| você", "\n| você"));
    goTo(editor, "[traz]", true);
    await focusEditor();
    await keyboard.type("(#");
    await workbench.waitFor('.suggest-widget.visible .monaco-list-row:has-text("trazer")');
    await workbench.shot("ties");
    await keyboard.press("Enter");
    await workbench.waitFor('.suggest-widget.visible .monaco-list-row:has-text("você")');
    await keyboard.type("voc");
    await until("one person", async () => (await workbench.count(".suggest-widget .monaco-list-row")) === 1);
    await keyboard.press("Enter");
    await until("the tie", () => editor.document.getText().includes('[traz](#trazer "você")')).catch(() =>
      assert.equal(editor.document.getText(), ""),
    );
  });

  it("offers codes in a remark", async () => {
    const editor = await openUnit("remarks.unit.md", marketUnit.replace("the garlic", "the garlic <!-- allow  -->"));
    goTo(editor, "allow", true);
    await focusEditor();
    await keyboard.type(" unus");
    await vscode.commands.executeCommand("editor.action.triggerSuggest");
    await workbench.waitFor('.suggest-widget.visible .monaco-list-row:has-text("unused-pairs")');
    await keyboard.press("Enter");
    await until("the code", () => /allow unused-pairs: +-->/.test(editor.document.getText()));
  });

  it("has a snippet for a shape", async () => {
    const editor = await openUnit("shapes.unit.md", "## A\n\n");
    goTo(editor, "\n\n", true);
    await focusEditor();
    await keyboard.type("false");
    await vscode.commands.executeCommand("editor.action.triggerSuggest");
    await workbench.waitFor('.suggest-widget.visible .monaco-list-row:has-text("False statement")');
    await keyboard.press("Enter");
    await until("the shape", () => /- \[ \] .*\n {2}- /.test(editor.document.getText()));
  });

  it("is made tidy by Format Document", async () => {
    const untidy = verbs
      .replace("- o copo = ", "*  o copo   =  ")
      .replace("  - O copo", "   + O copo")
      .replace("| eu  |", "|eu|");
    const editor = await openUnit("untidy.unit.md", untidy.replace("- o vidro", "*  o vidro").replace("- ![", "*  !["));
    await focusEditor();
    await vscode.commands.executeCommand("editor.action.formatDocument");
    await until("tidy text", () =>
      editor.document.getText().includes("\n- o copo = the glass / the tumbler\n  - O copo"),
    );
    const text = editor.document.getText();
    assert.ok(text.includes("\n| eu  | meço  | trago  |\n"), text);
    assert.ok(text.includes("### o\n\n- disco"), text);
    await vscode.commands.executeCommand("editor.action.formatDocument");
    await arrived();
    assert.equal(editor.document.getText(), text);
  });
});

describe("colours by meaning", () => {
  const themes = [
    "Default Light Modern",
    "Default Dark Modern",
    "Default High Contrast",
    "Default High Contrast Light",
  ];
  const setting = () => vscode.workspace.getConfiguration("workbench");
  const shown = `---
title: The bicycle shop
teaches: pt
---

${verbs}
## Ordering

- Queria | um disco, | por favor. = [...] a coffee, please. <!-- by: K7 -->
  - Por favor, | queria | um disco.

1. A Inês entra.
2. Ela mede:
   - um **disco**
`;
  after(async () => {
    await setting().update("colorTheme", undefined, vscode.ConfigurationTarget.Global);
    await closeAll();
  });

  it("tell separators, accepted answers, marks and ties, in every default theme", async () => {
    const editor = await openUnit("tokens.unit.md", shown);
    const tokens = await ask<vscode.SemanticTokens>("vscode.provideDocumentSemanticTokens", editor);
    // Four separators, a slash and what stands behind it, four bars, two marks, two ties, a gap; five numbers each.
    assert.equal(tokens.data.length, 5 * 15);
    const colour = async (text: string): Promise<string> => {
      const wanted = JSON.stringify(text);
      return String(
        await workbench.evaluate(
          `(() => {
            const spans = [...document.querySelectorAll('.view-lines span[class*="mtk"]')];
            const said = (span) => span.textContent.replace(/\\u00a0/g, ' ').trim();
            // Neighbours of one colour are one span.
            const found = spans.find((span) => said(span) === ${wanted}) ?? spans.find((span) => said(span).endsWith(${wanted}));
            return found ? getComputedStyle(found).color : '';
          })()`,
        ),
      );
    };
    for (const theme of themes) {
      await setting().update("colorTheme", theme, vscode.ConfigurationTarget.Global);
      await until(theme, async () =>
        String(await workbench.evaluate("document.querySelector('.monaco-workbench').className")).includes(
          theme.includes("High Contrast")
            ? theme.endsWith("Light")
              ? "hc-light"
              : "hc-black"
            : theme.includes("Dark")
              ? "vs-dark"
              : "vs ",
        ),
      );
      await until(`${theme} in the text`, async () => (await colour("the tumbler")) !== (await colour("o copo")));
      await workbench.shot(`colours-${theme.toLowerCase().replaceAll(" ", "-")}`);
      const read = async () => {
        const [sign, accepted, plain] = [await colour("="), await colour("the tumbler"), await colour("o copo")];
        return [
          ["a separator and text", sign, plain],
          ["an accepted answer and a printed one", accepted, plain],
          ["true and false", await colour("[x]"), await colour("[ ]")],
        ] as const;
      };
      // While a theme takes hold, the colours of the one before may come back for a moment.
      const differ = async (): Promise<boolean> =>
        (await read()).every(([, one, other]) => one && other && one !== other);
      await until(`the colours of ${theme}`, differ).catch(() => {});
      for (const [what, one, other] of await read())
        assert.ok(one && other && one !== other, `${theme}: ${what}: ${one} ${other}`);
    }
  });
});
