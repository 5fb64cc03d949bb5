import type { Boat } from '../boat/boat.ts';
import type { BoatSource } from '../boat/source.ts';
import { assembleBodies, type Bodies, type BodyCache, bodySteps } from '../bodies/assemble.ts';
import { shareFills } from '../bodies/tankWater.ts';
import { type Blow, blowOf } from '../conditions/blowing.ts';
import { floatIn, inBoth, type LoadedCondition, submergedOf } from '../conditions/loadingCondition.ts';
import { type StabilityAfloat, stabilitySteps } from '../conditions/stabilityAfloat.ts';
import { floatSubmerged, type Submerged } from '../conditions/submerged.ts';
import { floatSurfaced, type Surfaced } from '../conditions/surfaced.ts';
import { sizeTanks, type TankSizing } from '../conditions/tankSizing.ts';
import { type TransitStep, transitSteps } from '../conditions/transit.ts';
import { type WithLevers, withLevers } from '../conditions/withLevers.ts';
import type { Scheme } from '../figures/scheme.ts';
import { type StillWanted, wantedOf } from '../planning/wanted.ts';
import { inSteps, type Steps, type Working } from '../steps/steps.ts';

/** A boat with how it lies in every condition. */
export interface BoatInWater {
  readonly boat: Boat;
  /** The boat with what it was read from, to be read again with other figures. */
  readonly source: BoatSource;
  readonly bodies: Bodies;
  readonly surfaced: Surfaced;
  readonly submerged: Submerged;
  /** The scheme's loading conditions besides these two. */
  readonly others: readonly LoadedCondition[];
  /** Every loading condition with the boat in it: surfaced and submerged, then the scheme's others. */
  readonly conditions: readonly WithLevers[];
  /** The way down, from empty tanks to neutral; empty when the boat does not float, or cannot hang neutral. */
  readonly transit: Working<readonly TransitStep[]>;
  /** Where else it may come to rest; like the way down it takes as long as all conditions together, and is figured when asked for. */
  readonly stability: Working<StabilityAfloat>;
  /** What each tank should hold; empty when the boat cannot hang neutral. */
  readonly tankSizes: readonly TankSizing[];
  /** What it takes to blow those of its tanks that are blown; empty when it does not come to rest under water. */
  readonly blows: readonly Blow[];
  /** What it still lacks for its painted waterline and for the dive; null where that cannot be told. */
  readonly wanted: StillWanted | null;
}

/** A boat put into the water; in the conditions of a scheme. */
export function* floated(source: BoatSource, scheme: Scheme, cache: BodyCache): Steps<BoatInWater> {
  const { boat } = source;
  const bodies = yield* bodySteps(boat, cache);
  yield;
  const surfaced = floatSurfaced(bodies, boat.length);
  yield;
  const submerged = floatSubmerged(bodies, submergedOf(boat).loading);
  const others: LoadedCondition[] = [];
  for (const condition of scheme.others) {
    yield;
    const there = condition.aboard ? assembleBodies(condition.aboard(source).boat, cache) : bodies;
    others.push(floatIn(condition, there, boat.length));
  }
  yield;
  const both = inBoth(surfaced, submerged).map(inCondition => ({ ...inCondition, bodies }));
  const conditions = [...both, ...others].map(withLevers);
  return {
    boat,
    source,
    bodies,
    surfaced,
    submerged,
    others,
    conditions,
    transit: inSteps(() => transitSteps(bodies, surfaced, submerged, boat.length)),
    stability: inSteps(() => stabilitySteps(bodies, surfaced, conditions[0]!.levers)),
    tankSizes: submerged.status === 'neutral' && submerged.heldDown === null ? sizeTanks(bodies, submerged.fill) : [],
    blows: blowsOf(boat, bodies, submerged),
    wanted: wantedOf(boat, bodies),
  };
}

/** Each by the water that it holds under water. */
function blowsOf({ water }: Boat, { tanks }: Bodies, submerged: Submerged): readonly Blow[] {
  if (submerged.status !== 'neutral') return [];
  const fills = shareFills(tanks, submerged.fill);
  return tanks.flatMap(({ tank, capacity }, i) =>
    tank.blow && tank.kind !== 'piston' ? [blowOf(tank, tank.blow, fills[i]! * capacity, water)] : [],
  );
}

/** The part of a wider value that says how the boat lies. */
export const inWaterOf = ({
  boat,
  source,
  bodies,
  surfaced,
  submerged,
  others,
  conditions,
  transit,
  stability,
  tankSizes,
  blows,
  wanted,
}: BoatInWater): BoatInWater => ({
  boat,
  source,
  bodies,
  surfaced,
  submerged,
  others,
  conditions,
  transit,
  stability,
  tankSizes,
  blows,
  wanted,
});
