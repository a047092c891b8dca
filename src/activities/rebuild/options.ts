import { validateRebuild } from "../../base/generated/validators";
import type { CommonOptions, Level, ResolvedOptions } from "../options";

/** Options of `rebuild`, as `rebuild.schema.json` describes them. */
export interface RebuildOptions extends CommonOptions {
  readonly make: "rebuild";
  /** Sentences a packet. */
  readonly packet: number;
  readonly capitals: "keep" | "hide";
  readonly stops: "keep" | "hide";
  readonly names?: readonly string[];
  readonly translation: "label" | "key";
  readonly slip: "none" | "sentences";
  /** mm */
  readonly height?: number;
}

function isRebuildOptions(value: unknown): value is RebuildOptions {
  return validateRebuild(value);
}

/** The options of a request as rebuild options; the plan has checked them against the schema. */
export function rebuildOptions({ value }: ResolvedOptions<CommonOptions>): RebuildOptions {
  if (!isRebuildOptions(value)) throw new TypeError("options of rebuild were not checked");
  return value;
}

/** What the cards of a level leave out. */
export interface Hidden {
  readonly capitals: boolean;
  readonly stops: boolean;
}

/** The levels asked for, or the one that the options amount to. */
export function levelsOf({ levels, capitals, stops }: RebuildOptions): readonly Level[] {
  return levels ?? [capitals === "hide" && stops === "hide" ? "hard" : "gentle"];
}

export function hiddenAt({ levels, capitals, stops }: RebuildOptions, level: Level): Hidden {
  if (levels) return { capitals: level === "hard", stops: level === "hard" };
  return { capitals: capitals === "hide", stops: stops === "hide" };
}
