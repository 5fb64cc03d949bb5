import type { Boat } from '../boat/boat.ts';
import type { Trial } from '../boat/trial.ts';
import { tapeStep } from '../wording/numbers.ts';

/** Part of the length from either end at which a first reading is likely to be taken (common practice, no source). */
const FROM_THE_END = 0.08;

/**
 * Where the water is likely to be read, near each end, m: where it was the last time, or else by the boat's length on a round
 * mark of the tape. Null while the boat has no length.
 */
export function markStations(
  { length, units }: Pick<Boat, 'length' | 'units'>,
  trials: readonly Trial[],
): readonly [fore: number, aft: number] | null {
  const read = trials.map(({ readings }) =>
    readings.flatMap(reading => (reading.of === 'mark' ? [reading.station] : [])),
  );
  const last = read.findLast(stations => stations.length > 1);
  if (last) return [Math.min(...last), Math.max(...last)];
  if (!(length > 0)) return null;
  const step = 8 * tapeStep(units);
  const fore = Math.max(1, Math.round((FROM_THE_END * length) / step)) * step;
  return [fore, length - fore];
}
