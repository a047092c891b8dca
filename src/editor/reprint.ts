import * as vscode from "vscode";
import { writeWhole } from "../make/whole-files";
import { outputFolderOf, writable } from "./files/outputFolder";
import type { Made } from "./make";
import type { Previews } from "./preview/previews";
import type { Readings } from "./readings";
import { folderOf, reasonOf, unitFor } from "./units";

/**
 * `cutwork.reprint`: lost pieces as they were, found by their marks in the pieces files of the unit's output folder. Asks for
 * the marks where none are given.
 */
export function reprintPieces(readings: Readings, previews: Previews): vscode.Disposable {
  return vscode.commands.registerCommand("cutwork.reprint", async (given: unknown): Promise<Made> => {
    const document = await unitFor(previews.activeUnit);
    const folder = document && outputFolderOf(document.uri);
    if (!document || !folder) return refuse("Open the unit that the piece belongs to: its pieces file is looked for.");
    const typed = typeof given === "string" ? given : await ask();
    const marks = (typed ?? "")
      .split(/[,;\n]+/)
      .map((mark) => mark.trim())
      .filter(Boolean);
    if (marks.length === 0) return { files: [] };
    try {
      const { workshop, reading } = await readings.readNow(document);
      const texts = [
        ...(reading.around.pieces === undefined ? [] : [reading.around.pieces]),
        ...reading.around.neighbours.map(({ text }) => text),
      ];
      const found = marks.map((mark) => ({ mark, piece: workshop.find(texts, mark)[0] }));
      const unknown = found.filter(({ piece }) => !piece).map(({ mark }) => `“${mark}”`);
      if (unknown.length > 0)
        return refuse(
          `No piece has the mark ${unknown.join(", ")}. The mark is the small print on a piece, such as KTX4PA-AC-DE; earlier prints count too.`,
        );
      const pieces = found.flatMap(({ piece }) => (piece ? [piece] : []));
      const keys = new Set(
        pieces.flatMap(({ drawing }) => drawing.items.flatMap((item) => (item.type === "picture" ? [item.key] : []))),
      );
      const bytes = await workshop.reprint(pieces, await pictures(document.uri, keys));
      const name = `reprint.${pieces
        .map(({ mark }) => mark)
        .slice(0, 3)
        .join(".")}.card.pdf`;
      await writeWhole(writable(folder), [{ name, bytes }], () => undefined);
      const file = vscode.Uri.joinPath(folder, name);
      void vscode.window.showInformationMessage(
        `${pieces.length === 1 ? "One piece is" : `${pieces.length} pieces are`} in ${vscode.workspace.asRelativePath(file)}.`,
      );
      return { files: [file] };
    } catch (error) {
      return refuse(`The pieces could not be printed again: ${reasonOf(error)}`);
    }
  });
}

function ask(): Thenable<string | undefined> {
  return vscode.window.showInputBox({
    title: "Print Lost Pieces Again",
    prompt: "The marks of the pieces, as printed on them; several with commas. The mark of a neighbour tells the set.",
    placeHolder: "KTX4PA-AC-DE",
  });
}

async function pictures(unit: vscode.Uri, keys: ReadonlySet<string>): Promise<Map<string, Uint8Array>> {
  const folder = folderOf(unit);
  const found = new Map<string, Uint8Array>();
  for (const key of keys)
    if (folder) found.set(key, await vscode.workspace.fs.readFile(vscode.Uri.joinPath(folder, key)));
  return found;
}

function refuse(error: string): Made {
  void vscode.window.showErrorMessage(error);
  return { files: [], error };
}
