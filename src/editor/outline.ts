import * as vscode from "vscode";
import type { DocumentReading, Readings } from "./readings";
import { toRange, unitSelector } from "./units";

/** Sections and activities for the outline, the breadcrumbs and for folding. */
export function outlineUnits(readings: Readings): vscode.Disposable {
  return vscode.Disposable.from(
    vscode.languages.registerDocumentSymbolProvider(unitSelector, {
      provideDocumentSymbols: async (document) => symbolsOf(await readings.current(document)),
    }),
    vscode.languages.registerFoldingRangeProvider(unitSelector, {
      provideFoldingRanges: async (document) => foldsOf(await readings.current(document)),
    }),
  );
}

function symbolsOf({ document, reading }: DocumentReading): vscode.DocumentSymbol[] {
  const { sections, activities } = reading.unit;
  const titled = activities.map(({ fence, section }, index) => {
    const dealt = reading.activities.find((activity) => activity.index === index);
    const place = toRange(document, fence);
    const symbol = new vscode.DocumentSymbol(
      dealt?.title ?? "Activity",
      dealt?.summary ?? "",
      vscode.SymbolKind.Event,
      place,
      place,
    );
    return { section, symbol };
  });
  const symbols = sections.map(({ name, heading, range }, index) => {
    const symbol = new vscode.DocumentSymbol(
      name || "Section",
      "",
      vscode.SymbolKind.Namespace,
      toRange(document, range),
      toRange(document, heading),
    );
    symbol.children = titled.filter(({ section }) => section === index).map((activity) => activity.symbol);
    return symbol;
  });
  return [...titled.filter(({ section }) => section < 0).map(({ symbol }) => symbol), ...symbols];
}

function foldsOf({ document, reading }: DocumentReading): vscode.FoldingRange[] {
  const spans = [
    ...reading.unit.sections.map(({ range }) => range),
    ...reading.unit.activities.map(({ fence }) => fence),
  ];
  return spans.flatMap((span) => {
    const { start, end } = toRange(document, span);
    // Blank lines between two sections stay visible, as they do elsewhere in VS Code.
    let last = end.character === 0 && end.line > start.line ? end.line - 1 : end.line;
    while (last > start.line && document.lineAt(last).isEmptyOrWhitespace) last--;
    return last > start.line ? [new vscode.FoldingRange(start.line, last)] : [];
  });
}
