import * as vscode from "vscode";
import type { Choice, FromPage, ToPage } from "../../webview/protocol";
import { activityAt, itemAt, itemOf } from "../items";
import type { DocumentReading, Readings } from "../readings";
import { toRange, unitName } from "../units";
import { pageHtml } from "./page";
import { screenOf } from "./screen";

export const viewType = "cutwork.preview";

/** One unit's sheets beside its text. */
export class PreviewPanel {
  private choice: Choice;
  private ready = false;
  /** An activity was asked for that the page does not show yet: what it remembers is older. */
  private turned = false;
  private shown: DocumentReading | undefined;
  private readonly subscriptions: vscode.Disposable[] = [];

  constructor(
    readonly unit: vscode.Uri,
    private readonly panel: vscode.WebviewPanel,
    extension: vscode.Uri,
    private readonly readings: Readings,
    choice: Choice = { view: "dealt" },
  ) {
    this.choice = choice;
    panel.title = `Sheets: ${unitName(unit)}`;
    panel.webview.options = { enableScripts: true, localResourceRoots: [vscode.Uri.joinPath(extension, "dist")] };
    this.subscriptions.push(
      panel.webview.onDidReceiveMessage((message: FromPage) => this.receive(message)),
      panel.onDidChangeViewState(() => {
        // A hidden page is thrown away; it says when it is ready again.
        if (!panel.visible) this.ready = false;
      }),
      readings.onDidRead((read) => {
        if (this.isAbout(read.document)) this.show(read);
      }),
      vscode.window.onDidChangeTextEditorSelection(({ textEditor }) => {
        if (this.isAbout(textEditor.document)) this.light(textEditor);
      }),
    );
    panel.webview.html = pageHtml(panel.webview, extension, unit);
  }

  reveal(): void {
    this.panel.reveal(undefined, true);
  }

  /** Shows the activity at a place in the unit's order, from 0, else the one at the cursor; stays where there is none. */
  async turnTo(index: number | undefined): Promise<void> {
    const document = await vscode.workspace.openTextDocument(this.unit);
    const read = await this.readings.current(document);
    const { activities, unit } = read.reading;
    const cursor = this.visibleEditor?.selection.active;
    const wanted = index ?? (cursor && activityAt(unit, document.offsetAt(cursor)));
    const activity = activities.find((each) => each.index === wanted);
    if (!activity || activity.title === this.choice.activity) return;
    this.choice = { view: this.choice.view, activity: activity.title };
    this.turned = !this.ready;
    this.show(read);
  }

  onDidDispose(then: () => void): void {
    this.panel.onDidDispose(() => {
      for (const subscription of this.subscriptions) subscription.dispose();
      then();
    });
  }

  get active(): boolean {
    return this.panel.active;
  }

  private isAbout(document: vscode.TextDocument): boolean {
    return document.uri.toString() === this.unit.toString();
  }

  private async receive(message: FromPage): Promise<void> {
    switch (message.type) {
      case "ready":
        this.ready = true;
        if (message.choice && !this.turned) this.choice = message.choice;
        this.turned = false;
        return this.refresh();
      case "choose":
        this.choice = message.choice;
        return this.refresh();
      case "select":
        return this.select(message.span);
    }
  }

  private async refresh(): Promise<void> {
    const document = await vscode.workspace.openTextDocument(this.unit);
    this.show(await this.readings.current(document));
  }

  private show(read: DocumentReading): void {
    this.shown = read;
    if (!this.ready) return;
    this.post({ type: "show", screen: screenOf(read.workshop, read.reading, this.choice) });
    const editor = this.visibleEditor;
    if (editor) this.light(editor);
  }

  private get visibleEditor(): vscode.TextEditor | undefined {
    return vscode.window.visibleTextEditors.find(({ document }) => this.isAbout(document));
  }

  /** Points out the pieces that come from the item at the cursor. */
  private light({ document, selection }: vscode.TextEditor): void {
    if (!this.ready || this.shown?.version !== document.version) return;
    const item = itemAt(this.shown.reading.unit, document.offsetAt(selection.active));
    this.post(item ? { type: "light", span: item.block } : { type: "light" });
  }

  /** Selects the item that a printed text comes from, where the unit is being edited. */
  private async select(span: { readonly start: number; readonly end: number }): Promise<void> {
    const read = this.shown;
    if (!read || read.document.version !== read.version) return;
    const range = toRange(read.document, itemOf(read.reading.unit, span)?.range ?? span);
    const column = this.visibleEditor?.viewColumn ?? vscode.ViewColumn.One;
    await vscode.window.showTextDocument(read.document, { viewColumn: column, selection: range });
  }

  private post(message: ToPage): void {
    void this.panel.webview.postMessage(message);
  }
}
