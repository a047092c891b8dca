import schema from "../../schemas/settings.schema.json";
import { sift } from "../activities/options";
import { type Finding, runRule } from "../base/finding";
import { validateSettings } from "../base/generated/validators";
import { LineIndex } from "../base/range";
import { Problems } from "../unit/problems";
import { SourceText } from "../unit/source-text";
import type { Mapping } from "../unit/unit";
import { readMapping } from "../unit/yaml";
import { explainFault } from "./rules/explain-fault";
import { wrongOption } from "./rules/wrong-option";

export interface ReadSettings {
  readonly path: string;
  readonly text: string;
  readonly mapping: Mapping;
  /** Places are offsets in this file. */
  readonly findings: readonly Finding[];
}

/** Reads a `cutwork.yml`. Never throws: what is wrong is left out and a finding at its place. */
export function readSettings({ path, text }: { readonly path: string; readonly text: string }): ReadSettings {
  const problems = new Problems();
  const lines = new LineIndex(text);
  const content = text.replace(/^\uFEFF/, " ").replace(/\r\n?/g, "\n");
  const source = SourceText.inLines(lines, 0, content);
  const mapping = readMapping(source, { start: 0, end: text.length }, "settings file", problems);
  const { faults } = sift(mapping, validateSettings);
  const unreadable = problems.list.map(
    ({ code, range, message, fixes }): Finding => ({ code, severity: "error", range, message, related: [], fixes }),
  );
  const wrong = runRule(
    { ...wrongOption, check: () => faults.flatMap((fault) => explainFault(fault, schema, text)) },
    undefined,
  );
  return { path, text, mapping, findings: [...unreadable, ...wrong] };
}
