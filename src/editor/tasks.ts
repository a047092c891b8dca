import * as vscode from "vscode";
import { nodeProgram } from "./nodeProgram";

const type = "cutwork";

/**
 * A task that checks all units of the workspace on the command line, its findings matched by `$cutwork`. Only where programs
 * can be run: not in the browser, not in a workspace that is not trusted.
 */
export function offerTasks(extension: vscode.Uri): vscode.Disposable {
  const command = vscode.Uri.joinPath(extension, "dist", "cli.js");
  const canRun = (): boolean => extension.scheme === "file" && vscode.workspace.isTrusted;
  const task = (
    definition: vscode.TaskDefinition,
    scope: vscode.TaskScope | vscode.WorkspaceFolder,
    files: readonly string[],
  ) => {
    const { path, env } = nodeProgram(globalThis.process);
    const run = new vscode.ProcessExecution(path, [command.fsPath, "check", ...files], { env: { ...env } });
    const made = new vscode.Task(definition, scope, "check all units", "Cutwork", run, "$cutwork");
    made.group = vscode.TaskGroup.Test;
    return made;
  };
  return vscode.tasks.registerTaskProvider(type, {
    async provideTasks() {
      if (!canRun()) return [];
      const folders = vscode.workspace.workspaceFolders ?? [];
      const tasks = await Promise.all(
        folders.map(async (folder) => {
          const units = await vscode.workspace.findFiles(
            new vscode.RelativePattern(folder, "**/*.unit.md"),
            undefined,
            500,
          );
          const files = units.map(({ fsPath }) => fsPath).sort();
          return files.length > 0 ? [task({ type }, folder, files)] : [];
        }),
      );
      return tasks.flat();
    },
    resolveTask: (given) => {
      const { files } = given.definition;
      const named = Array.isArray(files) ? files.map(String) : [];
      return canRun() && named.length > 0
        ? task(given.definition, given.scope ?? vscode.TaskScope.Workspace, named)
        : undefined;
    },
  });
}
