import type { Boat, Part } from '../../boat/boat.ts';
import type { BoatSource } from '../../boat/source.ts';
import { assembleBodies, type BodyCache } from '../../bodies/assemble.ts';
import { floatIn, type LoadedCondition, type LoadingCondition } from '../../conditions/loadingCondition.ts';
import { shifted } from './shift.ts';

/** A boat made of a file's own by pieces and moves, and the conditions that it is looked at in. */
interface Changed {
  readonly boat: Boat;
  readonly source: BoatSource;
  readonly others: readonly { readonly condition: LoadingCondition }[];
}

/** The changed boat in the loading conditions besides surfaced and submerged, loaded and laid in the water. */
export const inOthers = ({ boat, source, others }: Changed, cache: BodyCache): readonly LoadedCondition[] =>
  others.map(({ condition }) => {
    const there = condition.aboard ? ladenAs(boat, source.boat, condition.aboard(source).boat) : boat;
    return floatIn(condition, assembleBodies(there, cache), boat.length);
  });

/**
 * The changed boat loaded as `there`, which was made of the boat as filed: what was taken out of the file is out there too,
 * what was moved is moved there too, what was added is aboard everywhere.
 */
function ladenAs(changed: Boat, filed: Boat, there: Boat): Boat {
  const named = (boat: Boat) => new Map(boat.payload.map(part => [part.name, part]));
  const [was, is] = [named(filed), named(changed)];
  const kept = there.payload.flatMap((part): readonly Part[] => {
    const [before, after] = [was.get(part.name), is.get(part.name)];
    if (!before) return [part];
    if (!after) return [];
    if (part === before) return [after];
    return [shifted(part, after.centroid[0] - before.centroid[0], after.centroid[1] - before.centroid[1])];
  });
  const added = changed.payload.filter(({ name }) => !was.has(name));
  // A condition may have its own water.
  const water = there.water === filed.water ? changed.water : there.water;
  return { ...there, water, payload: [...kept, ...added] };
}
