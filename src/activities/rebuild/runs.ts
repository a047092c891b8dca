import { plain, type Run } from "../../base/run";

/** The characters [start, end) of some runs, in their styles. */
export function sliceRuns(runs: readonly Run[], start: number, end: number): Run[] {
  const out: Run[] = [];
  let at = 0;
  for (const run of runs) {
    const text = run.text.slice(Math.max(0, start - at), Math.max(0, end - at));
    at += run.text.length;
    if (text !== "") out.push({ ...run, text });
  }
  return out;
}

/** The same runs with the characters [start, end) replaced. */
export function replaceRuns(runs: readonly Run[], start: number, end: number, text: string): Run[] {
  const [style] = sliceRuns(runs, start, end);
  return [
    ...sliceRuns(runs, 0, start),
    ...(text === "" ? [] : [{ ...style, text }]),
    ...sliceRuns(runs, end, plain(runs).length),
  ];
}
