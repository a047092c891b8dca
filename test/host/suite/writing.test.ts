import assert from "node:assert/strict";
import * as vscode from "vscode";
import { arrived, keyboard, until, workbench } from "./driver";
import { closeAll, codeOf, findingsIn, focusEditor, goTo, marketUnit, openUnit, place, replace } from "./units";

const broken = marketUnit.replace("the garlic", "the onion").replace("grid: 3 x 3\n", "");

describe("findings", () => {
  afterEach(closeAll);

  it("follow the text and lead to a page about them", async () => {
    const unit = place("follow-findings.unit.md");
    const editor = await openUnit("follow-findings.unit.md", broken);
    const finding = await until("the finding", () =>
      findingsIn(unit).find((each) => codeOf(each) === "duplicate-answer"),
    );
    assert.equal(editor.document.getText(finding.range), "the onion");
    const related = finding.relatedInformation?.map(({ location }) => editor.document.getText(location.range));
    assert.ok(related?.includes("the onion"));
    assert.ok(typeof finding.code === "object");
    assert.match(finding.code.target.toString(true), /^command:cutwork\.explain\?/);
    await replace(editor, "- o alho = the onion", "- o alho = the garlic");
    await until("no such finding", () => !findingsIn(unit).some((each) => codeOf(each) === "duplicate-answer"));
  });

  it("are explained on a page of their own", async () => {
    await openUnit("explain.unit.md", broken);
    await vscode.commands.executeCommand("cutwork.explain", "duplicate-answer");
    await until("the page", () =>
      vscode.window.tabGroups.all.some(({ tabs }) => tabs.some(({ label }) => label.includes("duplicate-answer"))),
    );
    await vscode.commands.executeCommand("cutwork.explain", "../README");
    assert.ok(!vscode.window.tabGroups.all.some(({ tabs }) => tabs.some(({ label }) => label.includes("README"))));
  });

  it("end with what stands there last, however fast the typing", async () => {
    const unit = place("fast.unit.md");
    const editor = await openUnit("fast.unit.md", marketUnit);
    for (let round = 0; round < 10; round++) {
      await replace(editor, "the garlic", "the onion");
      await replace(editor, "- o alho = the onion", "- o alho = the garlic");
    }
    await replace(editor, "the garlic", "the onion");
    await until("the finding", () => findingsIn(unit).some((each) => codeOf(each) === "duplicate-answer"));
  });

  it("go when the unit is closed, and come back with it", async () => {
    const unit = place("close.unit.md");
    await openUnit("close.unit.md", broken);
    await until("findings", () => findingsIn(unit).length > 0);
    await closeAll();
    await until("no findings", () => findingsIn(unit).length === 0);
    // Closing one unit makes the others be read again: this one is no longer one of them.
    await openUnit("another.unit.md", broken);
    await until("the other's findings", () => findingsIn(place("another.unit.md")).length > 0);
    await closeAll();
    // What is opened now is read after what closing made be read.
    await openUnit("third.unit.md", broken);
    await until("the third's findings", () => findingsIn(place("third.unit.md")).length > 0);
    assert.equal(findingsIn(unit).length, 0);
    await vscode.window.showTextDocument(unit);
    await until("findings again", () => findingsIn(unit).length > 0);
  });
});

describe("writing an activity", () => {
  afterEach(closeAll);

  it("offers options and values while they are typed", async () => {
    const editor = await openUnit("complete.unit.md", marketUnit);
    goTo(editor, "make: tiles", true);
    await focusEditor();
    await keyboard.press("Enter");
    await keyboard.type("tur");
    await workbench.waitFor('.suggest-widget.visible .monaco-list-row:has-text("turn")');
    await keyboard.press("Enter");
    await workbench.waitFor('.suggest-widget.visible .monaco-list-row:has-text("fixed")');
    await workbench.shot("completion");
    await keyboard.type("fix");
    await until("one value", async () => (await workbench.count(".suggest-widget .monaco-list-row")) === 1);
    await keyboard.press("Enter");
    await until("the option", () => editor.document.getText().includes("make: tiles\nturn: fixed\n```"));
  });

  it("offers the unit's sections", async () => {
    const editor = await openUnit("sections.unit.md", marketUnit.replace("make: tiles\n", "make: tiles\nfrom: \n"));
    const offset = editor.document.getText().indexOf("from: ") + "from: ".length;
    const list = await vscode.commands.executeCommand<vscode.CompletionList>(
      "vscode.executeCompletionItemProvider",
      editor.document.uri,
      editor.document.positionAt(offset),
    );
    assert.ok(list.items.some(({ label }) => label === "At the stall"));
  });

  it("offers nothing in prose", async () => {
    const editor = await openUnit("prose.unit.md", "## At the stall\n\n");
    goTo(editor, "\n\n", true);
    await focusEditor();
    await keyboard.type("make unit");
    await until("the words", () => editor.document.getText().endsWith("make unit"));
    // What typing asked for is answered before what is asked for now.
    await vscode.commands.executeCommand(
      "vscode.executeCompletionItemProvider",
      editor.document.uri,
      editor.selection.active,
    );
    await arrived();
    assert.equal(await workbench.count(".suggest-widget.visible"), 0);
  });

  it("explains an option under the pointer", async () => {
    const editor = await openUnit("hover.unit.md", marketUnit);
    goTo(editor, "make: tiles");
    const hovers = await vscode.commands.executeCommand<vscode.Hover[]>(
      "vscode.executeHoverProvider",
      editor.document.uri,
      editor.selection.active,
    );
    const texts = hovers.flatMap(({ contents }) =>
      contents.map((part) => (typeof part === "string" ? part : part.value)),
    );
    assert.match(texts.join("\n"), /\*\*make\*\*/);
  });
});

describe("a new unit", () => {
  afterEach(closeAll);

  it("starts from the starter, in which nothing is to be mended", async () => {
    await vscode.commands.executeCommand("cutwork.newUnit");
    const editor = await until("the unit", () => vscode.window.activeTextEditor);
    assert.equal(editor.document.languageId, "cutwork");
    assert.match(editor.document.getText(), /```activity\nmake: tiles/);
    // Drawn by the editor, so that no two units have one key.
    assert.match(editor.document.getText(), /\nseed: (0|[1-9]\d{0,5})\n---\n/);
    // What stands over the activity comes from the reading that gives the findings.
    await workbench.waitFor('.codelens-decoration:has-text("proven")');
    await arrived();
    assert.deepEqual(
      findingsIn(editor.document.uri).map(({ message }) => message),
      [],
    );
  });
});
