import path from "node:path";
import { pathToFileURL } from "node:url";
import { version } from "../../package.json";
import type { Finding, Fix, Severity } from "../base/finding";
import type { LineIndex, Range } from "../base/range";
import { allRules, type RuleFacts } from "../check/rules";
import type { FileReport } from "./report";

/*
 * Findings as a SARIF log: Static Analysis Results Interchange Format, version 2.1.0 plus errata 01, OASIS Standard.
 */

type Level = "error" | "warning" | "note";

const levels: Readonly<Record<Severity, Level>> = {
  error: "error",
  warning: "warning",
  information: "note",
  hint: "note",
};

const ruleIndex = new Map(allRules.map(({ code }, index) => [code, index]));

/**
 * A log that takes one file after the other, and keeps of each only what stands in it: the files asked for, then the settings around
 * them. `folder` is what relative addresses are relative to. No clock: the same units give the same log.
 */
export class SarifLog {
  private readonly uris: string[] = [];
  private readonly results: unknown[] = [];
  private readonly unread: unknown[] = [];

  constructor(private readonly folder: string) {}

  add(report: FileReport): void {
    this.results.push(...results(report, this.artifact(report.file)));
  }

  addUnread(file: string, error: string): void {
    this.unread.push({
      level: "error",
      message: { text: error },
      locations: [{ physicalLocation: { artifactLocation: this.artifact(file) } }],
    });
  }

  /** The whole log, as JSON values. */
  get value(): unknown {
    return {
      $schema: "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json",
      version: "2.1.0",
      runs: [
        {
          tool: { driver: { name: "cutwork", version, semanticVersion: version, rules: allRules.map(ruleOf) } },
          invocations: [{ executionSuccessful: this.unread.length === 0, toolExecutionNotifications: this.unread }],
          columnKind: "utf16CodeUnits",
          newlineSequences: ["\r\n", "\n", "\r"],
          artifacts: this.uris.map((uri) => ({
            location: { uri, ...(uri === "-" ? { description: { text: "Standard input." } } : {}) },
            roles: ["analysisTarget"],
            mimeType: uri.endsWith(".yml") ? "application/yaml" : "text/markdown",
            encoding: "UTF-8",
          })),
          results: this.results,
        },
      ],
    };
  }

  /** A file that was asked for twice is one artifact. */
  private artifact(file: string): ArtifactLocation {
    const uri = uriOf(file, this.folder);
    const known = this.uris.indexOf(uri);
    return { uri, index: known < 0 ? this.uris.push(uri) - 1 : known };
  }
}

function ruleOf({ code, title, why, severity, example }: RuleFacts): unknown {
  const help = `${why}\n\nGives the finding:\n\n${indented(example.wrong)}\n\nPut right:\n\n${indented(example.right)}\n`;
  return {
    id: code,
    shortDescription: { text: `${title}.` },
    fullDescription: { text: withoutMarks(why), markdown: why },
    help: { text: help, markdown: help },
    defaultConfiguration: { level: levels[severity] },
  };
}

/** As a Markdown code block, which nothing in the text can close. */
function indented(text: string): string {
  return text.replace(/^(?=.)/gm, "    ");
}

/** Markdown's marks taken off what is prose. */
function withoutMarks(markdown: string): string {
  return markdown
    .replace(/\[([^\]]*)\]\([^)]*\)/g, "$1")
    .replace(/(`+)(.*?)\1/g, "$2")
    .replace(/\*\*?([^*]+)\*\*?/g, "$1");
}

interface ArtifactLocation {
  readonly uri: string;
  readonly index: number;
}

function results({ lines, findings }: FileReport, artifactLocation: ArtifactLocation): unknown[] {
  const placed = (range: Range): unknown => ({ artifactLocation, region: regionOf(lines, range) });
  return findings.map(({ code, severity, message, range, related, fixes }: Finding) => {
    const index = ruleIndex.get(code);
    return {
      ruleId: code,
      ...(index === undefined ? {} : { ruleIndex: index }),
      level: levels[severity],
      message: { text: message },
      locations: [{ physicalLocation: placed(range) }],
      ...(related.length === 0
        ? {}
        : {
            relatedLocations: related.map((place, id) => ({
              id: id + 1,
              physicalLocation: placed(place.range),
              message: { text: place.message },
            })),
          }),
      ...(fixes.length === 0 ? {} : { fixes: fixes.map((fix) => fixOf(lines, fix, artifactLocation)) }),
    };
  });
}

function fixOf(lines: LineIndex, { title, edits, preferred }: Fix, artifactLocation: ArtifactLocation): unknown {
  return {
    description: { text: title },
    artifactChanges: [
      {
        artifactLocation,
        replacements: edits.map(({ range, text }) => ({
          deletedRegion: regionOf(lines, range),
          ...(text === "" ? {} : { insertedContent: { text } }),
        })),
      },
    ],
    ...(preferred ? { properties: { preferred } } : {}),
  };
}

/** Counted from 1; the end column is the one after the last unit. */
function regionOf(lines: LineIndex, range: Range): unknown {
  const { start, end } = lines.lsp(range);
  return {
    startLine: start.line + 1,
    startColumn: start.character + 1,
    endLine: end.line + 1,
    endColumn: end.character + 1,
  };
}

/** Relative to the folder where the file lies in it, else absolute; percent-encoded. Standard input stays `-`. */
function uriOf(file: string, folder: string): string {
  if (file === "-") return file;
  const full = path.resolve(folder, file);
  const relative = path.relative(folder, full);
  const parts = relative.split(path.sep);
  if (parts[0] === ".." || path.isAbsolute(relative)) return pathToFileURL(full).href;
  return parts.map(encodeURIComponent).join("/");
}
