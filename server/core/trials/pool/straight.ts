import type { Trial } from '../../boat/trial.ts';
import { innerProduct } from '../estimation/leastSquares.ts';
import type { Straight } from '../estimation/space.ts';
import { BELIEVED } from './beliefs.ts';
import { type Foretold, PLACES, type ReadingOf, type Supposed } from './foretold.ts';

/** The loads of a weight in each place: its mass and its moments. */
const PARTS = 4;
export const LOADS = PLACES.length * PARTS;

/**
 * Straight lines about a supposed boat, counted from the file: what is left of each reading when all inputs are as filed and
 * nothing is hidden. Behind the boat's inputs come those of the day: what the readings of one kind have in common.
 */
export function straightOf(foretold: Foretold, supposed: Supposed, items: readonly (readonly number[])[]): Straight {
  const { readings, inputs, values, slopes, loads } = foretold;
  const at = inputs.map(({ id }) => supposed.off.get(id) ?? 0);
  const zeros = zerosOf(readings);
  const sigmas = readings.map(({ reading, trial }) => sigmaOf(reading, trial));
  const share = Math.sqrt(BELIEVED.shared);
  return {
    rest: readings.map(
      ({ reading, place }, i) =>
        reading.value - values[i]! + innerProduct(slopes[i]!, at) + innerProduct(loads[i]!, supposed.loads[place]),
    ),
    slopes: slopes.map((row, i) => [...row, ...zeros.map(zero => (zero.includes(i) ? share * sigmas[i]! : 0))]),
    errors: readings.map((_, i) =>
      zeros.some(zero => zero.includes(i)) ? sigmas[i]! * Math.sqrt(1 - BELIEVED.shared) : sigmas[i]!,
    ),
    columns: [
      ...items,
      ...PLACES.flatMap(place =>
        [0, 1, 2, 3].map(part => readings.map((of, i) => (of.place === place ? loads[i]![part]! : 0))),
      ),
    ],
  };
}

/** Readings of one kind on one day, each group by its places; a reading that has no like shares nothing. */
function zerosOf(readings: readonly ReadingOf[]): readonly (readonly number[])[] {
  const groups = new Map<string, number[]>();
  for (const [i, { reading, trial }] of readings.entries()) {
    const key = `${reading.of} ${trial.date ?? trial.path.join(' ')}`;
    const group = groups.get(key) ?? [];
    group.push(i);
    groups.set(key, group);
  }
  return [...groups.values()].filter(group => group.length > 1);
}

/** A tilt is as sure as its angle, the weight and the way that it was moved. */
export function sigmaOf(reading: Trial['readings'][number], { shifts }: Trial): number {
  const shift = reading.of === 'tilt' ? shifts[reading.shift] : undefined;
  if (!shift) return reading.sigma;
  const { mass, moved } = shift;
  return Math.hypot(
    reading.sigma,
    reading.value * (mass.sigma / mass.value),
    reading.value * (moved.sigma / moved.value),
  );
}
