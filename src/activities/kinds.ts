import { board } from "./board/kind";
import { calls } from "./calls/kind";
import type { ActivityKind } from "./contract";
import { loop } from "./loop/kind";
import { rebuild } from "./rebuild/kind";
import { sort } from "./sort/kind";
import { strips } from "./strips/kind";
import { tiles } from "./tiles/kind";

/** All kinds there are. A further one is a folder and a line here. */
export const kinds: readonly ActivityKind[] = [tiles, rebuild, strips, calls, loop, sort, board];

export function kindNamed(name: unknown): ActivityKind | undefined {
  return kinds.find((kind) => kind.name === name);
}
