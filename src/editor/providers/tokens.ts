import * as vscode from "vscode";
import { tokenKinds, tokensOf } from "../language/tokens";
import { unitSelector } from "../units";
import type { Parsed } from "./parsed";

/** Colours by what was read, on top of those by the grammar. */
export function colourByMeaning(parsed: Parsed): vscode.Disposable {
  const legend = new vscode.SemanticTokensLegend([...tokenKinds]);
  return vscode.languages.registerDocumentSemanticTokensProvider(
    unitSelector,
    {
      provideDocumentSemanticTokens(document) {
        const builder = new vscode.SemanticTokensBuilder(legend);
        for (const { range, kind } of tokensOf(parsed.unit(document))) {
          const { line, character } = document.positionAt(range.start);
          builder.push(line, character, range.end - range.start, tokenKinds.indexOf(kind));
        }
        return builder.build();
      },
    },
    legend,
  );
}
