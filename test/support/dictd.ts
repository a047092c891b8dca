import { existsSync, readFileSync } from "node:fs";
import { gunzipSync } from "node:zlib";

/*
 * Dictionaries in the format of the dictd server (its manual, dictfmt(1) and dictzip(1)): an index of lines
 * `head<TAB>offset<TAB>length`, numbers in base 64, and the articles, in a file that gunzip can read.
 */

export interface Article {
  /** As the article writes it; the index may write it simpler. */
  readonly head: string;
  /** Translations in the order of the article. */
  readonly answers: readonly string[];
}

const digits = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";

/** A number as an index writes it, most significant digit first. NaN where it is none. */
export function indexNumber(text: string): number {
  return [...text].reduce((sum, digit) => {
    const value = digits.indexOf(digit);
    return value < 0 ? Number.NaN : sum * 64 + value;
  }, 0);
}

/**
 * The articles of a dictionary of FreeDict: on the first line the head, its sound between slashes and notes in angle
 * brackets; then translations, parted by commas, one line for each sense, with a number where there are several.
 */
export function readArticles(index: string, articles: Uint8Array): Article[] {
  const bytes = gunzipSync(articles);
  const known = new Set<string>();
  return index.split("\n").flatMap((line): Article[] => {
    const [name = "", offset = "", length = ""] = line.split("\t");
    // Heads that begin so are about the dictionary itself. Several heads may lead to one article.
    if (name === "" || name.startsWith("00database") || name.startsWith("00-database") || known.has(offset)) return [];
    known.add(offset);
    const start = indexNumber(offset);
    const [first = "", ...senses] = bytes.toString("utf8", start, start + indexNumber(length)).split("\n");
    const head = first.replace(/\s*(\/.*\/)?\s*(<.*>)?\s*$/u, "");
    const answers = senses.flatMap((sense) => sense.replace(/^\s*\d+\.\s+/u, "").split(/,\s+/u));
    const kept = answers.map((answer) => answer.trim()).filter((answer) => answer !== "");
    return head === "" || kept.length === 0 ? [] : [{ head, answers: [...new Set(kept)] }];
  });
}

/** The articles of one of Debian's packages `dict-freedict-NAME`, such as `spa-eng`; undefined where it is not installed. */
export function freedict(name: string): Article[] | undefined {
  const file = `/usr/share/dictd/freedict-${name}`;
  if (!existsSync(`${file}.index`)) return undefined;
  return readArticles(readFileSync(`${file}.index`, "utf8"), readFileSync(`${file}.dict.dz`));
}
