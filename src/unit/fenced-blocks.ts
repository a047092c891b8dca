import type Token from "markdown-it/lib/token.mjs";
import type { LineIndex } from "../base/range";
import type { Problems } from "./problems";
import { SourceText } from "./source-text";
import { fenceWords } from "./traps/fence-words";
import { activityExtent, nearlyActivity, openNotes } from "./traps/fences";
import { misnamedActivity } from "./traps/unfenced";
import type { ActivityBlock } from "./unit";
import { readMapping } from "./yaml";

export interface FencedBlock {
  /** Undefined for a fence that holds notes. */
  readonly name?: "activity" | "stations";
  readonly block?: ActivityBlock;
  /** The line from which on to read as if the fence had ended above it, where it has no end of its own. */
  readonly below?: number | undefined;
}

/** What a fence asks for, in the section of an index. */
export function readFence(lines: LineIndex, token: Token, section: number, problems: Problems): FencedBlock {
  const nearly = misnamedActivity(lines, token, problems) ?? nearlyActivity(lines, token, problems);
  const [name] = /^(?:activity|stations)(?=\s|$)/.exec(token.info.trim()) ?? [];
  if (name !== "activity" && name !== "stations") {
    return nearly ?? { below: openNotes(lines, token, problems) };
  }
  const [first] = token.map ?? [0];
  const { end, close, below } = activityExtent(lines, token, problems);
  const content = token.content
    .split("\n")
    .slice(0, end - first - 1)
    .join("\n");
  const source = SourceText.inLines(lines, first + 1, content);
  const body = { start: lines.start(first + 1), end: lines.start(end) };
  const fence = { start: lines.start(first), end: lines.line(close ?? end - 1).end };
  const options = readMapping(source, body, name === "stations" ? "plan" : "activity", problems, lines.newline);
  const lost = fenceWords(lines, token, problems) ? { broken: true as const } : {};
  return { name, block: { fence, body, options: { ...options, ...lost }, section }, below };
}
