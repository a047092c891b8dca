/** A program that runs JavaScript as Node does, and what has to be in its environment for that. */
export interface NodeProgram {
  readonly path: string;
  readonly env: Readonly<Record<string, string>>;
}

/**
 * The Node that VS Code itself brings, so that nothing has to be installed: on the desktop the editor's own program, which is
 * one when it is told so. `own` is the process of the extension host.
 */
export function nodeProgram(own: { readonly execPath?: string } | undefined): NodeProgram {
  return { path: own?.execPath || "node", env: { ELECTRON_RUN_AS_NODE: "1" } };
}
