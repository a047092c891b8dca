import * as vscode from "vscode";
import type { Readings } from "../readings";
import { completeNames } from "./complete";
import { formatUnits } from "./format";
import { explainAnswers } from "./hover";
import { showLenses } from "./lens";
import { linkPaths } from "./links";
import { followNames } from "./names";
import { outlineUnits } from "./outline";
import { Parsed } from "./parsed";
import { colourByMeaning } from "./tokens";

/** Everything that the editor knows of the language besides findings, fixes and options. */
export function registerLanguageFeatures(readings: Readings): vscode.Disposable {
  const parsed = new Parsed(readings);
  return vscode.Disposable.from(
    outlineUnits(parsed),
    followNames(parsed),
    linkPaths(parsed),
    colourByMeaning(parsed),
    showLenses(parsed),
    explainAnswers(parsed),
    completeNames(parsed),
    formatUnits(),
  );
}
