import * as vscode from "vscode";
import { wordExplained } from "../language/codes";
import { offersAt } from "../language/complete";
import { answerAt, answerMarkdown } from "../language/hover";
import { itemExplained } from "../language/hoverItems";
import { toRange, unitSelector } from "../units";
import type { Parsed } from "./parsed";

/**
 * What stands under the pointer: an answer, what it fits and where else it stands; a statement, an event, a card or a form, what it
 * counts as; the code of a finding, what that is.
 */
export function explainItems(parsed: Parsed): vscode.Disposable {
  return vscode.languages.registerHoverProvider(unitSelector, {
    provideHover(document, position) {
      const unit = parsed.unit(document);
      const [source, offset] = [document.getText(), document.offsetAt(position)];
      const facts = answerAt(unit, offset);
      if (!facts) {
        const found = wordExplained(source, offset, (at) => offersAt(source, at, unit)) ?? itemExplained(unit, offset);
        return found && new vscode.Hover(new vscode.MarkdownString(found.markdown), toRange(document, found));
      }
      const text = answerMarkdown(facts, ({ range }) => {
        const line = unit.lines.lineAt(range.start) + 1;
        return `[line ${line}](${document.uri.with({ fragment: `L${line}` }).toString()})`;
      });
      return new vscode.Hover(new vscode.MarkdownString(text), toRange(document, facts.range));
    },
  });
}
