import type { Fix, Rule } from "../../../base/finding";
import type { Steps } from "../../../base/steps";
import { setOptions } from "../../edits";
import { type Changing, saying, withOptions } from "../../foreseen";
import { counted } from "../../report";
import { pairsOf } from "../../supply";
import { innerCount, largestFrame } from "../frame";
import type { DealtTiles } from "../model";
import { writeFrame } from "../options";
import { list, place, type TilesContext } from "./context";
import { calmWith, decoysWith } from "./trial";

/** 2 × 2 tiles have so many inner edges. */
const fewestPairs = 4;

export const tooFewPairs: Rule<TilesContext> = {
  code: "too-few-pairs",
  severity: "error",
  counts: true,
  title: "Fewer pairs than the tiles have inner edges",
  why: "R × C tiles have R(C − 1) + C(R − 1) inner edges, and each needs a pair: 12 for 3 × 3, 24 for 4 × 4. Take a smaller grid, add pairs, or let some inner edges stay blank.",
  example: {
    wrong:
      "## Drinks\n\n- chá = tea\n- leite = milk\n- água = water\n- sumo = juice\n\n```activity\nmake: tiles\ngrid: 3 x 3\n```",
    right:
      "## Drinks\n\n- chá = tea\n- leite = milk\n- água = water\n- sumo = juice\n\n```activity\nmake: tiles\ngrid: 2 x 2\n```",
  },
  check: (context) => {
    const { dealt } = context;
    const { request, pairs, frame, deals, options } = dealt;
    if (deals.length > 0 || request.refused.some((key) => ["grid", "fill", "take"].includes(key))) return [];
    const needed = frame ? innerCount(frame) : fewestPairs;
    const found = request.sections.flatMap(pairsOf).length;
    // The choice alone is to blame where the sections have enough.
    const taken = options.take !== undefined && options.take < needed && found >= needed;
    const names = list(request.sections.map(({ name }) => name));
    const has = taken ? `\`take\` leaves ${pairs.length} of ${found}` : `${names} has ${found}`;
    const wanted = frame
      ? `${frame.rows} × ${frame.columns} tiles have ${needed} inner edges, one for each pair`
      : `Tiles need at least ${fewestPairs} pairs (2 × 2 tiles)`;
    return [
      {
        range: place(dealt, taken ? "take" : "grid"),
        message: `${wanted}; ${has}.`,
        fixes: () => changes(context, taken ? needed : undefined),
      },
    ];
  },
};

/** A change of options, as it may be tried and written. */
interface Change {
  readonly title: string;
  readonly options: { readonly take?: number; readonly grid?: string; readonly fill?: "blank" };
  /** It makes what is there, and leaves nothing out that was asked for. */
  readonly preferred?: true;
}

/**
 * So many pairs as are needed, where there are; the largest grid that the pairs fill, and blank edges in the one that was asked
 * for, as far as these lead to one solution; what leads to a warning comes last, and says so.
 */
function* changes({ dealt, foresee }: TilesContext, needed: number | undefined): Steps<Fix[], unknown> {
  const { options, pairs, frame } = dealt;
  const tried: Change[] = [];
  if (needed !== undefined) tried.push({ title: `Take ${needed}`, options: { take: needed } });
  const largest = largestFrame(pairs.length);
  if (largest) {
    const title = `Make ${largest.rows} × ${largest.columns} tiles`;
    tried.push({ title, options: { grid: writeFrame(largest) }, preferred: true });
  }
  if (frame && pairs.length > 0 && options.fill === "words") {
    const blank = innerCount(frame) - pairs.length;
    const title = `Leave ${blank} inner ${blank === 1 ? "edge" : "edges"} blank`;
    tried.push({ title, options: { fill: "blank" } });
  }
  const fixes: Fix[] = [];
  const loud: Changing[] = [];
  for (const change of tried) {
    const decoys = yield* decoysWith(dealt, change.options);
    if (decoys === false) continue;
    if (yield* calmWith(dealt, change.options)) {
      fixes.push({ ...fixFor(dealt, change), ...(change.preferred ? { preferred: true } : {}) });
      continue;
    }
    // Where words for the outside are missing then, as many as there are.
    const enough = decoys !== undefined && (decoys > 0 || !options.levels);
    const fewer = enough && (yield* calmWith(dealt, { ...change.options, decoys }));
    if (fewer) fixes.push(fixFor(dealt, change, decoys));
    else loud.push({ fix: fixFor(dealt, change), change: withOptions(change.options) });
  }
  return [...fixes, ...(yield* saying(loud, foresee))];
}

function fixFor({ request: { block, unit } }: DealtTiles, { title, options }: Change, decoys?: number): Fix {
  const outside =
    decoys === undefined
      ? ""
      : decoys === 0
        ? ", with blank outer edges"
        : `, with ${counted(decoys, "word")} on the outer edges`;
  const written = { ...options, ...(decoys === undefined ? {} : { decoys }) };
  const values = Object.entries(written).map(([key, value]) => [key, String(value)]);
  return { title: `${title}${outside}`, edits: setOptions(block, unit.text, Object.fromEntries(values)) };
}
