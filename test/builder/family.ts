import { type Seeded, seeded } from '../helpers/seeded.ts';
import { arrange } from './arrange.ts';
import { type Plan, type PlanBay, planOf } from './plan.ts';

/** A boat as its builder has written it down, and what there is to know of it. */
export interface FamilyBoat {
  readonly seed: number;
  readonly text: string;
  readonly plan: Plan;
  /** Of all of it afloat, g. */
  readonly mass: number;
}

/**
 * A boat of the family, out of trim by pieces that it lacks: everything about it was arranged so that it would float on
 * its painted waterline and hang level with them in its bays. Drawings that cannot be arranged so are drawn again.
 */
export function familyBoat(seed: number, wide = false): FamilyBoat {
  for (let again = 0; again < 40; again++) {
    const random = seeded(Math.imul(seed * 40 + again, 0x9e3779b1));
    const plan = planOf(random, wide);
    const made = arrange(plan, { pieces: piecesIn(plan, random), fill: span(random, 0.55, 0.72) });
    if (made) return { seed, plan, ...made };
  }
  throw new Error(`no boat can be arranged for seed ${seed}`);
}

export const span = ({ even }: Seeded, from: number, to: number): number => from + (to - from) * even();

/** A piece that would trim the boat. Sizes mm, masses g. */
export interface TrimPiece {
  readonly bay: PlanBay;
  readonly mass: number;
  readonly station: number;
}

const LEAD = 11.34e-3;

/** Pieces in some of the bays, each worth up to a hundredth of the boat in water. */
function piecesIn({ bays, mass, strips }: Plan, random: Seeded): readonly TrimPiece[] {
  return bays
    .filter(() => random.even() < 0.45)
    .map(bay => {
      const isLead = bay.takes === 'lead';
      const [breadth, depth] = isLead ? strips.lead : strips.foam;
      const worth = span(random, 0.15, 1) * 0.01 * mass;
      const perLength = breadth * depth * (isLead ? LEAD : 0.03e-3);
      const room = bay.station[1] - bay.station[0];
      const weight = Math.min(isLead ? worth : worth * 0.03, 0.7 * room * perLength);
      const half = weight / perLength / 2;
      return { bay, mass: weight, station: span(random, bay.station[0] + half, bay.station[1] - half) };
    });
}
