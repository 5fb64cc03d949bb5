import { capacityOf } from '../../bodies/tankWater.ts';
import { GOOD_FILL } from '../../conditions/tankSizing.ts';
import type { Comparison } from './compare.ts';

/** What a boat that hung neutral in a trial says of its tanks, whatever the file does. */
export interface TankAsRead {
  /** Of all tanks together as they are, 0..1. */
  readonly fill: number;
  /** What all tanks together should hold for the neutral fill to be a good one, m3. */
  readonly wanted: number;
}

/** By the first reading of the water in the tanks; null where none was taken of a boat under water. */
export function tankAsRead({ trial, readings, floatedTrial }: Comparison): TankAsRead | null {
  const read = readings
    .map(({ reading }) => reading)
    .find(({ of, isSlip }) => !isSlip && (of === 'fill' || of === 'water'));
  if (!read || trial.condition !== 'submerged' || !floatedTrial) return null;
  const capacity = capacityOf(floatedTrial.rest.floating.tanks);
  const water = read.of === 'fill' ? read.value * capacity : read.value;
  return { fill: water / capacity, wanted: water / GOOD_FILL };
}
