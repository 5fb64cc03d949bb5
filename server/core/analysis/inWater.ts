import type { Boat } from '../boat/boat.ts';
import type { BoatSource } from '../boat/source.ts';
import { assembleBodies, type Bodies, type BodyCache } from '../bodies/assemble.ts';
import { floatIn, type InCondition, inBoth } from '../conditions/loadingCondition.ts';
import { type Passage, passageOf } from '../conditions/passage.ts';
import { floatSubmerged, type Submerged } from '../conditions/submerged.ts';
import { floatSurfaced, type Surfaced } from '../conditions/surfaced.ts';
import type { Scheme } from '../figures/scheme.ts';

/** A boat with how it lies in every condition. */
export interface BoatInWater {
  readonly boat: Boat;
  /** The boat with what it was read from, to be read again with other figures. */
  readonly source: BoatSource;
  readonly bodies: Bodies;
  readonly surfaced: Surfaced;
  readonly submerged: Submerged;
  /** Every loading condition with the boat in it: surfaced and submerged, then the scheme's others. */
  readonly conditions: readonly InCondition[];
  readonly passage: Passage;
}

/** A boat put into the water; in the conditions of a scheme. */
export function floated(source: BoatSource, scheme: Scheme, cache: BodyCache): BoatInWater {
  const { boat } = source;
  const bodies = assembleBodies(boat, cache);
  const surfaced = floatSurfaced(bodies, boat.length);
  const submerged = floatSubmerged(bodies);
  const conditions = [
    ...inBoth(surfaced, submerged),
    ...scheme.others.map(condition => {
      const there = condition.aboard ? assembleBodies(condition.aboard(source).boat, cache) : bodies;
      return floatIn(condition, there, boat.length);
    }),
  ];
  const passage = passageOf(bodies, surfaced, submerged, boat.length);
  return { boat, source, bodies, surfaced, submerged, conditions, passage };
}

/** How a boat lies, for another version of it that lies the same. */
export const lyingAs = ({ surfaced, submerged, conditions, passage }: BoatInWater) => ({
  surfaced,
  submerged,
  conditions,
  passage,
});

/** The same entries in the same water: the conditions are the same too. */
export function sameBodies(previous: BoatInWater, bodies: Bodies, boat: Boat): boolean {
  const before = previous.bodies;
  return (
    before.density === bodies.density &&
    previous.boat.length === boat.length &&
    before.weights.length === bodies.weights.length &&
    before.tanks.length === bodies.tanks.length &&
    before.displacers.length === bodies.displacers.length &&
    before.weights.every((weight, i) => weight.entry === bodies.weights[i]?.entry) &&
    before.tanks.every((tank, i) => tank === bodies.tanks[i]) &&
    before.displacers.every((displacer, i) => displacer === bodies.displacers[i])
  );
}
