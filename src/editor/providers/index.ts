import * as vscode from "vscode";
import type { Readings } from "../readings";
import { followNames } from "./names";
import { outlineUnits } from "./outline";
import { Parsed } from "./parsed";

/** Everything that the editor knows of the language besides findings, fixes and options. */
export function registerLanguageFeatures(readings: Readings): vscode.Disposable {
  const parsed = new Parsed(readings);
  return vscode.Disposable.from(outlineUnits(parsed), followNames(parsed));
}
