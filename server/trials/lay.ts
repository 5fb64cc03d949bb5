import type { Trial } from '../boat/trial.ts';
import type { Bodies } from '../bodies/assemble.ts';
import { capacityOf } from '../bodies/tankWater.ts';
import { UPRIGHT } from '../conditions/attitude.ts';
import { type Lie, type Loading, layBoat } from '../doubt/lie.ts';
import type { Laid } from '../doubt/pushes.ts';
import { addImmersed, emptyImmersion } from '../geometry/immersion.ts';
import type { Vec3 } from '../geometry/vector.ts';

/**
 * Lays the boat as it lay in a trial: afloat, hanging neutral, or with something left proud of the water; held level under
 * water; on the bench too, for what it weighs and where hangs on no water round it.
 */
export function layForTrial(bodies: Bodies, trial: Trial, before?: Lie): Laid | null {
  if (bodies.mass <= 0 || bodies.volume <= 0) return null;
  if (trial.condition === 'hung' || trial.condition === 'bench') return lay(bodies, { kind: 'hung' });
  if (trial.condition !== 'submerged') return lay(bodies, { kind: 'own' }, before);
  if (capacityOf(bodies.tanks) <= 0) return null;
  return trial.proud ? layProud(bodies, trial.proud.value, before) : lay(bodies, { kind: 'neutral' }, before);
}

function lay(bodies: Bodies, loading: Loading, before?: Lie): Laid | null {
  const arrangement = { bodies, loading };
  const lie = layBoat(arrangement, before);
  return lie && { arrangement, lie };
}

/** Rounds until fill and attitude agree, and how nearly: what stands out is thin, so that each round gains several digits. */
const PROUD_ROUNDS = 8;
const SAME_FILL = 1e-10;

/** Almost under water: the highest point of the boat stands `proud` m out of it. */
function layProud(bodies: Bodies, proud: number, before?: Lie): Laid | null {
  let laid: Laid | null = null;
  let near = before;
  let last = -1;
  for (let round = 0; round < PROUD_ROUNDS; round++) {
    const fill = ballastFor(bodies, near?.state.up ?? UPRIGHT, proud) / (bodies.density * capacityOf(bodies.tanks));
    if (fill < 0 || fill > 1) return null;
    if (laid && Math.abs(fill - last) < SAME_FILL) break;
    last = fill;
    laid = lay(bodies, { kind: 'fill', fill }, near);
    if (!laid) return null;
    near = laid.lie;
  }
  return laid;
}

/** Ballast with which the boat floats so that `proud` m of it stand out, kg. */
function ballastFor({ hull, density, mass }: Bodies, up: Vec3, proud: number): number {
  const sums = emptyImmersion();
  addImmersed(hull, up, hull.extent(up)[1] - proud, sums);
  return density * sums.volume - mass;
}

/** The same boat with a weight moved athwart by a moment, kg·m, to starboard. */
export function layShifted({ arrangement, lie }: Laid, moment: number): Laid | null {
  const { bodies } = arrangement;
  const [x, y, z] = bodies.massMoment;
  return lay({ ...bodies, massMoment: [x, y + moment, z] }, arrangement.loading, lie);
}
