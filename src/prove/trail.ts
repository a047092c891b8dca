/** Whole numbers, all 0 at first, that can be put back to how they were. */
export class Trail {
  readonly values: Int32Array;
  private readonly where: number[] = [];
  private readonly was: number[] = [];

  constructor(size: number) {
    this.values = new Int32Array(size);
  }

  set(index: number, value: number): void {
    this.where.push(index);
    this.was.push(this.values[index] as number);
    this.values[index] = value;
  }

  /** A moment to come back to. */
  mark(): number {
    return this.where.length;
  }

  undo(mark: number): void {
    while (this.where.length > mark) {
      const index = this.where.pop();
      const value = this.was.pop();
      if (index !== undefined && value !== undefined) this.values[index] = value;
    }
  }
}
