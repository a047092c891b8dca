import * as vscode from "vscode";
import type { DealtActivity } from "../../activities/contract";
import { lensText } from "../language/lens";
import type { DocumentReading } from "../readings";
import { toRange, unitSelector } from "../units";
import type { Parsed } from "./parsed";

/** The line that tells about an activity; what it says is worked out when it comes into view. */
class FactsLens extends vscode.CodeLens {
  constructor(
    range: vscode.Range,
    readonly read: DocumentReading,
    readonly activity: DealtActivity,
  ) {
    super(range);
  }
}

/** Over each activity: what it makes, and the ways to look at it and to make it. */
export function showLenses(parsed: Parsed): vscode.Disposable {
  const { readings } = parsed;
  const changed = new vscode.EventEmitter<void>();
  const said = new WeakMap<DealtActivity, string>();
  return vscode.Disposable.from(
    changed,
    readings.onDidRead(() => changed.fire()),
    vscode.languages.registerCodeLensProvider(unitSelector, {
      onDidChangeCodeLenses: changed.event,
      provideCodeLenses(document) {
        // While typing, the last dealing stands at the place where its activity is now.
        const read = readings.last(document.uri);
        return parsed.unit(document).activities.flatMap(({ fence }, index) => {
          const activity = read?.reading.activities.find((each) => each.index === index);
          const range = toRange(document, { start: fence.start, end: fence.start });
          const action = (title: string, command: string, ...more: readonly unknown[]): vscode.CodeLens =>
            new vscode.CodeLens(range, { title, command, arguments: [document.uri, ...more] });
          return [
            ...(read && activity ? [new FactsLens(range, read, activity)] : []),
            action("Show", "cutwork.preview", index),
            action("Make", "cutwork.make"),
          ];
        });
      },
      resolveCodeLens(lens) {
        if (!(lens instanceof FactsLens)) return lens;
        const { read, activity } = lens;
        const { workshop, reading } = read;
        const title =
          said.get(activity) ?? lensText(activity, (deal) => workshop.view(reading, activity, deal, "dealt"));
        said.set(activity, title);
        lens.command = { title, command: "" };
        return lens;
      },
    }),
  );
}
