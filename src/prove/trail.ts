/** Whole numbers, all 0 at first, that can be put back to how they were. */
export class Trail {
  readonly values: Int32Array;
  /** Which were changed, in turn, and what they were. */
  private where: Int32Array;
  private was: Int32Array;
  private length = 0;

  constructor(size: number) {
    this.values = new Int32Array(size);
    this.where = new Int32Array(8 * size);
    this.was = new Int32Array(8 * size);
  }

  set(index: number, value: number): void {
    if (this.length === this.where.length) this.grow();
    this.where[this.length] = index;
    this.was[this.length++] = this.values[index] as number;
    this.values[index] = value;
  }

  /** A moment to come back to. */
  mark(): number {
    return this.length;
  }

  undo(mark: number): void {
    while (this.length > mark) {
      const last = --this.length;
      this.values[this.where[last] as number] = this.was[last] as number;
    }
  }

  private grow(): void {
    this.where = doubled(this.where);
    this.was = doubled(this.was);
  }
}

function doubled(values: Int32Array): Int32Array {
  const more = new Int32Array(2 * values.length);
  more.set(values);
  return more;
}
