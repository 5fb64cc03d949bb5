import { readWater } from '../boat/readWater.ts';
import type { BoatSource } from '../boat/source.ts';
import type { BodyCache } from '../bodies/assemble.ts';
import type { TankBody } from '../bodies/tankWater.ts';
import { type BallastWater, ballastWater } from '../conditions/ballastWater.ts';
import type { EnergyState } from '../conditions/energy.ts';
import { type FloatingState, tankLoad, waterAfloat } from '../conditions/float.ts';
import type { StateFigure } from '../conditions/readings.ts';
import { centralTensor, scaleTensor } from '../conditions/tensor.ts';
import { addDifference, addImmersed, addWhole, emptyImmersion, type Immersion } from '../geometry/cut/immersion.ts';
import { add, addScaled, scale, subtract, type Vec3 } from '../geometry/form/vector.ts';
import { finish, type Steps } from '../steps/steps.ts';
import { type Exchange, joinedExchange, type MassAndMoment, NO_EXCHANGE } from './exchange.ts';
import type { Arrangement } from './floatBoat.ts';
import type { Input } from './input.ts';
import { type VariationCache, variationOf } from './variations.ts';

/**
 * What an input that is off by its uncertainty does to a boat held where it lies: the weight less buoyancy that is then too
 * much there (kg), its moment about the origin (kg·m), and what it does to each reading by itself before the boat gives
 * way (a broader tank has more free surface, whatever it weighs).
 *
 * Only what the input touches is looked at, so that the whole list costs little more than one look at the boat.
 */
export interface ResidualLoad {
  readonly input: Input;
  readonly mass: number;
  readonly moment: Vec3;
  /** In the order of the readings. */
  readonly direct: readonly number[];
  /** It is a weight more or less and nothing besides: the same wherever the boat lies. */
  readonly isBareWeight: boolean;
}

/** Whose inputs they are: the boat by its entries, and what was made of them before. */
export interface Owner {
  readonly source: BoatSource;
  readonly cache: BodyCache;
  readonly variations: VariationCache;
}

/** A boat with how it lies. */
export interface FloatedBoat {
  readonly arrangement: Arrangement;
  readonly floating: FloatingState;
}

/** Inputs that are looked at in one step. */
const INPUTS_A_STEP = 8;

/** Half the difference of what the input does at one uncertainty more and at one less. */
export function* residualLoadSteps(
  owner: Owner,
  inputs: readonly Input[],
  { arrangement, floating }: FloatedBoat,
  readings: readonly StateFigure[],
): Steps<readonly ResidualLoad[]> {
  const water = ballastWater(tankLoad(floating.tanks, arrangement.loading, floating.water), floating.state.up, 1);
  const held: Held = { arrangement, floating, water };
  const residuals: ResidualLoad[] = [];
  const nothing = readings.map(() => 0);
  let pushed = 0;
  for (const input of inputs) {
    const weight = bareWeightOf(owner, input);
    if (weight) {
      residuals.push({ input, ...weight, direct: nothing, isBareWeight: true });
      continue;
    }
    pushed += 1;
    if (pushed % INPUTS_A_STEP === 0) yield;
    const [more, less] = changesBy(owner, input).map(change => residualLoadBy(held, change, readings)) as [Felt, Felt];
    residuals.push({
      input,
      mass: (more.mass - less.mass) / 2,
      moment: scale(subtract(more.moment, less.moment), 1 / 2),
      direct: more.direct.map((change, i) => (change - less.direct[i]!) / 2),
      isBareWeight: false,
    });
  }
  return residuals;
}

/** The same at once. */
export const residualLoadsOf = (...asked: Parameters<typeof residualLoadSteps>): readonly ResidualLoad[] =>
  finish(residualLoadSteps(...asked));

type Felt = Pick<ResidualLoad, 'mass' | 'moment' | 'direct'>;

function bareWeightOf({ source, variations }: Owner, input: Input): MassAndMoment | null {
  const { target } = input;
  if (target.on === 'water') return null;
  if (target.at.length === 1) return variationOf(source, input, target.at[0]!, variations).bareWeight;
  let mass = 0;
  let moment: Vec3 = [0, 0, 0];
  for (const at of target.at) {
    const { bareWeight } = variationOf(source, input, at, variations);
    if (!bareWeight) return null;
    mass += bareWeight.mass;
    moment = add(moment, bareWeight.moment);
  }
  return { mass, moment };
}

/** Some bodies instead of others, in some water. */
interface Change {
  readonly exchange: Exchange;
  readonly density: number;
}

/** What an input changes when it is one uncertainty more, and one less. */
function changesBy({ source, variations }: Owner, input: Input): readonly [Change, Change] {
  const { target, sigma } = input;
  const { density } = source.boat.water;
  if (target.on === 'water') {
    const at = (by: number) => readWater(target.edit(source.water ?? {}, by), []).density;
    return [
      { exchange: NO_EXCHANGE, density: at(sigma) },
      { exchange: NO_EXCHANGE, density: at(-sigma) },
    ];
  }
  const varied = target.at.map(at => variationOf(source, input, at, variations));
  return [
    { exchange: joinedExchange(varied.map(({ more }) => more)), density },
    { exchange: joinedExchange(varied.map(({ less }) => less)), density },
  ];
}

/** A boat held in place, with its tank water as it lies there. */
interface Held {
  readonly arrangement: Arrangement;
  readonly floating: FloatingState;
  /** By volume: the density may change. */
  readonly water: BallastWater;
}

function residualLoadBy(held: Held, { exchange, density }: Change, readings: readonly StateFigure[]): Felt {
  const { was, is, weight, displaced } = exchange;
  const { floating, arrangement } = held;
  const { state } = floating;
  const immersed = immersionWith(floating, exchange, isUnder(arrangement));
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

/** All of it is under water. */
const isUnder = ({ loading: { kind } }: Arrangement): boolean => kind !== 'own' && kind !== 'fill';

/** Hanging neutral the ballast is held, whatever the tanks become; else each tank keeps its fill. */
function waterNow({ arrangement: { loading }, floating }: Held, tanks: readonly TankBody[]): number {
  return loading.kind === 'neutral' || tanks === floating.tanks ? floating.water : waterAfloat(tanks, loading);
}

function replaced(tanks: readonly TankBody[], was: readonly TankBody[], is: readonly TankBody[]): readonly TankBody[] {
  if (was.length === 0) return tanks;
  return tanks.map(body => {
    const i = was.findIndex(({ tank }) => tank === body.tank);
    return i < 0 ? body : is[i]!;
  });
}

/** What is under water when some bodies are others, the surface held. */
function immersionWith({ state }: FloatingState, { was, is, displaced }: Exchange, isSubmerged: boolean): Immersion {
  if (was.displacers.length === 0) return state.immersed;
  const changed = { ...state.immersed };
  if (isSubmerged) {
    addWhole(displaced, changed);
    return changed;
  }
  const [before, after] = [was, is].map(({ displacers }) => {
    const immersed = emptyImmersion();
    for (const { body } of displacers) addImmersed(body, state.up, state.level, immersed);
    return immersed;
  }) as [Immersion, Immersion];
  addDifference(after, before, changed);
  return changed;
}

const momentOf = ({ mx, my, mz }: Immersion): Vec3 => [mx, my, mz];
