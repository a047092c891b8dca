import schema from "../../schemas/stations.schema.json";
import { validateStations } from "../base/generated/validators";
import type { Range } from "../base/range";
import type { ActivityBlock, Unit } from "../unit/unit";
import { defaultsOf, type OptionFault, resolve, sift } from "./options";
import type { PlannedActivity, UnitPlan } from "./plan";
import { type Rotation, rotation } from "./rotation";

/** Options of a `stations` block, as `stations.schema.json` describes them. Minutes. */
export interface StationsOptions {
  readonly stations?: readonly string[];
  readonly desks?: number;
  readonly groups?: number;
  /** How many times each station is set up. */
  readonly copies: number;
  readonly minutes: number;
  readonly move: number;
  readonly setup: number;
  readonly close: number;
  readonly period: number;
  readonly start?: string;
  readonly order: "turn" | "balanced";
}

export interface PlannedStations {
  readonly block: ActivityBlock;
  readonly faults: readonly OptionFault[];
  /** Names that are no activity's title or kind. */
  readonly unknown: readonly { readonly name: string; readonly range: Range }[];
  readonly options?: StationsOptions;
  /** One for each station, then those of its copies in the same order; the same again for desks. */
  readonly activities: readonly PlannedActivity[];
  /** Undefined where there is no station. */
  readonly rotation?: Rotation;
}

/** Works out each plan of stations of a unit. */
export function planStations(unit: Unit, { activities }: UnitPlan): PlannedStations[] {
  return unit.stations.map((block) => {
    const { good, faults } = sift(block.options, validateStations);
    const options = resolve<StationsOptions>(
      [good],
      defaultsOf(schema),
      block.options,
      (value): value is StationsOptions => validateStations(value),
    )?.value;
    if (!options) return { block, faults, unknown: [], activities: [] };
    const entry = good.find(({ key }) => key === "stations");
    const unknown: { name: string; range: Range }[] = [];
    const named = options.stations?.flatMap((name, i) => {
      const found = activities.filter(({ title, kind }) => title === name || kind?.name === name);
      if (found.length === 0) unknown.push({ name, range: entry?.items[i] ?? block.fence });
      return found;
    });
    const chosen = named ?? activities.filter(({ kind }) => kind !== undefined);
    const [only] = chosen;
    const at = options.desks !== undefined && only ? Array.from({ length: options.desks }, () => only) : chosen;
    if (at.length === 0) return { block, faults, unknown, options, activities: [] };
    const { minutes: work, move, setup, close, period, order, copies } = options;
    const all = Array.from({ length: copies }, () => at).flat();
    const plan = rotation({
      stations: at.length,
      copies,
      groups: options.groups ?? all.length,
      work,
      move,
      setup,
      close,
      period,
      order,
    });
    return { block, faults, unknown, options, activities: all, rotation: plan };
  });
}
