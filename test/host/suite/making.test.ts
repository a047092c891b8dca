import assert from "node:assert/strict";
import * as vscode from "vscode";
import { closeAll, marketUnit, openUnit, place, setOutputFolder } from "./units";

interface Made {
  readonly files: readonly vscode.Uri[];
  readonly error?: string;
}

const make = async (unit?: vscode.Uri): Promise<Made> => vscode.commands.executeCommand<Made>("cutwork.make", unit);
const setFolder = setOutputFolder;

async function namesIn(folder: string): Promise<readonly string[]> {
  return (await vscode.workspace.fs.readDirectory(place(folder))).map(([name]) => name).sort();
}

async function missing(path: string): Promise<boolean> {
  return vscode.workspace.fs.stat(place(path)).then(
    () => false,
    () => true,
  );
}

describe("making the PDFs", () => {
  afterEach(async () => {
    await closeAll();
    await setFolder(undefined);
  });

  it("makes the folders that are missing, where the setting says", async () => {
    await setFolder("../print/this week");
    await openUnit("folder.unit.md", marketUnit);
    const { files, error } = await make();
    assert.equal(error, undefined);
    assert.ok(files.length > 2);
    assert.deepEqual(await namesIn("../print/this week"), files.map(({ path }) => path.split("/").at(-1)).sort());
  });

  it("makes what the editor shows, saved or not, and the same bytes again", async () => {
    await setFolder("bytes");
    const editor = await openUnit("bytes.unit.md", marketUnit);
    await editor.edit((edit) => edit.insert(new vscode.Position(8, 0), "- a salsa = the parsley\n"));
    const first = await make();
    const pieces = first.files.find(({ path }) => path.endsWith(".pieces.json"));
    const card = first.files.find(({ path }) => path.endsWith(".card.pdf"));
    assert.ok(pieces && card);
    const text = new TextDecoder().decode(await vscode.workspace.fs.readFile(pieces));
    assert.match(text, /a salsa|the parsley/);
    const before = await vscode.workspace.fs.readFile(card);
    await make();
    assert.deepEqual(await vscode.workspace.fs.readFile(card), before);
    await vscode.commands.executeCommand("workbench.action.files.revert");
  });

  it("prints a lost piece of the last print again, and of the one before", async () => {
    await setFolder("lost");
    const editor = await openUnit("lost.unit.md", marketUnit);
    const printed = async (): Promise<readonly { mark: string; faces: readonly { text: string }[] }[]> => {
      const { files } = await make();
      const pieces = files.find(({ path }) => path.endsWith(".pieces.json"));
      assert.ok(pieces);
      const { pieces: list } = JSON.parse(new TextDecoder().decode(await vscode.workspace.fs.readFile(pieces)));
      return list;
    };
    const [piece] = await printed();
    const first = piece?.mark ?? "";
    // A word that is on this very piece, so that the edit makes another deal of it.
    const word = piece?.faces.find(({ text }) => text !== "")?.text ?? "";
    const at = editor.document.getText().indexOf(word);
    assert.ok(word !== "" && at > 0);
    await editor.edit((edit) => edit.insert(editor.document.positionAt(at + word.length), "x"));
    const second = (await printed())[0]?.mark ?? "";
    assert.notEqual(first, second);
    const { files, error } = await vscode.commands.executeCommand<Made>("cutwork.reprint", `${first}, ${second}`);
    assert.equal(error, undefined);
    const bytes = await vscode.workspace.fs.readFile(files[0] ?? place("lost"));
    assert.equal(new TextDecoder().decode(bytes.slice(0, 5)), "%PDF-");
    const unknown = await vscode.commands.executeCommand<Made>("cutwork.reprint", "XXXXXX-AA-AA");
    assert.match(unknown.error ?? "", /XXXXXX-AA-AA/);
    await vscode.commands.executeCommand("workbench.action.files.revert");
  });

  it("leaves everything as it was where a file cannot be replaced, and says which one", async () => {
    await setFolder("held");
    await openUnit("held.unit.md", marketUnit);
    const { files } = await make();
    // A folder that bears a temporary name is in the way, as a file that another program holds would be.
    const last = files.at(-1)?.path.split("/").at(-1);
    assert.ok(last);
    const before = await Promise.all(files.map((file) => vscode.workspace.fs.readFile(file)));
    await vscode.workspace.fs.createDirectory(place(`held/.${last}.tmp`));
    await vscode.workspace.fs.writeFile(place(`held/.${last}.tmp/x`), new Uint8Array());
    const editor = vscode.window.activeTextEditor;
    await editor?.edit((edit) => edit.insert(new vscode.Position(8, 0), "- a salsa = the parsley\n"));
    const again = await make();
    assert.deepEqual(again.files, []);
    assert.ok(again.error?.includes(last), again.error);
    assert.deepEqual(await Promise.all(files.map((file) => vscode.workspace.fs.readFile(file))), before);
    await vscode.workspace.fs.delete(place(`held/.${last}.tmp`), { recursive: true });
    assert.ok(!(await namesIn("held")).some((name) => name.startsWith(".")));
    await vscode.commands.executeCommand("workbench.action.files.revert");
  });

  it("takes no folder out of the way that has the name of a PDF, and says which one", async () => {
    await setFolder("folders");
    await openUnit("stands.unit.md", marketUnit);
    const { files } = await make();
    const name = files
      .find(({ path }) => path.endsWith(".card.pdf"))
      ?.path.split("/")
      .at(-1);
    assert.ok(name);
    await vscode.workspace.fs.delete(place(`folders/${name}`));
    await vscode.workspace.fs.createDirectory(place(`folders/${name}/mine`));
    const before = await namesIn("folders");
    const refused = await make();
    assert.deepEqual(
      [refused.files, refused.error],
      [[], `${name} could not be written: it is a folder. Nothing was changed.`],
    );
    assert.deepEqual(await namesIn("folders"), before);
    assert.equal(await missing(`folders/${name}/mine`), false);
  });

  it("refuses what has nothing to print, and writes nothing", async () => {
    await setFolder("nothing");
    await openUnit("nothing.unit.md", "## At the stall\n\n- a cebola = the onion\n");
    const { files, error } = await make();
    assert.deepEqual(files, []);
    assert.match(String(error), /no activity/);
    assert.ok(await missing("nothing"));
  });

  it("refuses while an error would be printed, and says which", async () => {
    await setFolder("blocked");
    await openUnit("blocked.unit.md", marketUnit.replace("make: tiles\n", "make: tiles\ngrid: 12 x 12\n"));
    const { files, error } = await make();
    assert.deepEqual(files, []);
    assert.ok(error);
    assert.ok(await missing("blocked"));
  });

  it("asks to save a unit that is nowhere yet", async () => {
    await vscode.commands.executeCommand("cutwork.newUnit");
    const { error } = await make();
    assert.match(String(error), /Save the unit first/);
  });

  it("works on a unit from the explorer that is not open", async () => {
    await setFolder("closed");
    await vscode.workspace.fs.writeFile(place("closed.unit.md"), new TextEncoder().encode(marketUnit));
    const { files, error } = await make(place("closed.unit.md"));
    assert.equal(error, undefined);
    assert.ok(files.some(({ path }) => path.endsWith("/closed/closed.pieces.json")));
  });
});
