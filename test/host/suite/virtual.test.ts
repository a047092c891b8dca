import assert from "node:assert/strict";
import * as vscode from "vscode";
import { until } from "./driver";
import { MemoryFiles } from "./memory";
import { closeAll, codeOf, findingsIn, marketUnit } from "./units";

describe("a unit that lies on no disk", () => {
  const scheme = "cutworkmemory";
  const unit = vscode.Uri.from({ scheme, path: "/school/stall.unit.md" });
  let provider: vscode.Disposable;
  before(async () => {
    provider = vscode.workspace.registerFileSystemProvider(scheme, new MemoryFiles());
    await vscode.workspace.fs.createDirectory(vscode.Uri.joinPath(unit, ".."));
    const text = marketUnit.replace("the garlic", "the onion");
    await vscode.workspace.fs.writeFile(unit, new TextEncoder().encode(text));
  });
  after(async () => {
    await closeAll();
    provider.dispose();
  });

  it("is checked", async () => {
    await vscode.window.showTextDocument(unit);
    await until("the finding", () => findingsIn(unit).some((each) => codeOf(each) === "duplicate-answer"));
  });

  it("is made beside itself", async () => {
    const made = await vscode.commands.executeCommand<{ files: vscode.Uri[]; error?: string }>("cutwork.make");
    assert.equal(made.error, undefined);
    const card = made.files.find(({ path }) => path.endsWith(".card.pdf"));
    assert.ok(card);
    assert.equal(card.scheme, scheme);
    assert.match(card.path, /^\/school\/out\//);
    const bytes = await vscode.workspace.fs.readFile(card);
    assert.equal(new TextDecoder().decode(bytes.slice(0, 5)), "%PDF-");
  });
});
