import { type Part, slack } from "./part";

/** A part at its place: mm from the top of the page's body. */
export interface PlacedPart {
  readonly part: Part;
  readonly y: number;
}

/** Puts parts on pages of a height (mm). A part that is higher than a page and cannot be split has a page of its own. */
export function paginate(parts: readonly Part[], height: number): PlacedPart[][] {
  const pages: PlacedPart[][] = [];
  let page: PlacedPart[] = [];
  let used = 0;
  const turn = (): void => {
    pages.push(page);
    page = [];
    used = 0;
  };
  const queue = [...parts];
  for (let part = queue.shift(); part; part = queue.shift()) {
    if (part.breaks) {
      if (used > 0) turn();
      continue;
    }
    if (part.parts && part.height > height + slack) {
      queue.unshift(...part.parts);
      continue;
    }
    const top = used > 0 ? used + part.above : 0;
    if (used > 0 && top + leastWith(part, queue) > height + slack) {
      turn();
      queue.unshift(part);
      continue;
    }
    if (top + part.height > height + slack) {
      const halves = part.split?.(height - top);
      if (halves) {
        page.push({ part: halves[0], y: top });
        turn();
        queue.unshift(halves[1]);
        continue;
      }
      if (used > 0) {
        turn();
        queue.unshift(part);
        continue;
      }
    }
    page.push({ part, y: top });
    used = top + part.height;
  }
  if (page.length > 0 || pages.length === 0) pages.push(page);
  return pages;
}

/** Height that a part needs on its page, with the least of what it must not be parted from. */
function leastWith(part: Part, following: readonly Part[]): number {
  if (!part.keepsNext) return part.least;
  const [next, ...rest] = following;
  if (!next || next.breaks) return part.height;
  return part.height + next.above + leastWith(next, rest);
}
