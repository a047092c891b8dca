import * as vscode from "vscode";
import { answerAt, answerMarkdown } from "../language/hover";
import { toRange, unitSelector } from "../units";
import type { Parsed } from "./parsed";

/** What an answer under the pointer fits, and where else it stands. */
export function explainAnswers(parsed: Parsed): vscode.Disposable {
  return vscode.languages.registerHoverProvider(unitSelector, {
    provideHover(document, position) {
      const unit = parsed.unit(document);
      const facts = answerAt(unit, document.offsetAt(position));
      if (!facts) return undefined;
      const text = answerMarkdown(facts, ({ range }) => {
        const line = unit.lines.lineAt(range.start) + 1;
        return `[line ${line}](${document.uri.with({ fragment: `L${line}` }).toString()})`;
      });
      return new vscode.Hover(new vscode.MarkdownString(text), toRange(document, facts.range));
    },
  });
}
