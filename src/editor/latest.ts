/** The clock that a {@link Latest} waits by; replaced in tests. */
export interface Timers {
  /** Calls back once after `milliseconds`; the result takes the call back. */
  after(milliseconds: number, callback: () => void): () => void;
}

export const realTimers: Timers = {
  after(milliseconds, callback) {
    const handle = setTimeout(callback, milliseconds);
    return () => clearTimeout(handle);
  },
};

/** What a job is told about the request that it serves. */
export interface Turn {
  /** False once a newer request for the key came or the key was dropped: the job's result is no longer wanted. */
  readonly current: boolean;
}

interface Slot {
  turn: { current: boolean };
  takeBack?: () => void;
}

/**
 * Runs one job a key after a pause without further requests. A newer request takes the place of one that waits and outdates
 * one that runs, so the last request for a key is always served and is the only one whose result counts. Keys do not
 * disturb one another.
 */
export class Latest<Key> {
  private readonly slots = new Map<Key, Slot>();

  constructor(
    private readonly job: (key: Key, turn: Turn) => Promise<void>,
    private readonly failed: (error: unknown) => void,
    private readonly timers: Timers = realTimers,
  ) {}

  /** Asks for a run after `pause` milliseconds. */
  request(key: Key, pause: number): void {
    this.drop(key);
    const slot: Slot = { turn: { current: true } };
    this.slots.set(key, slot);
    slot.takeBack = this.timers.after(pause, () => {
      delete slot.takeBack;
      this.job(key, slot.turn).catch(this.failed);
    });
  }

  /** Nothing that was asked for this key counts any more. */
  drop(key: Key): void {
    const slot = this.slots.get(key);
    if (!slot) return;
    slot.turn.current = false;
    slot.takeBack?.();
    this.slots.delete(key);
  }

  dropAll(): void {
    for (const key of [...this.slots.keys()]) this.drop(key);
  }
}
