import * as vscode from "vscode";
import { foldsOf } from "../language/folds";
import { type OutlineEntry, type OutlineKind, outlineOf } from "../language/outline";
import { selectionsAt } from "../language/selection";
import { toRange, unitSelector } from "../units";
import type { Parsed } from "./parsed";

const kinds: Readonly<Record<OutlineKind, vscode.SymbolKind>> = {
  section: vscode.SymbolKind.Namespace,
  pile: vscode.SymbolKind.Package,
  pair: vscode.SymbolKind.Key,
  statement: vscode.SymbolKind.Boolean,
  event: vscode.SymbolKind.Number,
  text: vscode.SymbolKind.String,
  table: vscode.SymbolKind.Array,
  column: vscode.SymbolKind.Field,
  activity: vscode.SymbolKind.Event,
  stations: vscode.SymbolKind.Event,
};

/** The outline and the breadcrumbs, folding, and what “Expand Selection” takes. */
export function outlineUnits(parsed: Parsed): vscode.Disposable {
  return vscode.Disposable.from(
    vscode.languages.registerDocumentSymbolProvider(unitSelector, {
      provideDocumentSymbols: (document) => {
        const dealt = parsed.readings.last(document.uri)?.reading.activities ?? [];
        return outlineOf(parsed.unit(document), dealt).map((entry) => symbolOf(document, entry));
      },
    }),
    vscode.languages.registerFoldingRangeProvider(unitSelector, {
      provideFoldingRanges: (document) =>
        foldsOf(parsed.unit(document)).map(({ first, last }) => new vscode.FoldingRange(first, last)),
    }),
    vscode.languages.registerSelectionRangeProvider(unitSelector, {
      provideSelectionRanges: (document, positions) =>
        positions.map((position) => selectionOf(document, position, parsed)),
    }),
  );
}

function symbolOf(document: vscode.TextDocument, entry: OutlineEntry): vscode.DocumentSymbol {
  const { kind, name, detail, range, select, children } = entry;
  const place = toRange(document, range);
  const symbol = new vscode.DocumentSymbol(name, detail, kinds[kind], place, toRange(document, select));
  symbol.children = children.map((child) => symbolOf(document, child));
  return symbol;
}

function selectionOf(document: vscode.TextDocument, position: vscode.Position, parsed: Parsed): vscode.SelectionRange {
  const ranges = selectionsAt(parsed.unit(document), document.offsetAt(position));
  return (
    ranges.reduceRight<vscode.SelectionRange | undefined>(
      (parent, range) => new vscode.SelectionRange(toRange(document, range), parent),
      undefined,
    ) ?? new vscode.SelectionRange(new vscode.Range(position, position))
  );
}
