import type { Analysis } from '../../core/analysis/analysis.ts';
import type { Weighed } from '../../core/boat/boat.ts';
import { addImmersed, emptyImmersion, type Immersion } from '../../core/geometry/cut/immersion.ts';
import { momentText } from '../../core/wording/numbers.ts';

/** What one entry does to the balance in one condition. SI. */
export interface Contribution {
  /** Displaced, m3. */
  readonly volume: number;
  /** Weight less buoyancy, kg. */
  readonly net: number;
  /** Net moments, kg·m: aft of midships, and to starboard of the centreline. */
  readonly aft: number;
  readonly starboard: number;
}

type Water = Pick<Analysis['bodies'], 'density'>;

/** What an entry does once it is all under water. */
export function contributionSubmerged(
  analysis: Analysis,
  entry: Weighed,
  { density }: Water = analysis.bodies,
): Contribution {
  const body = bodyOf(analysis, entry);
  const sums = emptyImmersion();
  if (body) {
    sums.volume = body.volume;
    [sums.mx, sums.my, sums.mz] = body.moment;
  }
  return contribution(analysis, entry, sums, density);
}

/** What an entry does in each loading condition that it is aboard in; nothing of one that the boat does not float in. */
export const contributionsOf = (analysis: Analysis, entry: Weighed): readonly (readonly [string, Contribution])[] =>
  analysis.conditions.flatMap(({ condition, bodies, where, state }) => {
    const isAboard = [...bodies.weights, ...bodies.displacers].some(one => one.entry === entry);
    if (!isAboard) return [];
    if (where === 'submerged') return [[condition.title, contributionSubmerged(analysis, entry, bodies)] as const];
    if (state.status !== 'afloat') return [];
    const sums = emptyImmersion();
    const body = bodyOf(analysis, entry);
    if (body) addImmersed(body, state.up, state.level, sums);
    return [[condition.title, contribution(analysis, entry, sums, bodies.density)] as const];
  });

const bodyOf = ({ bodies }: Analysis, entry: Weighed) =>
  bodies.displacers.find(displacer => displacer.entry === entry)?.body ?? null;

function contribution({ boat }: Analysis, entry: Weighed, wet: Immersion, density: number): Contribution {
  const midships = boat.length / 2;
  return {
    volume: wet.volume,
    net: entry.mass - density * wet.volume,
    aft: entry.mass * (entry.centroid[0] - midships) - density * (wet.mx - midships * wet.volume),
    starboard: entry.mass * entry.centroid[1] - density * wet.my,
  };
}

/** A moment in kg·m with the word for its side; null for one that rounds to nothing. */
export function sidedMoment(
  moment: number,
  { boat: { units } }: Analysis,
  [positive, negative]: readonly [string, string],
): string | null {
  const size = momentText(Math.abs(moment), units);
  return /[1-9]/.test(size) ? `${size} ${moment > 0 ? positive : negative}` : null;
}
