import type { Entry } from '../boat/boat.ts';
import { readWater } from '../boat/readWater.ts';
import type { TankBody } from '../bodies/tankWater.ts';
import { ballastWater } from '../conditions/ballastWater.ts';
import type { EnergyState } from '../conditions/energy.ts';
import { type FloatingState, tankLoad } from '../conditions/float.ts';
import { centralTensor, scaleTensor } from '../conditions/tensor.ts';
import {
  addDifference,
  addImmersed,
  addWhole,
  type Cuttable,
  emptyImmersion,
  type Immersion,
} from '../geometry/cut/immersion.ts';
import { add, addScaled, subtract, type Vec3 } from '../geometry/form/vector.ts';
import { type Exchange, joinedExchange, NO_EXCHANGE } from './exchange.ts';
import { type HeldBoat, IMMERSED, isUnder, waterNow } from './heldBoat.ts';
import type { EntryAt, Input } from './input.ts';
import type { Owner } from './owner.ts';
import { variationOf, variedBodies } from './variations.ts';

/** Some bodies instead of others, in some water. */
interface Change {
  readonly exchange: Exchange;
  readonly density: number;
}

/** What an input changes when it is one uncertainty more, and one less. */
export function changeOf({ source, variations }: Owner, input: Input): readonly [more: Change, less: Change] {
  const { target, sigma } = input;
  const { density } = source.boat.water;
  if (target.on === 'water') {
    const at = (by: number) => readWater(target.edit(source.water ?? {}, by), []).density;
    return [
      { exchange: NO_EXCHANGE, density: at(sigma) },
      { exchange: NO_EXCHANGE, density: at(-sigma) },
    ];
  }
  const varied = target.at.map(at =>
    variedBodies(variationOf(source, input, at, variations), source, input, at, variations),
  );
  return [
    { exchange: joinedExchange(varied.map(({ more }) => more)), density },
    { exchange: joinedExchange(varied.map(({ less }) => less)), density },
  ];
}

/** What is more under water where an input's bodies are so much larger or elsewhere: half the difference of more and less. */
export function immersedBy(
  { source, variations }: Owner,
  input: Input,
  at: readonly EntryAt[],
  { up, level }: EnergyState,
): Immersion {
  const [more, less] = [emptyImmersion(), emptyImmersion()];
  for (const place of at) {
    const varied = variedBodies(variationOf(source, input, place, variations), source, input, place, variations);
    for (const { body } of varied.more.is.displacers) addImmersed(body, up, level, more);
    for (const { body } of varied.less.is.displacers) addImmersed(body, up, level, less);
  }
  const changed = emptyImmersion();
  addDifference(more, less, changed);
  for (const key of IMMERSED) changed[key] /= 2;
  return changed;
}

/** What a boat held in place feels: the load that it has too much, and what that does not account for. */
interface Felt {
  readonly mass: number;
  readonly moment: Vec3;
  readonly direct: readonly number[];
}

export function residualLoadBy(held: HeldBoat, { exchange, density }: Change): Felt {
  const { was, is, weight, displaced } = exchange;
  const { floating, arrangement, readings } = held;
  const { state } = floating;
  const immersed = immersionWith(held, exchange);
  const tanks = replaced(floating.tanks, was.tanks, is.tanks);
  const water =
    tanks === floating.tanks
      ? held.water
      : ballastWater(tankLoad(tanks, arrangement.loading, waterNow(held, tanks)), state.up, 1);
  const totalMass = state.totalMass + weight.mass + density * water.mass - floating.density * held.water.mass;
  const totalMoment = addScaled(
    addScaled(add(state.totalMoment, weight.moment), water.moment, density),
    held.water.moment,
    -floating.density,
  );
  const slope = addScaled(totalMoment, momentOf(immersed), -density);
  const changed: EnergyState = {
    ...state,
    slope,
    immersed,
    totalMass,
    totalMoment,
    waterplane: centralTensor(immersed, density),
    freeSurface: scaleTensor(water.surface, density),
  };
  const mass = totalMass - density * immersed.volume - (state.totalMass - floating.density * state.immersed.volume);
  const moment = subtract(slope, state.slope);
  const volume = floating.volume + displaced.volume;
  const now: FloatingState = { ...floating, density, volume, tanks, water: waterNow(held, tanks), state: changed };
  // The same weight put on by itself: what that does to a reading is found when the boat is let go.
  const laden: FloatingState = {
    ...floating,
    state: {
      ...state,
      slope,
      totalMass: state.totalMass + mass,
      totalMoment: add(state.totalMoment, moment),
    },
  };
  return { mass, moment, direct: readings.map(reading => reading(now) - reading(laden)) };
}

function replaced(tanks: readonly TankBody[], was: readonly TankBody[], is: readonly TankBody[]): readonly TankBody[] {
  if (was.length === 0) return tanks;
  return tanks.map(body => {
    const i = was.findIndex(({ tank }) => tank === body.tank);
    return i < 0 ? body : is[i]!;
  });
}

/** What is under water when some bodies are others, the surface held. */
function immersionWith(held: HeldBoat, { was, is, displaced }: Exchange): Immersion {
  const { state } = held.floating;
  if (was.displacers.length === 0) return state.immersed;
  const changed = { ...state.immersed };
  if (isUnder(held)) {
    addWhole(displaced, changed);
    return changed;
  }
  const after = emptyImmersion();
  for (const { body } of is.displacers) addImmersed(body, state.up, state.level, after);
  for (const { entry, body } of was.displacers) addDifference(NOTHING, immersedOf(held, entry, body), after);
  addDifference(after, NOTHING, changed);
  return changed;
}

const NOTHING: Readonly<Immersion> = emptyImmersion();

/** What is under water of one of the boat's own bodies; every input of its entry asks. */
function immersedOf({ floating: { state }, immersions }: HeldBoat, entry: Entry, body: Cuttable): Immersion {
  const known = immersions.get(entry);
  if (known) return known;
  const immersed = emptyImmersion();
  addImmersed(body, state.up, state.level, immersed);
  immersions.set(entry, immersed);
  return immersed;
}

const momentOf = ({ mx, my, mz }: Immersion): Vec3 => [mx, my, mz];
