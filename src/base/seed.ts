/*
 * Chance that can be repeated: everything random in a deal comes from a text seed.
 */

/** Two 32-bit hashes of a text (FNV-1a over UTF-16 units from two offsets, finished with MurmurHash3's fmix32). */
export function hash64(text: string): readonly [number, number] {
  let a = 0x811c9dc5;
  let b = 0x9747b28c;
  for (let i = 0; i < text.length; i++) {
    const unit = text.charCodeAt(i);
    a = Math.imul(a ^ unit, 0x01000193);
    b = Math.imul(b ^ (unit + i), 0x85ebca6b) ^ (b >>> 15);
  }
  return [mix(a ^ text.length), mix(b ^ mix(a))];
}

/** MurmurHash3's 32-bit finalizer. */
function mix(value: number): number {
  let h = value | 0;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
}

/** A generator of 32-bit words: sfc32 (Chris Doty-Humphrey, PractRand), warmed up by 15 rounds. */
export class Random {
  private a: number;
  private b: number;
  private c = 0x9e3779b9;
  private counter = 1;

  constructor(seed: string) {
    [this.a, this.b] = hash64(seed);
    for (let i = 0; i < 15; i++) this.word();
  }

  private word(): number {
    const sum = (this.a + this.b + this.counter) | 0;
    this.counter = (this.counter + 1) | 0;
    this.a = this.b ^ (this.b >>> 9);
    this.b = (this.c + (this.c << 3)) | 0;
    this.c = ((this.c << 21) | (this.c >>> 11)) + sum;
    return sum >>> 0;
  }

  /** An integer in [0, bound), without bias (draws above the last whole multiple are thrown away). */
  below(bound: number): number {
    const limit = 0x100000000 - (0x100000000 % bound);
    let word = this.word();
    while (word >= limit) word = this.word();
    return word % bound;
  }

  coin(): boolean {
    return this.below(2) === 1;
  }

  /** A shuffled copy (Fisher–Yates). */
  shuffle<T>(items: readonly T[]): T[] {
    const out = [...items];
    for (let i = out.length - 1; i > 0; i--) {
      const j = this.below(i + 1);
      const held = out[i] as T;
      out[i] = out[j] as T;
      out[j] = held;
    }
    return out;
  }
}

export function upTo(count: number): number[] {
  const numbers: number[] = [];
  for (let i = 0; i < count; i++) numbers.push(i);
  return numbers;
}
