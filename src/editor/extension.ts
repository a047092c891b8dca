import * as vscode from "vscode";
import { completeOptions, explainOptions, explainSettings } from "./completion";
import { Engine } from "./engine";
import { explainFindings } from "./explain";
import { Neighbourhood } from "./files/surroundings";
import { showFindings } from "./findings";
import { offerFixes } from "./fixes";
import { endListsOnEnter } from "./lists";
import { makeUnits } from "./make";
import { startUnits } from "./newUnit";
import { Previews } from "./preview/previews";
import { registerLanguageFeatures } from "./providers";
import { Parsed } from "./providers/parsed";
import { Worlds } from "./providers/worlds";
import { Readings } from "./readings";
import { reprintPieces } from "./reprint";
import { showSettingsFindings } from "./settingsFindings";
import { checkSeverities } from "./severitySetting";
import { showStatus } from "./status";
import { offerTasks } from "./tasks";

/** Wires the features together. One build serves the desktop, remote and web extension hosts. */
export function activate(context: vscode.ExtensionContext): void {
  const { extensionUri } = context;
  const log = vscode.window.createOutputChannel("Cutwork", { log: true });
  const engine = new Engine(extensionUri, log);
  const readings = new Readings(engine, new Neighbourhood(), log);
  const parsed = new Parsed(readings);
  const worlds = new Worlds(parsed);
  const previews = new Previews(extensionUri, readings);
  context.subscriptions.push(
    log,
    showFindings(readings),
    showSettingsFindings(readings),
    showStatus(readings),
    checkSeverities(),
    offerFixes(readings),
    offerTasks(extensionUri),
    completeOptions(readings, worlds),
    explainOptions(),
    explainSettings(),
    registerLanguageFeatures(parsed, worlds),
    explainFindings(extensionUri, readings),
    startUnits(),
    endListsOnEnter(),
    previews,
    makeUnits(readings, previews),
    reprintPieces(readings, previews),
    readings,
    engine,
  );
}

/** Nothing beyond what VS Code disposes of by itself. */
export function deactivate(): void {}
