import * as vscode from "vscode";
import { type Offer, offersAt } from "../language/complete";
import { toRange, unitSelector } from "../units";
import type { Parsed } from "./parsed";

const triggers = ["#", '"', " ", "{", ","];

const kinds: Readonly<Record<Offer["kind"], vscode.CompletionItemKind>> = {
  column: vscode.CompletionItemKind.Field,
  person: vscode.CompletionItemKind.User,
  code: vscode.CompletionItemKind.Constant,
  value: vscode.CompletionItemKind.EnumMember,
};

/** Offers what ties, remarks and severities can name. */
export function completeNames(parsed: Parsed): vscode.Disposable {
  return vscode.languages.registerCompletionItemProvider(
    unitSelector,
    {
      provideCompletionItems(document, position) {
        const read = parsed.readings.last(document.uri);
        // A reading from before the last keystroke is good enough for names.
        const unit = read?.reading.unit ?? parsed.unit(document);
        const near = read?.reading.findings
          .filter(({ range }) => unit.lines.lineAt(range.start) === position.line)
          .map(({ code }) => code);
        return offersAt(document.getText(), document.offsetAt(position), unit, near).map((offer, index) =>
          itemFor(document, position, offer, index),
        );
      },
    },
    ...triggers,
  );
}

function itemFor(
  document: vscode.TextDocument,
  position: vscode.Position,
  { label, kind, insert, detail, documentation, start, end, more }: Offer,
  index: number,
): vscode.CompletionItem {
  const item = new vscode.CompletionItem({ label, description: detail }, kinds[kind]);
  item.insertText = insert;
  item.filterText = document.getText(new vscode.Range(document.positionAt(start), position)).startsWith("<")
    ? `<#${label}`
    : kind === "column"
      ? `#${label}`
      : label;
  item.documentation = new vscode.MarkdownString(documentation);
  item.range = {
    inserting: new vscode.Range(document.positionAt(start), position),
    replacing: toRange(document, { start, end }),
  };
  item.sortText = String(index).padStart(3, "0");
  if (more) item.command = { command: "editor.action.triggerSuggest", title: "Show what can follow" };
  return item;
}
