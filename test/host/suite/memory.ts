import * as vscode from "vscode";

/** A file system that exists in memory only, as a virtual workspace's does nowhere on the machine. */
export class MemoryFiles implements vscode.FileSystemProvider {
  private readonly entries = new Map<string, Uint8Array | "folder">([["/", "folder"]]);
  private readonly changed = new vscode.EventEmitter<vscode.FileChangeEvent[]>();
  readonly onDidChangeFile = this.changed.event;
  private time = 0;

  watch(): vscode.Disposable {
    return new vscode.Disposable(() => {});
  }

  stat({ path }: vscode.Uri): vscode.FileStat {
    const entry = this.entries.get(path);
    if (entry === undefined) throw vscode.FileSystemError.FileNotFound(path);
    const type = entry === "folder" ? vscode.FileType.Directory : vscode.FileType.File;
    return { type, ctime: 0, mtime: this.time, size: entry === "folder" ? 0 : entry.length };
  }

  readDirectory(folder: vscode.Uri): [string, vscode.FileType][] {
    this.stat(folder);
    const start = folder.path === "/" ? "/" : `${folder.path}/`;
    return [...this.entries].flatMap(([path, entry]): [string, vscode.FileType][] => {
      const name = path.slice(start.length);
      if (!path.startsWith(start) || name === "" || name.includes("/")) return [];
      return [[name, entry === "folder" ? vscode.FileType.Directory : vscode.FileType.File]];
    });
  }

  createDirectory({ path }: vscode.Uri): void {
    this.entries.set(path, "folder");
  }

  readFile(file: vscode.Uri): Uint8Array {
    const entry = this.entries.get(file.path);
    if (entry === undefined || entry === "folder") throw vscode.FileSystemError.FileNotFound(file);
    return entry;
  }

  writeFile({ path }: vscode.Uri, content: Uint8Array): void {
    this.time++;
    this.entries.set(path, content);
  }

  delete({ path }: vscode.Uri): void {
    if (!this.entries.delete(path)) throw vscode.FileSystemError.FileNotFound(path);
  }

  rename(from: vscode.Uri, to: vscode.Uri, { overwrite }: { readonly overwrite: boolean }): void {
    if (this.entries.has(to.path) && !overwrite) throw vscode.FileSystemError.FileExists(to);
    this.writeFile(to, this.readFile(from));
    this.delete(from);
  }
}
