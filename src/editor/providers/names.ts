import * as vscode from "vscode";
import { filesOf, mentionAt, mentionsOf, nameOf } from "../language/names/mentions";
import type { Mention, Named, World } from "../language/names/named";
import { rename } from "../language/names/rename";
import { placeIn, unitSelector } from "../units";
import type { Worlds } from "./worlds";

/** Definition, references and new names of sections, piles, activities, and the columns and persons of forms tables, also across units. */
export function followNames(worlds: Worlds): vscode.Disposable {
  const at = async (document: vscode.TextDocument, position: vscode.Position) => {
    const world = await worlds.around(document);
    const mention = mentionAt(world, document.uri.toString(), document.offsetAt(position));
    return mention && { world, mention };
  };
  /** All that may name it: a pile may have headings in several units, each of which others may name. */
  const naming = async (document: vscode.TextDocument, named: Named) => {
    let files: readonly string[] = [];
    for (let world = await worlds.around(document); ; world = await worlds.naming(document, files)) {
      const now = filesOf(world, named);
      if (now.every((file) => files.includes(file))) return world;
      files = now;
    }
  };
  return vscode.Disposable.from(
    vscode.languages.registerDefinitionProvider(unitSelector, {
      async provideDefinition(document, position) {
        const found = await at(document, position);
        if (!found) return undefined;
        const sites = mentionsOf(found.world, found.mention.named).filter(({ defines }) => defines);
        return sites.map((site) => ({
          originSelectionRange: rangeIn(found.world, found.mention),
          targetUri: vscode.Uri.parse(site.file),
          targetRange: rangeIn(found.world, site),
        }));
      },
    }),
    vscode.languages.registerReferenceProvider(unitSelector, {
      async provideReferences(document, position, { includeDeclaration }) {
        const found = await at(document, position);
        if (!found) return undefined;
        const world = await naming(document, found.mention.named);
        return mentionsOf(world, found.mention.named)
          .filter(({ defines }) => includeDeclaration || !defines)
          .map((site) => new vscode.Location(vscode.Uri.parse(site.file), rangeIn(world, site)));
      },
    }),
    vscode.languages.registerRenameProvider(unitSelector, {
      async prepareRename(document, position) {
        const found = await at(document, position);
        const placeholder = found && nameOf(found.world, found.mention.named);
        if (!found || placeholder === undefined)
          throw new Error(
            "A section, a pile, an activity, or a column or person of a forms table can be renamed; here is none.",
          );
        return { range: rangeIn(found.world, found.mention), placeholder };
      },
      async provideRenameEdits(document, position, newName) {
        const found = await at(document, position);
        if (!found) return undefined;
        const world = await naming(document, found.mention.named);
        const renaming = rename(world, found.mention.named, newName);
        if ("refusal" in renaming) throw new Error(renaming.refusal);
        const edit = new vscode.WorkspaceEdit();
        for (const [file, edits] of renaming.edits) {
          const lines = world.units.get(file)?.lines;
          if (!lines) continue;
          const changes = edits.map(({ range, text }) => vscode.TextEdit.replace(placeIn(lines, range), text));
          edit.set(vscode.Uri.parse(file), changes);
        }
        return edit;
      },
    }),
  );
}

/** A place in a unit that may not be open. */
function rangeIn(world: World, { file, range }: Pick<Mention, "file" | "range">): vscode.Range {
  const lines = world.units.get(file)?.lines;
  return lines ? placeIn(lines, range) : new vscode.Range(0, 0, 0, 0);
}
