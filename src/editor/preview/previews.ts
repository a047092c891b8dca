import * as vscode from "vscode";
import type { SavedState } from "../../webview/protocol";
import type { Readings } from "../readings";
import { languageId, unitFor } from "../units";
import { PreviewPanel, viewType } from "./panel";

/** The open previews, one a unit, and the command that opens them. */
export class Previews implements vscode.Disposable {
  private readonly open = new Map<string, PreviewPanel>();
  private readonly subscriptions: vscode.Disposable[];

  constructor(
    private readonly extension: vscode.Uri,
    private readonly readings: Readings,
  ) {
    this.subscriptions = [
      vscode.commands.registerCommand("cutwork.preview", (target: unknown, index: unknown) => this.show(target, index)),
      vscode.window.registerWebviewPanelSerializer(viewType, {
        deserializeWebviewPanel: async (panel, state: SavedState | undefined) => this.revive(panel, state),
      }),
    ];
  }

  /** The unit whose preview is in front, for commands that are called from there. */
  get activeUnit(): vscode.Uri | undefined {
    return [...this.open.values()].find(({ active }) => active)?.unit;
  }

  /** Shows a unit's sheets: those of the activity that is named by its place in the unit, else of the one at the cursor. */
  private async show(target: unknown, index: unknown): Promise<void> {
    const document = await unitFor(target);
    if (!document) {
      await vscode.window.showInformationMessage("Open a unit first: a file whose name ends in .unit.md.");
      return;
    }
    if (document.languageId !== languageId) await vscode.languages.setTextDocumentLanguage(document, languageId);
    const present = this.open.get(document.uri.toString());
    present?.reveal();
    const place = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
    const panel = present ?? this.take(document.uri, vscode.window.createWebviewPanel(viewType, "Sheets", place));
    await panel.turnTo(typeof index === "number" ? index : undefined);
  }

  private revive(panel: vscode.WebviewPanel, state: SavedState | undefined): void {
    if (typeof state?.unit !== "string") panel.dispose();
    else this.take(vscode.Uri.parse(state.unit), panel, state.choice);
  }

  private take(unit: vscode.Uri, panel: vscode.WebviewPanel, choice?: SavedState["choice"]): PreviewPanel {
    const preview = new PreviewPanel(unit, panel, this.extension, this.readings, choice);
    const key = unit.toString();
    this.open.set(key, preview);
    preview.onDidDispose(() => {
      if (this.open.get(key) === preview) this.open.delete(key);
    });
    return preview;
  }

  dispose(): void {
    for (const subscription of this.subscriptions) subscription.dispose();
  }
}
