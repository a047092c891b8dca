import { Recent } from "../../base/recent";
import { Random, upTo } from "../../base/seed";
import type { Level } from "../options";
import { type Frame, innerEdges, outerEdges, type Spot } from "./frame";
import { type DealtTile, quarter } from "./model";
import type { TilesOptions } from "./options";

/** Where everything of a deal comes to lie. Chance alone decides it, so that one of these serves whatever words there are. */
export interface Places {
  /** For each pair, where its left text stands and where its right one. */
  readonly inside: readonly (readonly [left: Spot, right: Spot])[];
  /** For each decoy in turn. */
  readonly outside: readonly Spot[];
  readonly tiles: readonly DealtTile[];
}

const kept = new Recent<Places>(400);

/**
 * The levels of a version draw their inside alike, so that one look at either key serves both unless a level takes another
 * attempt; their order of dealing differs. `stream` names the seed of version and attempt.
 */
export function placesOf(stream: string, level: Level, frame: Frame, turn: TilesOptions["turn"]): Places {
  const key = `${stream} ${level} ${frame.rows} ${frame.columns} ${turn}`;
  return kept.get(key, () => draw(stream, level, frame, turn));
}

function draw(stream: string, level: Level, frame: Frame, turn: TilesOptions["turn"]): Places {
  const inside = new Random(`${stream}/inside`);
  const edges = inside.shuffle(innerEdges(frame));
  const order = new Random(`${stream}/order/${level}`);
  return {
    inside: edges.map(([a, b]) => (inside.coin() ? [a, b] : [b, a])),
    outside: new Random(`${stream}/outside/places`).shuffle(outerEdges(frame)),
    tiles: order
      .shuffle(upTo(frame.rows * frame.columns))
      .map((cell): DealtTile => ({ cell, turn: turn === "free" ? quarter(order.below(4)) : 0 })),
  };
}
