import * as vscode from "vscode";
import { Patience } from "./patience";

interface Told {
  readonly diagnostics: readonly vscode.Diagnostic[];
  /** Whether they are about the text as it is now. */
  isCurrent(): boolean;
}

/** Diagnostics of documents, of which nothing new is shown in a line that is being typed. */
export class CalmFindings implements vscode.Disposable {
  private readonly shown: vscode.DiagnosticCollection;
  private readonly latest = new Map<string, Told>();
  private readonly patience = new Patience((key) => this.show(key));
  private readonly subscriptions: vscode.Disposable;

  /** `isOurs` says whether a document is one of those that are told about. */
  constructor(name: string, isOurs: (document: vscode.TextDocument) => boolean) {
    this.shown = vscode.languages.createDiagnosticCollection(name);
    this.subscriptions = vscode.Disposable.from(
      vscode.workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
        const line = isOurs(document) ? cursorLine(document) : undefined;
        const here = contentChanges.some(({ range }) => range.start.line === line || range.end.line === line);
        if (line !== undefined && here) this.patience.typed(document.uri.toString(), line);
      }),
      vscode.window.onDidChangeTextEditorSelection(({ textEditor: { document, selection } }) => {
        this.patience.moved(document.uri.toString(), selection.active.line);
      }),
    );
  }

  set(uri: vscode.Uri, told: Told): void {
    this.latest.set(uri.toString(), told);
    this.put(uri, told);
  }

  delete(uri: vscode.Uri): void {
    this.patience.forget(uri.toString());
    this.latest.delete(uri.toString());
    this.shown.delete(uri);
  }

  /** A line may be spoken about again. Where the text went on since, what is found next will show everything. */
  private show(key: string): void {
    const told = this.latest.get(key);
    if (told?.isCurrent()) this.put(vscode.Uri.parse(key), told);
  }

  private put(uri: vscode.Uri, { diagnostics }: Told): void {
    const known = new Set(this.shown.get(uri)?.map(sameness));
    const isNews = (found: vscode.Diagnostic): boolean =>
      this.patience.isTyped(uri.toString(), found.range.start.line, found.range.end.line) &&
      !known.has(sameness(found));
    this.shown.set(
      uri,
      diagnostics.filter((found) => !isNews(found)),
    );
  }

  dispose(): void {
    this.patience.forgetAll();
    this.subscriptions.dispose();
    this.shown.dispose();
  }
}

function cursorLine(document: vscode.TextDocument): number | undefined {
  const editor = vscode.window.activeTextEditor;
  return editor?.document === document ? editor.selection.active.line : undefined;
}

/** Equal for a finding before and after a keystroke in its line. */
function sameness({ code, range }: vscode.Diagnostic): string {
  return `${range.start.line} ${typeof code === "object" ? code.value : code}`;
}
