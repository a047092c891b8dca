import * as vscode from "vscode";
import { nodeProgram } from "./nodeProgram";

const type = "cutwork";

/**
 * A task for each folder of the workspace that checks all units in it on the command line, its findings matched by `$cutwork`.
 * Only where programs can be run: not in the browser, not in a workspace that is not trusted.
 */
export function offerTasks(extension: vscode.Uri): vscode.Disposable {
  const command = vscode.Uri.joinPath(extension, "dist", "cli.js");
  const canRun = (): boolean => extension.scheme === "file" && vscode.workspace.isTrusted;
  const task = (definition: vscode.TaskDefinition, scope: vscode.TaskScope | vscode.WorkspaceFolder) => {
    const { files } = definition;
    const named = Array.isArray(files) ? files.map(String) : [];
    const place = typeof scope === "object" ? scope.uri.fsPath : undefined;
    const checked = named.length > 0 ? named : [place ?? "."];
    const { path, env } = nodeProgram(globalThis.process);
    const run = new vscode.ProcessExecution(path, [command.fsPath, "check", "--", ...checked], {
      env: { ...env },
      // What is named is so from here, and so are the settings around units looked for.
      ...(place === undefined ? {} : { cwd: place }),
    });
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
          const units = new vscode.RelativePattern(folder, "**/*.unit.md");
          // The command looks for the units itself: their names together may be longer than a command line can be.
          const [some] = await vscode.workspace.findFiles(units, undefined, 1);
          return some ? [task({ type }, folder)] : [];
        }),
      );
      return tasks.flat();
    },
    resolveTask: ({ definition, scope }) =>
      canRun() ? task(definition, scope ?? vscode.TaskScope.Workspace) : undefined,
  });
}
