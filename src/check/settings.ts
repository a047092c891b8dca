import schema from "../../schemas/settings.schema.json";
import { sift } from "../activities/options";
import { type Finding, type Report, type Rule, runRule } from "../base/finding";
import { validateSettings } from "../base/generated/validators";
import { LineIndex } from "../base/range";
import { Problems } from "../unit/problems";
import { SourceText } from "../unit/source-text";
import type { Mapping } from "../unit/unit";
import { readMapping } from "../unit/yaml";
import { codes } from "./codes";
import { explainFault } from "./rules/explain-fault";
import { optionTwice } from "./rules/reading/option-twice";
import { reportOf } from "./rules/reading/problem-rule";
import { unreadableYaml } from "./rules/reading/unreadable-yaml";
import { unknownCode, unknownCodes } from "./rules/unknown-code";
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
  const of = (rule: Omit<Rule<never>, "check">, reports: readonly Report[]): Finding[] =>
    runRule({ ...rule, check: () => reports }, undefined);
  const read = (rule: Omit<Rule<never>, "check">): Finding[] =>
    of(rule, problems.list.filter(({ code }) => code === rule.code).map(reportOf));
  const wrong = faults.flatMap((fault) => explainFault(fault, schema, text));
  const findings = [
    ...read(unreadableYaml),
    ...read(optionTwice),
    ...of(wrongOption, wrong),
    ...of(unknownCode, unknownCodes(mapping, text, codes())),
  ].sort((a, b) => a.range.start - b.range.start || a.range.end - b.range.end);
  return { path, text, mapping, findings };
}
