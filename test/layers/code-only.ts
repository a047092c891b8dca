/*
 * TypeScript's text with everything blanked that is not code, so that words can be looked for without a parser.
 */

/** After these words a slash begins a regular expression, not a division. */
const beforeExpression = /(?:^|[^\w$.])(?:return|typeof|case|in|of|delete|void|throw|new|else|do|yield|await)$/;

/**
 * Blanks comments and the insides of strings, templates and regular expressions; quotes, line breaks and all lengths stay, so
 * that a place in the result is the same place in the source. What stands in `${…}` is code.
 */
export function codeOnly(source: string): string {
  const out = source.split("");
  // One entry for each `${` that is open: how many braces have been opened in it since.
  const openBraces: number[] = [];
  let at = 0;

  const blank = (from: number, to: number) => {
    for (let index = from; index < Math.min(to, out.length); index++) if (out[index] !== "\n") out[index] = " ";
  };
  const blankTo = (end: number) => {
    blank(at, end);
    at = end;
  };
  const endOfTemplatePart = (): void => {
    const start = at;
    while (at < source.length && source[at] !== "`" && !source.startsWith("${", at)) at += source[at] === "\\" ? 2 : 1;
    blank(start, at);
    if (source.startsWith("${", at)) {
      openBraces.push(0);
      at += 2;
    } else at += 1;
  };

  while (at < source.length) {
    const character = source[at] ?? "";
    if (source.startsWith("//", at)) blankTo(indexOrEnd(source, "\n", at));
    else if (source.startsWith("/*", at)) blankTo(indexOrEnd(source, "*/", at + 2) + 2);
    else if (character === '"' || character === "'") {
      const end = endOfString(source, at);
      blank(at + 1, end);
      at = end + 1;
    } else if (character === "`") {
      at += 1;
      endOfTemplatePart();
    } else if (character === "/" && beginsExpression(out.slice(Math.max(0, at - 200), at).join(""))) {
      const end = endOfRegularExpression(source, at);
      blank(at + 1, end);
      at = end + 1;
    } else {
      const innermost = openBraces.length - 1;
      const depth = openBraces[innermost];
      at += 1;
      if (depth === undefined) continue;
      if (character === "{") openBraces[innermost] = depth + 1;
      else if (character === "}" && depth > 0) openBraces[innermost] = depth - 1;
      else if (character === "}") {
        openBraces.pop();
        endOfTemplatePart();
      }
    }
  }
  return out.join("");
}

function indexOrEnd(source: string, text: string, from: number): number {
  const index = source.indexOf(text, from);
  return index < 0 ? source.length : index;
}

function endOfString(source: string, start: number): number {
  let at = start + 1;
  while (at < source.length && source[at] !== source[start] && source[at] !== "\n") at += source[at] === "\\" ? 2 : 1;
  return at;
}

function endOfRegularExpression(source: string, start: number): number {
  let inClass = false;
  let at = start + 1;
  for (; at < source.length && source[at] !== "\n"; at++) {
    if (source[at] === "\\") at++;
    else if (source[at] === "[") inClass = true;
    else if (source[at] === "]") inClass = false;
    else if (source[at] === "/" && !inClass) break;
  }
  return at;
}

function beginsExpression(before: string): boolean {
  const code = before.trimEnd();
  return code === "" || beforeExpression.test(code) || !/[\w$)\]}"'`]$/.test(code);
}
