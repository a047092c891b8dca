import { type Blocks, isBlank, nearlyItems } from "./blocks";

/** Takes white space from the ends of lines. A break that two blanks make inside a paragraph stays, and so does an empty item. */
export function trimLines({ lines, tokens, opaque }: Blocks): readonly string[] {
  const breaks = new Set<number>();
  for (const { type, map } of tokens) {
    if (type === "inline" && map) for (let line = map[0]; line < map[1] - 1; line++) breaks.add(line);
  }
  return lines.map((line, i) => {
    if (opaque[i] || emptyItem.test(line) || (breaks.has(i) && / {2,}$/.test(line))) return line;
    return line.replace(/[ \t]+$/, "");
  });
}

/** Its next word is still to come. */
const emptyItem = /^[ \t]*(?:[-*+]|\d{1,9}[.)])[ \t]+(?:\[[ xX]?\][ \t]+)?$/;

/** One blank line around headings, lists, tables and fences, and never more than one anywhere. */
export function spaceBlocks({ lines, tokens, opaque, front, unit }: Blocks): readonly string[] {
  const before = new Set<number>(front > 0 ? [front] : []);
  tokens.forEach((token, i) => {
    if (token.level !== 0 || !token.map || !spaced.has(token.type)) return;
    const previous = tokens[i - 1];
    // Two lists of one sort that touch are one list to most readers: a finding says so, and no blank line hides it.
    const touching = /_list_open$/.test(token.type) && previous?.type === token.type.replace("_open", "_close");
    if (!touching) before.add(token.map[0]);
    let after = token.map[1];
    while (after > token.map[0] + 1 && isBlank(lines[after - 1] ?? "")) after--;
    const close = tokens.slice(i + 1).find((each) => each.level === 0 && each.nesting >= 0);
    if (close?.type !== token.type || token.nesting !== 1 || !/_list_open$/.test(token.type)) before.add(after);
  });
  for (const line of nearlyItems(unit)) before.delete(line);
  const out: string[] = [];
  lines.forEach((line, i) => {
    const last = out.at(-1);
    if (opaque[i]) {
      if (before.has(i) && last !== undefined && !isBlank(last)) out.push("");
      out.push(line);
    } else if (isBlank(line)) {
      if (last !== undefined && (!isBlank(last) || opaque[i - 1])) out.push("");
    } else {
      if (before.has(i) && last !== undefined && !isBlank(last)) out.push("");
      out.push(line);
    }
  });
  while (out.length > 1 && out.at(-1) === "" && !opaque[lines.length - 1]) out.pop();
  return opaque[lines.length - 1] || out.length === 0 || out.join("") === "" ? out : [...out, ""];
}

const spaced = new Set(["heading_open", "bullet_list_open", "ordered_list_open", "table_open", "fence"]);
