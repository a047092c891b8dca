import * as vscode from "vscode";
import { ruleFailed } from "../check/rules/rule-failed";
import { settingsNames } from "../make/settings-files";
import type { Needs, Reading, Workshop } from "../make/workshop";
import type { Engine } from "./engine";
import type { Neighbourhood } from "./files/surroundings";
import { Latest, type Turn } from "./latest";
import { inSlices, type Watcher } from "./slices";
import { isUnit, reasonOf, unitName } from "./units";

/** Milliseconds without a keystroke before a unit is read again. */
const pause = 150;

/** Of a reading that is not wanted any more. */
const noNeeds: Needs = { units: [], pictures: [] };

/** A document as it was read: offsets in `reading` are offsets in `document` as long as `version` is its version. */
export interface DocumentReading {
  readonly document: vscode.TextDocument;
  readonly version: number;
  readonly workshop: Workshop;
  readonly reading: Reading;
}

/**
 * Reads every open unit after each pause in typing, once for all features. A result is handed on only if the document is
 * still what was read.
 */
export class Readings implements vscode.Disposable {
  private readonly read = new vscode.EventEmitter<DocumentReading>();
  private readonly closed = new vscode.EventEmitter<vscode.Uri>();
  private readonly working = new vscode.EventEmitter<{
    readonly document: vscode.TextDocument;
    readonly state: string;
  }>();
  /** Reading a unit takes more than a moment; what it is at, in a few words. */
  readonly onDidPause = this.working.event;
  /** A unit was read and is still as it was read. */
  readonly onDidRead = this.read.event;
  /** A unit was closed or is no longer in Cutwork's language. */
  readonly onDidClose = this.closed.event;

  private readonly latest = new Map<string, DocumentReading>();
  private readonly waiting: Latest<vscode.TextDocument>;
  private readonly subscriptions: vscode.Disposable[] = [];
  /** Documents that VS Code still holds although their last tab was closed. */
  private readonly aside = new Set<string>();
  private complained = false;

  constructor(
    private readonly engine: Engine,
    private readonly neighbourhood: Neighbourhood,
    private readonly log: vscode.LogOutputChannel,
  ) {
    this.waiting = new Latest(
      async (document, turn) => {
        const result = await this.readNow(document, turn);
        if (!result || !turn.current || document.isClosed || document.version !== result.version) return;
        this.keep(result);
      },
      (error) => this.complain(error),
    );
    const watcher = vscode.workspace.createFileSystemWatcher("**/{cutwork.yml,cutwork.yaml,*.{png,jpg,jpeg,svg}}");
    this.subscriptions.push(
      vscode.workspace.onDidOpenTextDocument((document) => this.welcome(document)),
      vscode.workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
        if (settingsNames.some((name) => document.uri.path.endsWith(`/${name}`))) this.requestAll();
        if (contentChanges.length > 0) this.request(document, pause);
      }),
      vscode.workspace.onDidCloseTextDocument((document) => {
        this.aside.delete(document.uri.toString());
        this.forget(document);
      }),
      vscode.window.tabGroups.onDidChangeTabs(({ opened, closed }) => this.follow(opened, closed)),
      vscode.workspace.onDidChangeConfiguration((event) => {
        if (event.affectsConfiguration("cutwork")) this.requestAll();
      }),
      watcher,
      watcher.onDidChange(() => this.requestAll()),
      watcher.onDidCreate(() => this.requestAll()),
      watcher.onDidDelete(() => this.requestAll()),
    );
    this.requestAll(0);
  }

  /** The last reading of a unit, whether or not it was typed in since. */
  last(uri: vscode.Uri): DocumentReading | undefined {
    return this.latest.get(uri.toString());
  }

  /** A reading of the document as it stands now. */
  async current(document: vscode.TextDocument): Promise<DocumentReading> {
    const last = this.last(document.uri);
    if (last && last.version === document.version && last.document === document) return last;
    return this.readNow(document);
  }

  /** Reads around the pause, with everything around the unit looked at anew. */
  async readNow(document: vscode.TextDocument): Promise<DocumentReading>;
  /** With a turn: nothing once that is over. */
  async readNow(document: vscode.TextDocument, turn: Turn): Promise<DocumentReading | undefined>;
  async readNow(document: vscode.TextDocument, turn?: Turn): Promise<DocumentReading | undefined> {
    const workshop = await this.engine.workshop();
    for (;;) {
      const version = document.version;
      const text = document.getText();
      const watcher: Watcher = {
        // Only what ends with a reading that all are told of: what one alone asked for would leave them waiting for its end.
        say: (state) => {
          if (turn) this.working.fire({ document, state });
        },
        wanted: () => turn?.current !== false,
      };
      const around = await this.neighbourhood.around(
        document.uri,
        async (units) => (await inSlices(workshop.needing(text, units), watcher)) ?? noNeeds,
      );
      if (document.version !== version && !document.isClosed) continue;
      const reading = await inSlices(workshop.reading({ name: unitName(document.uri), text }, around), watcher);
      // Who asked for a reading of a document that was typed in meanwhile gets one of what it is now.
      if (reading && !turn && document.version !== version && !document.isClosed) continue;
      return reading && { document, version, workshop, reading };
    }
  }

  /** Reads all open units again, because something around them changed. */
  requestAll(after = pause): void {
    for (const document of vscode.workspace.textDocuments) this.request(document, after);
  }

  /** Once is enough: what fails for one unit, such as a missing asset, fails for all. */
  private complain(error: unknown): void {
    this.log.error("A unit could not be read.", String(error));
    if (this.complained) return;
    this.complained = true;
    const show = "Show the Log";
    void vscode.window.showErrorMessage(`Cutwork cannot read units: ${reasonOf(error)}`, show).then((chosen) => {
      if (chosen === show) this.log.show();
    });
  }

  private request(document: vscode.TextDocument, after: number): void {
    if (!isUnit(document) || document.isClosed || this.aside.has(document.uri.toString())) return;
    this.waiting.request(document, after);
  }

  /** VS Code keeps a document for a while after its last tab is closed; for a teacher it is closed then. */
  private follow(opened: readonly vscode.Tab[], closed: readonly vscode.Tab[]): void {
    const open = new Set(vscode.window.tabGroups.all.flatMap(({ tabs }) => tabs.map(unitOfTab)));
    for (const uri of closed.map(unitOfTab)) {
      const document = open.has(uri) ? undefined : documentAt(uri);
      if (!document) continue;
      this.aside.add(document.uri.toString());
      this.forget(document);
    }
    for (const uri of opened.map(unitOfTab)) {
      const document = documentAt(uri);
      if (document && !this.latest.has(document.uri.toString())) this.welcome(document);
    }
  }

  private welcome(document: vscode.TextDocument): void {
    this.aside.delete(document.uri.toString());
    this.request(document, 0);
  }

  private keep(result: DocumentReading): void {
    for (const { code, message } of result.reading.findings)
      if (code === ruleFailed.code) this.log.error(message, result.document.uri.toString());
    this.latest.set(result.document.uri.toString(), result);
    this.read.fire(result);
  }

  private forget(document: vscode.TextDocument): void {
    if (!isUnit(document) && !this.latest.has(document.uri.toString())) return;
    this.waiting.drop(document);
    this.latest.delete(document.uri.toString());
    this.closed.fire(document.uri);
  }

  dispose(): void {
    this.waiting.dropAll();
    for (const subscription of this.subscriptions) subscription.dispose();
    this.working.dispose();
    this.read.dispose();
    this.closed.dispose();
  }
}

function unitOfTab({ input }: vscode.Tab): string | undefined {
  return input instanceof vscode.TabInputText ? input.uri.toString() : undefined;
}

function documentAt(uri: string | undefined): vscode.TextDocument | undefined {
  return vscode.workspace.textDocuments.find((document) => document.uri.toString() === uri);
}
