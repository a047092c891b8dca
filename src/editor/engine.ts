import * as vscode from "vscode";
import { practice } from "../make/practice";
import { nothingAround, openWorkshop, type Workshop } from "../make/workshop";
import { inSlices } from "./slices";

/** Opens the workshop with the assets beside the extension, once, when it is first asked for. */
export class Engine {
  private opening: Promise<Workshop> | undefined;

  constructor(private readonly extension: vscode.Uri) {}

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
    // Code that runs for the first time is slow, and a step of reading a large unit would be as much longer.
    await inSlices(workshop.reading({ name: "practice", text: practice }, nothingAround), {
      say: () => {},
      wanted: () => true,
    });
    return workshop;
  }
}
