import type { FloatingState } from '../conditions/float.ts';
import type { Reading } from '../conditions/readings.ts';
import { addScaled, type Vec3 } from '../geometry/form/vector.ts';
import { type Arrangement, floatBoat } from './floatBoat.ts';
import type { Input } from './input.ts';
import { whiten } from './normal.ts';
import { type Owner, residualLoadsOf } from './residualLoads.ts';

/** How readings answer to inputs, to first order. */
export interface Sensitivities {
  readonly floating: FloatingState;
  /** Of each reading as the boat lies, SI. */
  readonly values: readonly number[];
  /** For each input its change of each reading when it is more by one uncertainty (its `sigma`), SI. */
  readonly changes: readonly (readonly number[])[];
}

/** Part of the uncertainty in the loads by which the boat is pushed to either side to see how it answers. */
const NUDGE = 0.1;

/**
 * First-order answers of any readings of a laid boat (a condition, or a trial with its pieces aboard) to any of its inputs.
 * `owner.source.boat` is the boat that the arrangement's bodies are made of; in the same water. Null where the boat does
 * not come to rest.
 *
 * Every input is a push (a weight and its moment) on the boat held where it lies; how the boat gives way to a push is the
 * same whichever input it is from, so that four nudges tell it for all.
 */
export function sensitivitiesOf(
  owner: Owner,
  inputs: readonly Input[],
  arrangement: Arrangement,
  readings: readonly Reading[],
): Sensitivities | null {
  const floating = floatBoat(arrangement);
  if (!floating) return null;
  const residuals = residualLoadsOf(owner, inputs, { arrangement, floating }, readings);
  const loads = residuals.map(({ mass, moment }) => [mass, ...moment]);
  const { columns, weights } = whiten(loads, 4);
  const slopes = columns.map(column => {
    const more = floatBoat(nudged(arrangement, column, NUDGE), floating);
    const less = floatBoat(nudged(arrangement, column, -NUDGE), floating);
    return readings.map(reading => {
      const [from, to] = [less ?? floating, more ?? floating];
      const apart = (more ? NUDGE : 0) + (less ? NUDGE : 0);
      return apart > 0 ? (reading(to) - reading(from)) / apart : 0;
    });
  });
  return {
    floating,
    values: readings.map(reading => reading(floating)),
    changes: residuals.map(({ direct }, i) =>
      direct.map((change, r) => slopes.reduce((sum, slope, k) => sum + slope[r]! * weights[i]![k]!, change)),
    ),
  };
}

function nudged(arrangement: Arrangement, column: readonly number[], by: number): Arrangement {
  const { bodies } = arrangement;
  const [mass, ...moment] = column as readonly [number, number, number, number];
  const massMoment = addScaled(bodies.massMoment, moment as Vec3, by);
  return { ...arrangement, bodies: { ...bodies, mass: bodies.mass + mass * by, massMoment } };
}
