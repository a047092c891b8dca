import type { Range } from "../base/range";
import type { Problem } from "./unit";

/** Gathers what could not be read as written. */
export class Problems {
  readonly list: Problem[] = [];

  add(code: string, range: Range, message: string, ...fixes: Problem["fixes"]): void {
    this.list.push({ code, range, message, fixes });
  }

  /** What may be meant outside of sections in use. */
  trap(code: string, range: Range, message: string, ...fixes: Problem["fixes"]): void {
    this.list.push({ code, range, message, fixes, trap: true });
  }

  /** What may be meant where nothing takes items of a shape; without one as `trap`. */
  trapOf(
    shape: "pairs" | "events" | undefined,
    code: string,
    range: Range,
    message: string,
    ...fixes: Problem["fixes"]
  ): void {
    this.list.push({ code, range, message, fixes, trap: shape ?? true });
  }

  /** What may be meant where nothing is sorted into piles. */
  pileTrap(code: string, range: Range, message: string, ...fixes: Problem["fixes"]): void {
    this.list.push({ code, range, message, fixes, trap: "piles" });
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
