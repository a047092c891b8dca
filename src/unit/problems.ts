import type { Range } from "../base/range";
import type { Problem } from "./unit";

/** Gathers what could not be read as written. */
export class Problems {
  constructor(readonly list: Problem[] = []) {}

  add(code: string, range: Range, message: string, ...fixes: Problem["fixes"]): void {
    this.tell(undefined, code, range, message, ...fixes);
  }

  /** What may be meant outside of sections in use. */
  trap(code: string, range: Range, message: string, ...fixes: Problem["fixes"]): void {
    this.tell(true, code, range, message, ...fixes);
  }

  /** What is only worth saying in some places, or where that is undefined in all of them. */
  tell(where: Problem["trap"], code: string, range: Range, message: string, ...fixes: Problem["fixes"]): void {
    this.list.push({ code, range, message, fixes, ...(where === undefined ? {} : { trap: where }) });
  }
}

/** A fix that writes `text` over a range. */
export function write(title: string, range: Range, text: string): Problem["fixes"][number] {
  return { title, edits: [{ range, text }] };
}

/** A fix that puts `text` at an offset. */
export function insert(title: string, offset: number, text: string): Problem["fixes"][number] {
  return write(title, { start: offset, end: offset }, text);
}

/** A fix that takes whole lines out. */
export function drop(title: string, range: Range): Problem["fixes"][number] {
  return { ...write(title, range, ""), drops: true };
}
