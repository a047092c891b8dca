import * as vscode from "vscode";
import { openWorkshop, type Workshop } from "../make/workshop";
import { practise } from "./practising";

/** Opens the workshop with the assets beside the extension, once, when it is first asked for. */
export class Engine implements vscode.Disposable {
  private opening: Promise<Workshop> | undefined;
  private disposed = false;

  constructor(
    private readonly extension: vscode.Uri,
    private readonly log: vscode.LogOutputChannel,
  ) {}

  /** Rejects where an asset cannot be read or the shaper does not start; the next call tries again. */
  workshop(): Promise<Workshop> {
    this.opening ??= this.open().catch((error: unknown) => {
      this.opening = undefined;
      throw error;
    });
    return this.opening;
  }

  private async open(): Promise<Workshop> {
    const asset = (name: string): Promise<Uint8Array> =>
      Promise.resolve(vscode.workspace.fs.readFile(vscode.Uri.joinPath(this.extension, "dist", "assets", name)));
    const [harfbuzz, harfbuzzSubset, regular, bold, italic, boldItalic] = await Promise.all([
      asset("harfbuzz.wasm"),
      asset("harfbuzz-subset.wasm"),
      asset("regular.ttf"),
      asset("bold.ttf"),
      asset("italic.ttf"),
      asset("boldItalic.ttf"),
    ]);
    const workshop = await openWorkshop({ harfbuzz, harfbuzzSubset, fonts: { regular, bold, italic, boldItalic } });
    await practise(
      workshop,
      () => !this.disposed,
      (error) => this.log.error("The practice unit could not be read.", String(error)),
    );
    return workshop;
  }

  dispose(): void {
    this.disposed = true;
  }
}
