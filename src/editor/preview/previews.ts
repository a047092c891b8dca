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
      vscode.commands.registerCommand("cutwork.preview", (target: unknown) => this.show(target)),
      vscode.window.registerWebviewPanelSerializer(viewType, {
        deserializeWebviewPanel: async (panel, state: SavedState | undefined) => this.revive(panel, state),
      }),
    ];
  }

  /** The unit whose preview is in front, for commands that are called from there. */
  get activeUnit(): vscode.Uri | undefined {
    return [...this.open.values()].find(({ active }) => active)?.unit;
  }

  private async show(target: unknown): Promise<void> {
    const document = await unitFor(target);
    if (!document) {
      await vscode.window.showInformationMessage("Open a unit first: a file whose name ends in .unit.md.");
      return;
    }
    if (document.languageId !== languageId) await vscode.languages.setTextDocumentLanguage(document, languageId);
    const present = this.open.get(document.uri.toString());
    if (present) return present.reveal();
    const place = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
    this.take(document.uri, vscode.window.createWebviewPanel(viewType, "Sheets", place));
  }

  private revive(panel: vscode.WebviewPanel, state: SavedState | undefined): void {
    if (typeof state?.unit !== "string") panel.dispose();
    else this.take(vscode.Uri.parse(state.unit), panel, state.choice);
  }

  private take(unit: vscode.Uri, panel: vscode.WebviewPanel, choice?: SavedState["choice"]): void {
    const preview = new PreviewPanel(unit, panel, this.extension, this.readings, choice);
    const key = unit.toString();
    this.open.set(key, preview);
    preview.onDidDispose(() => {
      if (this.open.get(key) === preview) this.open.delete(key);
    });
  }

  dispose(): void {
    for (const subscription of this.subscriptions) subscription.dispose();
  }
}
