import type { Timers } from "../../src/editor/latest";

/** A clock that goes on only when told. */
export class HandClock implements Timers {
  private now = 0;
  private waiting: { readonly at: number; readonly callback: () => void }[] = [];

  after(milliseconds: number, callback: () => void): () => void {
    const entry = { at: this.now + milliseconds, callback };
    this.waiting.push(entry);
    return () => {
      this.waiting = this.waiting.filter((other) => other !== entry);
    };
  }

  pass(milliseconds: number): void {
    this.now += milliseconds;
    const due = this.waiting.filter(({ at }) => at <= this.now);
    this.waiting = this.waiting.filter(({ at }) => at > this.now);
    for (const { callback } of due) callback();
  }
}
