import assert from "node:assert/strict";
import * as vscode from "vscode";
import { keyboard, until, workbench } from "./driver";
import { closeAll, focusEditor, goTo, openUnit } from "./units";

const row = ".suggest-widget.visible .monaco-list-row";

const offered = (): Promise<readonly string[]> => workbench.text(`${row} .label-name`);

/** Waits until the list of what can come here has what is wanted. Where it does not come by itself, it is asked for anew. */
async function untilOffered(what: string, wanted: (labels: readonly string[]) => boolean): Promise<void> {
  const there = async (): Promise<boolean> => wanted(await offered());
  await until(what, async () => {
    if (await until(what, there, 4000).catch(() => false)) return true;
    await keyboard.press("Escape");
    await keyboard.press("Control+Space");
    return false;
  });
}

/** Takes one of the rows of the list, as a person does with the arrow keys. */
async function choose(label: string): Promise<void> {
  await untilOffered(label, (labels) => labels.includes(label));
  await until(`“${label}” to be in focus`, async () => {
    const [focused] = await workbench.text(`${row}.focused .label-name`);
    if (focused === label) return true;
    await keyboard.press("ArrowDown");
    return false;
  });
  await keyboard.press("Enter");
}

/** Opens a unit with the cursor at its `‸`, which is taken out. */
async function openAt(name: string, marked: string): Promise<vscode.TextEditor> {
  const editor = await openUnit(name, marked.replace("‸", ""));
  const position = editor.document.positionAt(marked.indexOf("‸"));
  editor.selection = new vscode.Selection(position, position);
  await focusEditor();
  return editor;
}

/** Waits until the unit has a text; fails with what it has instead. */
async function untilText({ document }: vscode.TextEditor, wanted: string): Promise<void> {
  await until(wanted, () => document.getText().includes(wanted)).catch(() => assert.equal(document.getText(), wanted));
}

const articles = `## Articles

### o
- disco
- mel

### a, as
- conta
- roda

`;

describe("completion", () => {
  before(async () => vscode.extensions.getExtension("cutwork.cutwork")?.activate());
  afterEach(closeAll);

  it("offers the options of the kind, then their values, then the piles", async () => {
    const editor = await openAt("options.unit.md", `${articles}\`\`\`activity\nmake: ‸\n\`\`\`\n`);
    await keyboard.type("so");
    await choose("sort");
    await untilText(editor, "make: sort");
    await keyboard.press("Escape");
    await keyboard.press("Enter");
    await keyboard.type("mat");
    await choose("mats");
    await untilOffered("the values", (labels) => labels.includes("circles"));
    await choose("fields");
    await untilText(editor, "mats: fields");
    await keyboard.press("Enter");
    await keyboard.type("pil");
    await choose("piles");
    await untilOffered("the values", (labels) => labels.includes("headings"));
    await keyboard.type("[");
    await choose("o");
    await untilText(editor, "piles: [o]");
    await keyboard.type(",");
    await keyboard.type(" ");
    await choose("a, as");
    await untilText(editor, 'piles: [o, "a, as"]');
  });

  it("offers the units beside this one in `from`, then their sections", async () => {
    await openUnit("storeroom.unit.md", "## Shelves\n\n- a = b\n\n## Lost: found\n\n- c = d\n");
    await vscode.commands.executeCommand("workbench.action.closeAllEditors");
    const editor = await openAt(
      "foreign.unit.md",
      "## Mine\n\n- a = b\n\n```activity\nmake: tiles\nfrom: [Mine, ‸]\n```\n",
    );
    await keyboard.type("store");
    await choose("storeroom.unit.md");
    await untilText(editor, "from: [Mine, storeroom.unit.md#]");
    await untilOffered("its sections", (labels) => labels.join() === "Shelves,Lost: found");
    await choose("Lost: found");
    await untilText(editor, 'from: [Mine, "storeroom.unit.md#Lost: found"]');
  });

  it("offers the unit's activities in a plan of stations, and languages in the front matter", async () => {
    const activities = "```activity\nmake: sort\n```\n\n```activity\nmake: sort\ntitle: Once more\n```\n";
    const text = `---\nteaches: ‸\n---\n\n${articles}${activities}\n\`\`\`stations\nstations: []\n\`\`\`\n`;
    const editor = await openAt("plan.unit.md", text);
    await keyboard.press("Control+Space");
    await untilOffered("languages", (labels) => labels.includes("uk"));
    assert.match((await workbench.text(`${row}:has-text("uk")`)).join(), /Ukrainian/);
    await choose("uk");
    await untilText(editor, "teaches: uk\n");
    goTo(editor, "stations: [", true);
    await keyboard.press("Control+Space");
    await choose("Once more");
    await untilText(editor, "stations: [Once more]");
  });

  it("has a snippet for each kind, with its choices", async () => {
    const editor = await openAt("kinds.unit.md", `${articles}‸`);
    await keyboard.type("sort");
    await keyboard.press("Control+Space");
    await choose("sort");
    await untilText(editor, "```activity\nmake: sort\npiles: auto\nmats: auto\n");
    await untilOffered("the choices", (labels) => labels.includes("truth"));
    await choose("headings");
    await untilText(editor, "piles: headings\n");
  });
});
