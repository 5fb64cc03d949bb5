import type { Path } from '../../../schema/path.ts';
import type { Quantity } from '../../../schema/quantity.ts';
import type { Measured } from './trial.ts';

/**
 * What a reading is good for where the file does not say, one standard uncertainty, SI. Common practice, no source: a
 * tape held to moving water 1.5 mm; a protractor or a phone laid on deck 0.5°; a tank's scale 3 % of it; a measuring jug
 * 2 % and 5 ml at least; a small weight on a kitchen scale 0.5 % and 0.5 g at least, a boat on it 1 g at least; a spring
 * balance 1 % and 2 g at least; a shift along a ruler 1 mm, an edge set under the keel to a mark 0.5 mm; a boat on a knife
 * edge 1 mm.
 */
export const READS = {
  mark: 0.0015,
  angle: Math.PI / 360,
  fill: 0.03,
  proud: 0.002,
  moved: 0.001,
  support: 0.0005,
  balance: 0.001,
} as const;
export const jug = (volume: number): number => Math.max(0.02 * volume, 5e-6);
export const kitchenScale = (mass: number): number => Math.max(0.005 * mass, 0.0005);
export const boatScale = (mass: number): number => Math.max(0.005 * mass, 0.001);
export const springBalance = (mass: number): number => Math.max(0.01 * mass, 0.002);

export const measured = (quantity: Quantity, path: Path, usual: number): Measured => ({
  path,
  value: quantity.value,
  sigma: quantity.sigma ?? usual,
});
