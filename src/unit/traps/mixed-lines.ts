import { type Env, scan, spacedSeparators } from "../inline";
import { boxed, dot, pairSign } from "./glued";
import { tightNumber } from "./numbered-lines";
import { numberOf } from "./numbers";
import type { Begin, Line, Style } from "./styles";

/*
 * A paragraph whose lines were all meant as items, each in its own way: one fix for all, since each line that becomes an item alone
 * takes those below it along.
 */

/** `• ovo = egg`, `2. Ela ri.` and `-[x] O mar arde.`, one below the other. */
export function mixed(found: readonly Line[], env: Env): Style | undefined {
  if (found.length < 2) return undefined;
  const begins = found.map(({ text }) => beginOf(text, env));
  if (!begins.every((begin) => begin !== undefined)) return undefined;
  // Lines of one kind are each told where they stand.
  const ways = new Set(begins.map(({ way }) => way));
  if (ways.size < 2) return undefined;
  return {
    begins,
    message: "These are no items: each begins with a hyphen or a number with a full stop, and a space.",
  };
}

type Way = "marked" | "signed" | "numbered";

function beginOf(text: string, env: Env): (Begin & { readonly way: Way }) | undefined {
  const mark = boxed.exec(text);
  if (mark) return { way: "marked", cut: mark[0].length, put: "- " };
  const sign = pairSign.exec(text);
  if (sign && (dot.test(text) || hasPair(text.slice(sign[0].length), env)))
    return { way: "signed", cut: sign[0].length, put: "- " };
  const plain = /^(\d{1,9}[.)])[ \t]+(?=\S)/.exec(text);
  const number = plain ?? tightNumber.exec(text);
  if (!number) return undefined;
  const rest = text.slice(number[0].length);
  const written = number.slice(1).find((each) => each !== undefined) ?? "";
  if (hasPair(rest, env) || boxed.test(rest)) return { way: "numbered", cut: number[0].length, put: "- " };
  return { way: "numbered", cut: number[0].length, put: plain ? `${written} ` : `${numberOf(written)}. ` };
}

function hasPair(text: string, env: Env): boolean {
  return /[=＝]/u.test(text) && spacedSeparators(text, scan(text, env).mask, "=").length > 0;
}
