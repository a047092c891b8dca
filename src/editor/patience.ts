import { Latest, realTimers, type Timers } from "./latest";

/** Milliseconds after a keystroke in which nothing new is said about the line that is being typed. */
const patience = 1000;

/**
 * Keeps from nagging at a line that is still being typed: which line of a document that is, until there was a pause or the
 * cursor went elsewhere.
 */
export class Patience {
  private readonly lines = new Map<string, number>();
  private readonly waiting: Latest<string>;

  /** `over` is called with a document's key once its line may be spoken about. */
  constructor(
    private readonly over: (key: string) => void,
    timers: Timers = realTimers,
  ) {
    this.waiting = new Latest(
      async (key) => this.end(key),
      () => {},
      timers,
    );
  }

  /** Whether a stretch of lines has the one that is being typed. */
  isTyped(key: string, first: number, last: number): boolean {
    const line = this.lines.get(key);
    return line !== undefined && first <= line && line <= last;
  }

  /** A keystroke changed the line that the cursor is in. */
  typed(key: string, line: number): void {
    this.lines.set(key, line);
    this.waiting.request(key, patience);
  }

  /** The cursor came to a line. */
  moved(key: string, line: number): void {
    const typed = this.lines.get(key);
    if (typed !== undefined && typed !== line) this.end(key);
  }

  forget(key: string): void {
    this.waiting.drop(key);
    this.lines.delete(key);
  }

  forgetAll(): void {
    this.waiting.dropAll();
    this.lines.clear();
  }

  private end(key: string): void {
    this.forget(key);
    this.over(key);
  }
}
