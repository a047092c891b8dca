/*
 * A fingerprint of what goes into a file, for the identifiers that a PDF wants. It keeps files apart; it is no
 * protection against anybody.
 */

const primes = [0x01000193, 0x85ebca6b, 0xc2b2ae35, 0x27d4eb2f] as const;

/** Four FNV-like sums over everything that is added, in order. */
export class Digest {
  private readonly lanes = new Uint32Array([0x811c9dc5, 0x9747b28c, 0x3c6ef372, 0xa54ff53a]);

  add(part: string | Uint8Array): this {
    const { lanes } = this;
    const text = typeof part === "string";
    const { length } = part;
    for (let i = 0; i < length; i++) {
      const unit = text ? part.charCodeAt(i) : (part[i] ?? 0);
      for (let lane = 0; lane < 4; lane++) {
        const mixed = Math.imul((lanes[lane] ?? 0) ^ unit, primes[lane] ?? 1);
        lanes[lane] = mixed ^ (mixed >>> (13 + lane));
      }
    }
    // The length keeps "ab", "c" apart from "a", "bc".
    lanes[0] = Math.imul((lanes[0] ?? 0) ^ length, primes[1]);
    return this;
  }

  /** 32 hexadecimal digits. */
  hex(): string {
    return [...this.lanes].map((lane) => lane.toString(16).padStart(8, "0")).join("");
  }

  /** Six capital letters, as they stand before the name of a font subset. */
  letters(): string {
    let value = ((this.lanes[0] ?? 0) ^ (this.lanes[1] ?? 0) ^ (this.lanes[2] ?? 0) ^ (this.lanes[3] ?? 0)) >>> 0;
    let letters = "";
    for (let i = 0; i < 6; i++) {
      letters += String.fromCharCode(65 + (value % 26));
      value = Math.floor(value / 26);
    }
    return letters;
  }
}
