import type { Trial } from '../../boat/trial.ts';
import type { Bodies } from '../../bodies/assemble.ts';
import { capacityOf } from '../../bodies/tankWater.ts';
import { UPRIGHT } from '../../conditions/attitude.ts';
import type { FloatingState, Loading } from '../../conditions/float.ts';
import { addImmersed, emptyImmersion } from '../../geometry/cut/immersion.ts';
import type { Vec3 } from '../../geometry/form/vector.ts';
import { type FloatedBoat, floatBoat } from '../../uncertainty/floatBoat.ts';

/**
 * Lays the boat as it lay in a trial: afloat, hanging neutral, or with something left proud of the water; held level under
 * water; on the bench too, for what it weighs and where hangs on no water round it.
 */
export function floatForTrial(bodies: Bodies, trial: Trial, before?: FloatingState): FloatedBoat | null {
  if (bodies.mass <= 0 || bodies.volume <= 0) return null;
  if (trial.condition === 'hung' || trial.condition === 'bench') return floatWith(bodies, { kind: 'hung' });
  if (trial.condition !== 'submerged') return floatWith(bodies, { kind: 'own' }, before);
  if (capacityOf(bodies.tanks) <= 0) return null;
  return trial.proud ? floatProud(bodies, trial.proud.value, before) : floatWith(bodies, { kind: 'neutral' }, before);
}

function floatWith(bodies: Bodies, loading: Loading, before?: FloatingState): FloatedBoat | null {
  const arrangement = { bodies, loading };
  const floating = floatBoat(arrangement, before);
  return floating && { arrangement, floating };
}

/** Rounds until fill and attitude agree, and how nearly: what stands out is thin, so that each round gains several digits. */
const PROUD_ROUNDS = 8;
const SAME_FILL = 1e-10;

/** Almost under water: the highest point of the boat stands `proud` m out of it. */
function floatProud(bodies: Bodies, proud: number, before?: FloatingState): FloatedBoat | null {
  let floated: FloatedBoat | null = null;
  let near = before;
  let last = -1;
  for (let round = 0; round < PROUD_ROUNDS; round++) {
    const fill = ballastFor(bodies, near?.state.up ?? UPRIGHT, proud) / (bodies.density * capacityOf(bodies.tanks));
    if (fill < 0 || fill > 1) return null;
    if (floated && Math.abs(fill - last) < SAME_FILL) break;
    last = fill;
    floated = floatWith(bodies, { kind: 'fill', fill }, near);
    if (!floated) return null;
    near = floated.floating;
  }
  return floated;
}

/** Ballast with which the boat floats so that `proud` m of it stand out, kg. */
function ballastFor({ hull, density, mass }: Bodies, up: Vec3, proud: number): number {
  const sums = emptyImmersion();
  addImmersed(hull, up, hull.extent(up)[1] - proud, sums);
  return density * sums.volume - mass;
}

/** The same boat with a weight moved athwart by a moment, kg·m, to starboard. */
export function floatShifted({ arrangement, floating }: FloatedBoat, moment: number): FloatedBoat | null {
  const { bodies } = arrangement;
  const [x, y, z] = bodies.massMoment;
  return floatWith({ ...bodies, massMoment: [x, y + moment, z] }, arrangement.loading, floating);
}
