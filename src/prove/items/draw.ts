import type { Random } from "../../base/seed";

const word = 0x1_0000_0000;

/** An integer in [0, bound), each as likely as the others, for bounds of any size. */
export function drawBelow(random: Random, bound: bigint): bigint {
  let span = 1n;
  let words = 0;
  for (; span < bound; span *= BigInt(word)) words++;
  const limit = span - (span % bound);
  for (;;) {
    let value = 0n;
    for (let i = 0; i < words; i++) value = value * BigInt(word) + BigInt(random.below(word));
    if (value < limit) return value % bound;
  }
}
