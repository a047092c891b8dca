import * as vscode from "vscode";
import { unitName } from "../units";
import type { Worlds } from "./worlds";

/** Goes to a section of any unit of the workspace by its name (`Ctrl+T`). */
export function findSections(worlds: Worlds): vscode.Disposable {
  return vscode.languages.registerWorkspaceSymbolProvider({
    async provideWorkspaceSymbols(query) {
      const letters = [...query.toLowerCase().replace(/\s+/gu, "")];
      const sections = await worlds.allSections();
      return sections
        .filter(({ name }) => inOrder(letters, name.toLowerCase()))
        .map(
          ({ unit, name, place }) =>
            new vscode.SymbolInformation(
              name,
              vscode.SymbolKind.Namespace,
              unitName(unit),
              new vscode.Location(unit, place),
            ),
        );
    },
  });
}

/** All letters occur one after the other, as VS Code itself looks for names. */
function inOrder(letters: readonly string[], name: string): boolean {
  let at = -1;
  return letters.every((letter) => {
    at = name.indexOf(letter, at + 1);
    return at >= 0;
  });
}
