import type { ShapedGlyph, ShapedLine } from "../text/typeface";

/** Glyphs that stand for `text` together. */
export interface Cluster {
  readonly text: string;
  /** Where its text begins in the line. */
  readonly start: number;
  readonly glyphs: readonly [ShapedGlyph, ...ShapedGlyph[]];
}

/** A line's glyphs by cluster, in visual order. */
export function clusters(line: ShapedLine): readonly Cluster[] {
  const found: { text: string; start: number; glyphs: [ShapedGlyph, ...ShapedGlyph[]] }[] = [];
  for (const glyph of line.glyphs) {
    const last = found.at(-1);
    if (last && last.start === glyph.cluster) last.glyphs.push(glyph);
    else found.push({ text: glyph.clusterText, start: glyph.cluster, glyphs: [glyph] });
  }
  return found;
}

/**
 * A line's clusters in the stretches that a reader should be told the text of at once: words from left to right, which
 * readers would else tear at a mark. From right to left they are told cluster by cluster, since some readers turn a
 * longer stretch round.
 */
export function stretches(line: ShapedLine): readonly (readonly Cluster[])[] {
  const found: Cluster[][] = [];
  let last: Cluster | undefined;
  for (const cluster of clusters(line)) {
    const follows = last !== undefined && last.start + last.text.length === cluster.start;
    if (last && follows && !isSpace(last) && !isSpace(cluster)) found.at(-1)?.push(cluster);
    else found.push([cluster]);
    last = cluster;
  }
  return found;
}

function isSpace(cluster: Cluster): boolean {
  return cluster.text.trim() === "";
}
