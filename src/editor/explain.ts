import * as vscode from "vscode";
import type { Readings } from "./readings";
import { isUnit } from "./units";

export const explainCommand = "cutwork.explain";

/** A link that opens the page about a code. */
export function explanationLink(code: string): vscode.Uri {
  return vscode.Uri.parse(`command:${explainCommand}?${encodeURIComponent(JSON.stringify([code]))}`);
}

/** `cutwork.explain`: the page about a finding's code, about the finding at the cursor where no code is given. */
export function explainFindings(extension: vscode.Uri, readings: Readings): vscode.Disposable {
  return vscode.commands.registerCommand(explainCommand, async (given: unknown) => {
    const code = typeof given === "string" ? given : await chooseCode(readings);
    // The code becomes a file name: nothing that could lead elsewhere.
    if (code === undefined || !/^[\w-]+$/.test(code)) return;
    const page = vscode.Uri.joinPath(extension, "reference", `${code}.md`);
    try {
      await vscode.workspace.fs.stat(page);
    } catch {
      await vscode.window.showInformationMessage(`There is no page about “${code}” yet.`);
      return;
    }
    try {
      await vscode.commands.executeCommand("markdown.showPreviewToSide", page);
    } catch {
      // VS Code's own Markdown preview may be turned off.
      await vscode.commands.executeCommand("vscode.open", page, vscode.ViewColumn.Beside);
    }
  });
}

async function chooseCode(readings: Readings): Promise<string | undefined> {
  const editor = vscode.window.activeTextEditor;
  if (!editor || !isUnit(editor.document)) return undefined;
  const { reading } = await readings.current(editor.document);
  const cursor = editor.document.offsetAt(editor.selection.active);
  const here = reading.findings.find(({ range }) => range.start <= cursor && cursor <= range.end);
  if (here) return here.code;
  if (reading.findings.length === 0) {
    await vscode.window.showInformationMessage("Nothing was found in this unit.");
    return undefined;
  }
  const codes = [...new Map(reading.findings.map((finding) => [finding.code, finding.message]))];
  const chosen = await vscode.window.showQuickPick(
    codes.map(([label, detail]) => ({ label, detail })),
    { placeHolder: "Which finding should be explained?" },
  );
  return chosen?.label;
}
