/** A map that forgets what was not asked for lately, so that a long session does not fill memory. */
export class Recent<Value> {
  private young = new Map<string, Value>();
  private old = new Map<string, Value>();

  /** Keeps at least the last `limit` entries asked for, at most twice as many. */
  constructor(private readonly limit: number) {}

  /** The kept value, if there is one. */
  find(key: string): Value | undefined {
    const known = this.young.get(key);
    if (known !== undefined) return known;
    const value = this.old.get(key);
    if (value !== undefined) this.set(key, value);
    return value;
  }

  /** The kept value, or a new one made and kept. */
  get(key: string, make: () => Value): Value {
    const known = this.find(key);
    if (known !== undefined) return known;
    const value = make();
    this.set(key, value);
    return value;
  }

  /** Keeps a value in place of another. */
  set(key: string, value: Value): void {
    if (this.young.size >= this.limit) {
      this.old = this.young;
      this.young = new Map();
    }
    this.young.set(key, value);
  }
}
