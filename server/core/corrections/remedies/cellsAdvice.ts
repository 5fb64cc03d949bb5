import type { Boat, Tank } from '../../boat/boat.ts';
import { canSlice } from '../../geometry/cut/solids.ts';
import type { Steps } from '../../steps/steps.ts';
import type { BoatToTrim } from '../room/boatToTrim.ts';
import { keepsWith } from './besides.ts';

/** Cells that a builder would divide a tank into. */
const CELLS = [2, 3, 4, 6] as const;

/**
 * What would steady a boat that is unstable under water for the water that runs in its tanks: the fewest watertight cells with
 * which it keeps all limits, by itself or with pieces, or else a tank whose water lies still; floated by the full model. Null
 * where the water is not to blame, or none of that would do.
 */
export function* cellsAdvice(boatToTrim: BoatToTrim): Steps<string | null> {
  const { boat, submerged } = boatToTrim;
  const open = boat.tanks.filter(runs);
  if (submerged.status !== 'neutral' || submerged.stable || open.length === 0) return null;
  const names = open.map(({ name }) => `“${name}”`).join(' and ');
  const ways: readonly (readonly [words: string, boat: Boat])[] = [
    ...(open.every(({ form }) => canSlice(form))
      ? CELLS.map(cells => [`in ${cells} watertight cells, one behind the other`, withTanks(boat, { cells })] as const)
      : []),
    [`a piston or bladder tank, in which no water runs`, withTanks(boat, { kind: 'bladder', cells: 1 })],
  ];
  for (const [words, changed] of ways) {
    const besides = yield* keepsWith(boatToTrim, changed);
    if (besides !== null) return `With ${names} ${words}${besides}.`;
  }
  return null;
}

/** Its water has a surface that runs to the lower end. */
const runs = ({ kind }: Tank): boolean => kind === 'vented' || kind === 'sealed';

const withTanks = (boat: Boat, change: Partial<Pick<Tank, 'cells' | 'kind'>>): Boat => ({
  ...boat,
  tanks: boat.tanks.map(tank => (runs(tank) ? { ...tank, ...change } : tank)),
});
