import type { StateFigure } from '../conditions/readings.ts';
import { finish, type Steps } from '../steps/steps.ts';
import type { FloatedBoat } from './floatBoat.ts';
import { type Drift, driftsOf, type Held, heldBoat, sideOf } from './heldBoat.ts';
import type { Input } from './input.ts';
import type { Owner } from './owner.ts';
import { changeOf, residualLoadBy } from './residualLoadBy.ts';
import { variationOf } from './variations.ts';

/**
 * What inputs that are off by their uncertainties do to a boat held where it lies, input by input: the weight less buoyancy
 * that is then too much there (kg), its moment about the origin (kg·m), and what it does to each reading by itself before the
 * boat gives way (a broader tank has more free surface, whatever it weighs). It is half the difference of what the input does
 * at one uncertainty more and at one less.
 *
 * Only what an input touches is looked at, and only what the surface cuts is cut: what lies wholly under it or above weighs
 * and displaces so much more wherever that is.
 */
export interface ResidualLoads {
  readonly inputs: readonly Input[];
  /** The mass, and the moment along each axis: four rows of as many numbers as there are inputs. */
  readonly loads: readonly Float64Array[];
  /** A row for each reading. */
  readonly direct: readonly Float64Array[];
  /** 1 for what is a weight more or less and nothing besides: the same wherever the boat lies. */
  readonly isBareWeight: Uint8Array;
}

/** A mass and its moment along each axis. */
const LOADS = 4;

/** Inputs that the surface cuts which are looked at in one step. */
const CUT_A_STEP = 8;

export function* residualLoadSteps(
  owner: Owner,
  inputs: readonly Input[],
  floated: FloatedBoat,
  readings: readonly StateFigure[],
): Steps<ResidualLoads> {
  const rows = (count: number) => Array.from({ length: count }, () => new Float64Array(inputs.length));
  const found: ResidualLoads = {
    inputs,
    loads: rows(LOADS),
    direct: rows(readings.length),
    isBareWeight: new Uint8Array(inputs.length),
  };
  const held = heldBoat(floated, readings);
  const pushWhole = wholePusher(owner, held, found);
  let cut = 0;
  for (let i = 0; i < inputs.length; i++) {
    if (pushWhole(i)) continue;
    cut += 1;
    if (cut % CUT_A_STEP === 0) yield;
    push(owner, held, found, i);
  }
  return found;
}

/** The same at once. */
export const residualLoadsOf = (...asked: Parameters<typeof residualLoadSteps>): ResidualLoads =>
  finish(residualLoadSteps(...asked));

/** Part of the boat's volume up to which a reading follows more of it along a straight line. */
const STRAIGHT = 1e-3;

/** Notes what an input pushes of which the surface cuts no entry; false, and notes nothing, where it cuts one or is too broad. */
function wholePusher(
  { source, variations }: Owner,
  held: Held,
  { inputs, loads, direct, isBareWeight }: ResidualLoads,
) {
  const drifts = driftsOf(held);
  const { density, volume } = held.floating;
  const most = STRAIGHT * volume;
  // Mass and its moment, and what is displaced under water, volume and moment.
  const sums = new Float64Array(2 * LOADS);
  return (i: number): boolean => {
    const { target } = inputs[i]!;
    if (target.on === 'water') return false;
    sums.fill(0);
    let above = 0;
    let isBare = true;
    for (const at of target.at) {
      const { half, box, isTank, isBareWeight: isWeight } = variationOf(source, inputs[i]!, at, variations);
      if (isTank) return false;
      const side = box ? sideOf(held, box) : 'under';
      if (side === 'cut') return false;
      isBare &&= isWeight;
      const isUnder = side === 'under';
      for (let k = 0; k < LOADS; k++) sums[k]! += half[k]!;
      if (isUnder) for (let k = LOADS; k < 2 * LOADS; k++) sums[k]! += half[k]!;
      else above += half[LOADS]!;
    }
    if (Math.abs(sums[LOADS]!) + Math.abs(above) > most) return false;
    isBareWeight[i] = Number(isBare);
    for (let k = 0; k < LOADS; k++) loads[k]![i] = sums[k]! - density * sums[LOADS + k]!;
    if (!isBare) for (const [r, row] of direct.entries()) row[i] = driftBy(drifts[r]!, sums, above);
    return true;
  };
}

const driftBy = ({ under, above }: Drift, sums: Float64Array, volumeAbove: number): number =>
  under[0] * sums[LOADS]! +
  under[1] * sums[LOADS + 1]! +
  under[2] * sums[LOADS + 2]! +
  under[3] * sums[LOADS + 3]! +
  above * volumeAbove;

/** Notes what an input pushes by cutting all that it changes. */
function push(owner: Owner, held: Held, { inputs, loads, direct }: ResidualLoads, i: number): void {
  const [more, less] = changeOf(owner, inputs[i]!);
  const [ofMore, ofLess] = [residualLoadBy(held, more), residualLoadBy(held, less)];
  loads[0]![i] = (ofMore.mass - ofLess.mass) / 2;
  for (const axis of [0, 1, 2] as const) loads[axis + 1]![i] = (ofMore.moment[axis] - ofLess.moment[axis]) / 2;
  for (const [r, row] of direct.entries()) row[i] = (ofMore.direct[r]! - ofLess.direct[r]!) / 2;
}

/** What each input does to a reading, where one of each load does so much to it. */
export const changesBy = ({ loads, direct }: ResidualLoads, reading: number, byLoad: readonly number[]): Float64Array =>
  direct[reading]!.map((own, i) => loads.reduce((sum, load, part) => sum + byLoad[part]! * load[i]!, own));
