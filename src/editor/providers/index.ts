import * as vscode from "vscode";
import { completeNames } from "./complete";
import { findSections } from "./everywhere";
import { formatUnits } from "./format";
import { explainItems } from "./hover";
import { showLenses } from "./lens";
import { linkPaths } from "./links";
import { followMoves } from "./moves";
import { followNames } from "./names";
import { outlineUnits } from "./outline";
import type { Parsed } from "./parsed";
import { colourByMeaning } from "./tokens";
import type { Worlds } from "./worlds";

/** Everything that the editor knows of the language besides findings, fixes and options. */
export function registerLanguageFeatures(parsed: Parsed, worlds: Worlds): vscode.Disposable {
  return vscode.Disposable.from(
    outlineUnits(parsed),
    followNames(worlds),
    followMoves(worlds),
    findSections(worlds),
    linkPaths(parsed),
    colourByMeaning(parsed),
    showLenses(parsed),
    explainItems(parsed),
    completeNames(parsed),
    formatUnits(),
  );
}
