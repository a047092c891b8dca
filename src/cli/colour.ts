/** What can be coloured, by what it is; how that looks stands here alone. */
export type Ink = "place" | "error" | "warning" | "information" | "hint" | "code" | "quiet" | "good" | "strong";

/** Wraps a text in the escape sequences of an ink, or leaves it as it is. */
export type Paint = (ink: Ink, text: string) => string;

/** SGR parameters (ECMA-48, 8.3.117). */
const sgr: Readonly<Record<Ink, string>> = {
  place: "1",
  error: "1;31",
  warning: "1;33",
  information: "1;34",
  hint: "36",
  code: "35",
  quiet: "2",
  good: "32",
  strong: "1",
};

export const plainPaint: Paint = (_, text) => text;

const colourPaint: Paint = (ink, text) => (text === "" ? "" : `\u001b[${sgr[ink]}m${text}\u001b[0m`);

/** A stream that may be a terminal, such as `process.stdout`. */
export interface Stream {
  readonly isTTY?: boolean;
}

/** NO_COLOR switches colours off, else FORCE_COLOR switches them on; without either, a terminal that can show them gets them. */
export function paintFor(stream: Stream, env: Readonly<Record<string, string | undefined>> = process.env): Paint {
  const { NO_COLOR: never, FORCE_COLOR: always, TERM: terminal } = env;
  if (never !== undefined && never !== "") return plainPaint;
  if (always !== undefined) return always === "0" || always === "false" ? plainPaint : colourPaint;
  return stream.isTTY && terminal !== "dumb" ? colourPaint : plainPaint;
}
