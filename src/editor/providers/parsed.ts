import type * as vscode from "vscode";
import { readUnit } from "../../unit/read";
import type { Unit } from "../../unit/unit";
import type { Readings } from "../readings";

/**
 * Units as they stand now, for features that need no dealing: read at most once a version of the document, and not at all where
 * the reading for the findings is as new.
 */
export class Parsed {
  private readonly known = new WeakMap<vscode.TextDocument, { readonly version: number; readonly unit: Unit }>();

  constructor(readonly readings: Readings) {}

  unit(document: vscode.TextDocument): Unit {
    const { version } = document;
    const last = this.readings.last(document.uri);
    if (last?.document === document && last.version === version) return last.reading.unit;
    const known = this.known.get(document);
    if (known?.version === version) return known.unit;
    const unit = readUnit(document.getText());
    this.known.set(document, { version, unit });
    return unit;
  }
}
