import { printable } from "./cells";
import { toJson, unreadJson } from "./json";
import type { FileReport } from "./report";
import { SarifLog } from "./sarif";
import { countText, findingLines, proofLines, type TextStyle } from "./text";

/*
 * The three ways in which `check` writes what it finds. Each takes one file after the other and keeps no more of it than is written
 * at the end, so that a folder of units needs no more memory than the largest of them.
 */

/** Takes what there is to say about files, and writes lines. */
export interface Writer {
  add(report: FileReport): void;
  addUnread(file: string, error: string): void;
  /** Behind all files that were asked for; `counts` says how many those are and what was found, where they are several. */
  end(settings: readonly FileReport[], counts: string | undefined): void;
}

type Print = (lines: readonly string[]) => void;

export const writers: Readonly<Record<"text" | "json" | "sarif", (print: Print, style: TextStyle) => Writer>> = {
  text: (print, style) => {
    const add = (report: FileReport): void => print(textLines(report, style));
    return {
      add,
      addUnread: () => {},
      end: (settings, counts) => {
        settings.forEach(add);
        if (counts !== undefined) print([counts]);
      },
    };
  },
  json: (print) => {
    const values: unknown[] = [];
    return {
      add: (report) => void values.push(toJson(report)),
      addUnread: (file, error) => void values.push(unreadJson(file, error)),
      end: (settings) => print([JSON.stringify([...values, ...settings.map(toJson)], null, 2)]),
    };
  },
  sarif: (print) => {
    const log = new SarifLog(process.cwd());
    return {
      add: (report) => log.add(report),
      addUnread: (file, error) => log.addUnread(file, error),
      end: (settings) => {
        for (const report of settings) log.add(report);
        print([JSON.stringify(log.value, null, 2)]);
      },
    };
  },
};

function textLines(report: FileReport, style: TextStyle): string[] {
  return [
    ...findingLines(report, style),
    `${printable(report.file)}: ${countText(report.findings, style.paint)}`,
    ...proofLines(report),
  ];
}
