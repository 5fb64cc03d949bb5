import type { Boat } from '../boat/boat.ts';
import { hullTop } from '../boat/checkTrials.ts';
import type { Reading, Shift, Trial } from '../boat/trial.ts';
import type { Bodies, BodyShelf } from '../bodies/assemble.ts';
import { shareFills } from '../bodies/tankWater.ts';
import { heelOf, surfaceHeight, trimOf, UPRIGHT } from '../conditions/attitude.ts';
import { type Afloat, type EnergyState, energyAt } from '../conditions/energy.ts';
import { settleFrom } from '../conditions/equilibrium.ts';
import { loadedBoat, surfacedBoat, totalMassOf } from '../conditions/load.ts';
import { addImmersed, emptyImmersion } from '../geometry/immersion.ts';
import type { Vec3 } from '../geometry/vector.ts';
import { capacityOf, dayBodies, levelInTank, tankOf } from './dayBoat.ts';

/** What a boat would have shown in a trial. */
export interface Predicted {
  /** One for each reading of the trial, SI; null where the boat as filed would not have floated or hung so. */
  readonly values: readonly (number | null)[];
  /** How it would have lain: for following it from here. */
  readonly rest: Rest | null;
}

export interface Rest {
  readonly up: Vec3;
  /** Displacement with all tank water, kg. */
  readonly displacement: number;
  readonly state: EnergyState;
  /** Fill of all tanks together, for a boat under water, 0..1. */
  readonly fill: number | null;
}

/** What the full model says that this boat would have shown in a trial; `start` is how it lay before a small change. */
export function predictTrial(boat: Boat, trial: Trial, shelf: BodyShelf, start: Vec3 = UPRIGHT): Predicted {
  const bodies = dayBodies(boat, trial, shelf);
  const rest =
    trial.condition === 'submerged'
      ? trial.proud
        ? restProud(bodies, trial.proud.value, start)
        : restNeutral(bodies, start)
      : restAfloat(surfacedBoat(bodies), start);
  if (rest === null) return { values: trial.readings.map(() => null), rest };
  const heels = trial.shifts.map(shift => heelBy(surfacedBoat(bodies), rest, shift));
  return { values: trial.readings.map(reading => predictedOf(reading, { boat, bodies, rest, heels })), rest };
}

interface Shown {
  readonly boat: Boat;
  readonly bodies: Bodies;
  readonly rest: Rest;
  /** Change of heel by each shift. */
  readonly heels: readonly (number | null)[];
}

function predictedOf(reading: Reading, { boat, bodies, rest, heels }: Shown): number | null {
  const { up, fill } = rest;
  switch (reading.of) {
    case 'mark':
      return surfaceHeight(up, rest.state.level, reading.station);
    case 'freeboard': {
      const top = hullTop(boat, reading.station, reading.top);
      return top === null ? null : top - surfaceHeight(up, rest.state.level, reading.station);
    }
    case 'trim':
      return trimOf(up);
    case 'heel':
      return heelOf(up);
    case 'tilt':
      return heels[reading.shift] ?? null;
    case 'fill':
      return fill;
    case 'water':
      return fill === null ? null : fill * capacityOf(bodies.tanks);
    case 'level': {
      const tank = tankOf(reading, bodies.tanks);
      if (!tank || fill === null) return null;
      return levelInTank(tank, shareFills(bodies.tanks, fill)[bodies.tanks.indexOf(tank)]!, up);
    }
  }
}

function restAfloat(boat: Afloat, start: Vec3): Rest | null {
  if (boat.hull.volume <= 0 || totalMassOf(boat) <= 0) return null;
  if (totalMassOf(boat) >= boat.density * boat.hull.volume) return null;
  const found = settleFrom(boat, start);
  if (found.status === 'unsettled' || found.state.up[2] < LEAST_UP) return null;
  return restOf(found.state, null);
}

/** A boat that lies further over than this (cosine) is not the one that was read. */
const LEAST_UP = 0.3;

const restOf = (state: EnergyState, fill: number | null): Rest => ({
  up: state.up,
  displacement: state.totalMass,
  state,
  fill,
});

/**
 * Under water at the neutral fill. A tank that would have to be a little more than full or less than empty is taken so:
 * the reading then tells by how much the file is off.
 */
function restNeutral(bodies: Bodies, start: Vec3): Rest | null {
  const capacity = capacityOf(bodies.tanks);
  if (bodies.mass <= 0 || bodies.volume <= 0 || capacity <= 0) return null;
  const fill = (bodies.density * bodies.volume - bodies.mass) / (bodies.density * capacity);
  return restUnder(bodies, fill, start);
}

function restUnder(bodies: Bodies, fill: number, start: Vec3): Rest | null {
  const found = settleFrom(loadedBoat(bodies, fill, 'submerged'), start);
  return found.status === 'settled' ? restOf(found.state, fill) : null;
}

/** Rounds until fill and attitude agree: what stands out is thin, so that each round gains several digits. */
const PROUD_ROUNDS = 8;

/** Almost under water: the highest point of the boat stands `proud` m out of it. */
function restProud(bodies: Bodies, proud: number, start: Vec3): Rest | null {
  const capacity = capacityOf(bodies.tanks);
  if (bodies.mass <= 0 || bodies.volume <= 0 || capacity <= 0) return null;
  let rest: Rest | null = null;
  let up = start;
  for (let round = 0; round < PROUD_ROUNDS; round++) {
    const fill = fillAt(bodies, up, proud) / (bodies.density * capacity);
    if (fill < 0 || fill > 1) return rest && restOf(rest.state, fill);
    const found = settleFrom(loadedBoat(bodies, fill, 'afloat'), up);
    if (found.status === 'unsettled' || found.state.up[2] < LEAST_UP) return null;
    rest = restOf(found.state, fill);
    up = found.state.up;
  }
  return rest;
}

/** Ballast with which the boat floats so that `proud` m stand out, kg. */
function fillAt(bodies: Bodies, up: Vec3, proud: number): number {
  const boat = loadedBoat(bodies, 0, 'afloat');
  const sums = emptyImmersion();
  addImmersed(boat.hull, up, boat.hull.extent(up)[1] - proud, sums);
  return bodies.density * sums.volume - bodies.mass;
}

/** The heel that a shift makes, rad: the boat settled again with its centre of mass moved athwart. */
function heelBy(boat: Afloat, rest: Rest, { mass, moved }: Shift): number | null {
  const [x, y, z] = boat.massMoment;
  const shifted: Afloat = { ...boat, massMoment: [x, y + mass.value * moved.value, z] };
  const found = settleFrom(shifted, rest.up);
  if (found.status === 'unsettled' || found.state.up[2] < LEAST_UP) return null;
  return heelOf(found.state.up) - heelOf(energyAt(boat, rest.up).up);
}
