import type Token from "markdown-it/lib/token.mjs";
import type { LineIndex } from "../base/range";
import type { Problems } from "./problems";
import { SourceText } from "./source-text";
import { activityEnd, nearlyActivity, openNotes } from "./traps/fences";
import { misnamedActivity } from "./traps/unfenced";
import type { ActivityBlock } from "./unit";
import { readMapping } from "./yaml";

/** A fence that asks for something, in the section of an index; undefined for one that holds notes. */
export function readFence(
  lines: LineIndex,
  token: Token,
  section: number,
  problems: Problems,
): { readonly name: "activity" | "stations"; readonly block: ActivityBlock } | undefined {
  const nearly = misnamedActivity(lines, token, problems) || nearlyActivity(lines, token, problems);
  const [name] = /^(?:activity|stations)(?=\s|$)/.exec(token.info.trim()) ?? [];
  if (name !== "activity" && name !== "stations") {
    if (!nearly) openNotes(lines, token, problems);
    return undefined;
  }
  const [first] = token.map ?? [0];
  const after = activityEnd(lines, token, problems);
  const content = token.content
    .split("\n")
    .slice(0, after - first - 1)
    .join("\n");
  const source = SourceText.inLines(lines, first + 1, content);
  const body = { start: lines.start(first + 1), end: lines.start(after) };
  const fence = { start: lines.start(first), end: lines.line(token.map?.[1] === after ? after - 1 : after).end };
  const options = readMapping(source, body, name === "stations" ? "plan" : "activity", problems, lines.newline);
  return { name, block: { fence, body, options, section } };
}
