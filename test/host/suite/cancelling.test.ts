import assert from "node:assert/strict";
import * as vscode from "vscode";
import { arrived, until, workbench } from "./driver";
import { MemoryFiles } from "./memory";
import { closeAll, marketUnit } from "./units";

interface Made {
  readonly files: readonly vscode.Uri[];
  readonly error?: string;
}

/** Files that take their time: writing into the output folder waits for the gate, if there is one. */
class SlowFiles extends MemoryFiles {
  gate: Promise<void> | undefined;
  waiting = 0;

  override async writeFile(file: vscode.Uri, content: Uint8Array): Promise<void> {
    if (this.gate && file.path.includes("/out/")) {
      this.waiting++;
      await this.gate;
    }
    super.writeFile(file, content);
  }
}

const scheme = "cutworkslow";
const folder = vscode.Uri.from({ scheme, path: "/school" });
const out = vscode.Uri.joinPath(folder, "out");
const toast = '.notification-toast:has-text("Making the PDFs")';

describe("a person who cancels an export", () => {
  const files = new SlowFiles();
  let provider: vscode.Disposable;
  before(async () => {
    provider = vscode.workspace.registerFileSystemProvider(scheme, files);
    await vscode.workspace.fs.createDirectory(folder);
  });
  after(async () => {
    await closeAll();
    provider.dispose();
  });

  async function open(text: string): Promise<vscode.TextEditor> {
    const unit = vscode.Uri.joinPath(folder, "stall.unit.md");
    await vscode.workspace.fs.writeFile(unit, new TextEncoder().encode(text));
    return vscode.window.showTextDocument(unit);
  }

  const make = (): Thenable<Made> => vscode.commands.executeCommand<Made>("cutwork.make");

  const namesInOut = async (): Promise<readonly string[]> =>
    vscode.workspace.fs.readDirectory(out).then(
      (entries) => entries.map(([name]) => name).sort(),
      () => [],
    );

  /** Starts an export, clicks on Cancel while the first file is being written, and lets it go on. */
  async function makeAndCancel(): Promise<Made> {
    let open: () => void = () => {};
    // The notification of an export before this one has a button of its own.
    await workbench.waitFor(toast, "detached");
    files.waiting = 0;
    files.gate = new Promise((resolve) => {
      open = resolve;
    });
    try {
      const making = make();
      await until("the first file", () => files.waiting > 0);
      await workbench.waitFor(toast);
      await workbench.click(`${toast} .monaco-button:has-text("Cancel")`);
      await workbench.waitFor(toast, "detached");
      // What comes back from the window now comes after its word that the export was cancelled.
      await arrived();
      open();
      return await making;
    } finally {
      open();
      files.gate = undefined;
    }
  }

  it("finds nothing where nothing was before", async () => {
    await open(marketUnit);
    const { files: made, error } = await makeAndCancel();
    assert.deepEqual(made, []);
    assert.equal(error, undefined, "who cancels wants no message about it");
    const beside = await vscode.workspace.fs.readDirectory(folder);
    assert.deepEqual(
      beside.map(([name]) => name),
      ["stall.unit.md"],
      "not even the folder that was made for it",
    );
    assert.equal(await workbench.count(".notification-toast"), 0);
  });

  it("finds the former print whole, and can make the new one after all", async () => {
    const editor = await open(marketUnit);
    const { files: made } = await make();
    assert.ok(made.length > 2);
    const read = (): Promise<readonly Uint8Array[]> =>
      Promise.all(made.map((file) => Promise.resolve(vscode.workspace.fs.readFile(file))));
    const [names, bytes] = [await namesInOut(), await read()];
    await editor.edit((edit) => edit.insert(new vscode.Position(7, 0), "- a salsa = the parsley\n"));
    assert.deepEqual((await makeAndCancel()).files, []);
    assert.deepEqual(await namesInOut(), names);
    assert.deepEqual(await read(), bytes);
    assert.ok((await make()).files.length > 2);
    assert.notDeepEqual(await read(), bytes);
  });
});
