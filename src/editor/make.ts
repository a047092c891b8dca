import * as vscode from "vscode";
import { leftovers } from "../make/leftovers";
import { NotWritten, writeWhole } from "../make/whole-files";
import { BlockedError } from "../make/workshop";
import { outputFolderOf, writable } from "./files/outputFolder";
import type { Previews } from "./preview/previews";
import type { Readings } from "./readings";
import { reasonOf, unitFor } from "./units";

/** What `cutwork.make` hands back to whoever called it: the files that are there now, or why there are none. */
export interface Made {
  readonly files: readonly vscode.Uri[];
  readonly error?: string;
  /** What lies beside them from earlier prints, a sentence each. */
  readonly leftovers?: readonly string[];
  /** Findings stand in the way. */
  readonly blocked?: boolean;
}

/** `cutwork.make`: all PDFs of a unit, whole or not at all. */
export function makeUnits(readings: Readings, previews: Previews): vscode.Disposable {
  return vscode.commands.registerCommand("cutwork.make", async (target: unknown): Promise<Made> => {
    const document = await unitFor(target ?? previews.activeUnit);
    if (!document) return refuse("Open a unit first: a file whose name ends in .unit.md.");
    const folder = outputFolderOf(document.uri);
    if (!folder) return refuse("Save the unit first: the PDFs are put beside it.");
    const made = await makeOne(readings, document, folder);
    if (made.error !== undefined) return refuse(made.error, made.blocked);
    readings.requestAll();
    if (made.files.length > 0) void tell(folder, made);
    return made;
  });
}

async function makeOne(readings: Readings, document: vscode.TextDocument, folder: vscode.Uri): Promise<Made> {
  const options = { location: vscode.ProgressLocation.Notification, title: "Making the PDFs", cancellable: true };
  return vscode.window.withProgress(options, async (progress, token): Promise<Made> => {
    const stopIfCancelled = (): void => {
      if (token.isCancellationRequested) throw new vscode.CancellationError();
    };
    try {
      const { workshop, reading } = await readings.readNow(document);
      if (reading.activities.every(({ deals }) => deals.length === 0)) return nothingToMake(reading.activities.length);
      const files = await workshop.make(reading, {
        onStep: async (done, total, name) => {
          progress.report({ message: `${name} (${done + 1} of ${total})`, increment: done === 0 ? 0 : 100 / total });
          // Lets the progress be drawn and a click on Cancel arrive.
          await new Promise((resolve) => setTimeout(resolve, 0));
          stopIfCancelled();
        },
      });
      await writeWhole(writable(folder), files, stopIfCancelled);
      const present = await writable(folder)
        .names()
        .catch(() => []);
      const left = leftovers(reading.file.name, present, files, {});
      return { leftovers: left, files: files.map(({ name }) => vscode.Uri.joinPath(folder, name)) };
    } catch (error) {
      const cause = error instanceof NotWritten ? error.cause : error;
      if (cause instanceof vscode.CancellationError) return { files: [] };
      if (error instanceof BlockedError) return { files: [], error: error.message, blocked: true };
      return { files: [], error: sentence(error) };
    }
  });
}

function nothingToMake(activities: number): Made {
  if (activities === 0) {
    return { files: [], error: "There is no activity in this unit yet, so there is nothing to print." };
  }
  const error = "No activity of this unit can be laid out yet. The Problems panel says why.";
  return { files: [], error, blocked: true };
}

function sentence(error: unknown): string {
  if (!(error instanceof NotWritten)) return `The PDFs could not be made: ${reasonOf(error)}`;
  const locked = /EBUSY|EPERM|EACCES|NoPermissions|locked|permission/i.test(reasonOf(error.cause));
  const advice = locked ? " If it is open in another program, close it there and try again." : "";
  return `${error.file} could not be written: ${reasonOf(error.cause).replace(/\.$/, "")}.${advice} Nothing was changed.`;
}

function refuse(error: string, blocked = false): Made {
  void explainRefusal(error, blocked);
  return { files: [], error };
}

async function explainRefusal(error: string, blocked: boolean): Promise<void> {
  const show = "Show Problems";
  const chosen = await vscode.window.showErrorMessage(error, ...(blocked ? [show] : []));
  if (chosen === show) await vscode.commands.executeCommand("workbench.actions.view.problems");
}

/** Says what was made and offers to look at it. */
async function tell(folder: vscode.Uri, { files, leftovers: left = [] }: Made): Promise<void> {
  const first = files.find(({ path }) => path.endsWith(".card.pdf")) ?? files.find(({ path }) => path.endsWith(".pdf"));
  const count = files.filter(({ path }) => path.endsWith(".pdf")).length;
  const openFirst = "Open the Pieces";
  const openFolder = "Show the Folder";
  const made = `${count === 1 ? "One PDF is" : `${count} PDFs are`} in ${vscode.workspace.asRelativePath(folder)}.`;
  // A notification has room for one; the others show once it is deleted.
  const more =
    left.length > 1 ? [`${left.length - 1} more of its PDFs there ${left.length > 2 ? "are" : "is"} too.`] : [];
  const message = [made, ...left.slice(0, 1), ...more].join(" ");
  const chosen = await vscode.window.showInformationMessage(message, ...(first ? [openFirst] : []), openFolder);
  if (chosen === openFirst && first) await openOutside(first);
  if (chosen === openFolder) await showFolder(files[0] ?? folder);
}

/** VS Code itself shows no PDF: a local file goes to the system's viewer. */
async function openOutside(file: vscode.Uri): Promise<void> {
  const opened =
    file.scheme === "file" && vscode.env.uiKind === vscode.UIKind.Desktop && !vscode.env.remoteName
      ? await vscode.env.openExternal(file)
      : false;
  if (!opened) await vscode.commands.executeCommand("vscode.open", file);
}

async function showFolder(file: vscode.Uri): Promise<void> {
  const available = await vscode.commands.getCommands(true);
  const command =
    available.includes("revealFileInOS") && !vscode.env.remoteName ? "revealFileInOS" : "revealInExplorer";
  await vscode.commands.executeCommand(command, file);
}
