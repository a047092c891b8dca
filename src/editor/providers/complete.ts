import * as vscode from "vscode";
import { settingsOffersAt } from "../language/codes";
import { type Offer, offersAt, wantsPictures } from "../language/complete";
import { toRange, unitSelector } from "../units";
import type { Parsed } from "./parsed";
import { pathsFrom } from "./worlds";

const triggers = ["#", '"', " ", "{", ",", "(", "/", "<"];

const kinds: Readonly<Record<Offer["kind"], vscode.CompletionItemKind>> = {
  column: vscode.CompletionItemKind.Field,
  person: vscode.CompletionItemKind.User,
  code: vscode.CompletionItemKind.Constant,
  value: vscode.CompletionItemKind.EnumMember,
  picture: vscode.CompletionItemKind.File,
};

/** Offers what ties, pictures, remarks and severities can name. */
export function completeNames(parsed: Parsed): vscode.Disposable {
  return vscode.languages.registerCompletionItemProvider(
    unitSelector,
    {
      async provideCompletionItems(document, position) {
        const text = document.getText();
        const offset = document.offsetAt(position);
        const pictures = wantsPictures(text, offset) ? await pathsFrom(document.uri, "**/*.{png,jpg,jpeg}") : [];
        const read = parsed.readings.last(document.uri);
        // A reading from before the last keystroke is good enough for names.
        const unit = read?.reading.unit ?? parsed.unit(document);
        const codes = read?.reading.findings
          .filter(({ range }) => unit.lines.lineAt(range.start) === position.line)
          .map(({ code }) => code);
        const near = { ...(codes ? { codes } : {}), pictures };
        return offersAt(text, offset, unit, near).map((offer, index) => itemFor(document, position, offer, index));
      },
    },
    ...triggers,
  );
}

/** In a `cutwork.yml`, what `severities` can name. */
export function completeSeverities(selector: vscode.DocumentSelector): vscode.Disposable {
  return vscode.languages.registerCompletionItemProvider(
    selector,
    {
      provideCompletionItems: (document, position) =>
        settingsOffersAt(document.getText(), document.offsetAt(position)).map((offer, index) =>
          itemFor(document, position, offer, index),
        ),
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
  const angled = document.getText(new vscode.Range(document.positionAt(start), position)).startsWith("<");
  item.filterText = `${angled ? "<" : ""}${kind === "column" ? "#" : ""}${label}`;
  item.documentation = new vscode.MarkdownString(documentation);
  item.range = {
    inserting: new vscode.Range(document.positionAt(start), position),
    replacing: toRange(document, { start, end }),
  };
  item.sortText = String(index).padStart(3, "0");
  if (more) item.command = { command: "editor.action.triggerSuggest", title: "Show what can follow" };
  return item;
}
