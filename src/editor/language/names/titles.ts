import { kindNamed } from "../../../activities/kinds";
import { foreignPaths, type PlannedActivity, planUnit } from "../../../activities/plan";
import type { Unit } from "../../../unit/unit";
import type { World } from "./named";

const known = new WeakMap<World, Map<string, readonly PlannedActivity[]>>();

/** The activities of a file with the titles that they have, in order. */
export function activitiesOf(world: World, file: string): readonly PlannedActivity[] {
  const files = known.get(world) ?? new Map<string, readonly PlannedActivity[]>();
  known.set(world, files);
  const already = files.get(file);
  if (already) return already;
  const unit = world.units.get(file);
  const planned = unit ? planUnit(unit, { settings: [], units: unitsOf(world, file, unit) }).activities : [];
  files.set(file, planned);
  return planned;
}

/** The activity that a plan of stations means by a name: a title, or a kind of which there is one. */
export function stationNamed(
  world: World,
  file: string,
  name: string,
): { readonly index: number; readonly byKind: boolean } | undefined {
  const planned = activitiesOf(world, file);
  const titled = planned.find(({ title }) => title === name);
  if (titled) return { index: titled.index, byKind: false };
  const kind = kindNamed(name);
  const [first, second] = kind ? planned.filter((each) => each.kind === kind) : [];
  return first && !second ? { index: first.index, byKind: true } : undefined;
}

function unitsOf(world: World, file: string, unit: Unit): Map<string, Unit> {
  return new Map(
    foreignPaths(unit).flatMap((path): [string, Unit][] => {
      const target = world.resolve(file, path);
      const other = target === undefined ? undefined : world.units.get(target);
      return other ? [[path, other]] : [];
    }),
  );
}
