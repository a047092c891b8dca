import * as vscode from "vscode";
import { linksIn } from "../language/links";
import { toRange, unitSelector } from "../units";
import type { Parsed } from "./parsed";
import { placeOf } from "./worlds";

/** Opens pictures and other units from their paths. What lies outside of the workspace is no link. */
export function linkPaths(parsed: Parsed): vscode.Disposable {
  return vscode.languages.registerDocumentLinkProvider(unitSelector, {
    provideDocumentLinks: (document) =>
      linksIn(parsed.unit(document)).flatMap(({ range, path }) => {
        const target = placeOf(document.uri, path);
        return target ? [new vscode.DocumentLink(toRange(document, range), target)] : [];
      }),
  });
}
