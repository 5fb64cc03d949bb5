import type { StateFigure } from '../conditions/readings.ts';
import { finish, type Steps } from '../steps/steps.ts';
import type { FloatedBoat } from './floatBoat.ts';
import { type Drift, driftsOf, type Held, heldBoat, isUnder } from './heldBoat.ts';
import type { Input } from './input.ts';
import type { Owner } from './owner.ts';
import { DISPLACED, isBare, isByBodies, sideOf, WEIGHT, WIDTH } from './pushRow.ts';
import { changeOf, residualLoadBy } from './residualLoadBy.ts';
import { rowsOf } from './rows.ts';

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

/** Notes what an input pushes that follows from its row; false, and notes nothing, where it takes a cut or is too broad. */
function wholePusher(
  { source, variations }: Owner,
  held: Held,
  { inputs, loads, direct, isBareWeight }: ResidualLoads,
): (i: number) => boolean {
  const rows = rowsOf(source, inputs, variations);
  const drifts = driftsOf(held);
  const { density, volume, state } = held.floating;
  const most = STRAIGHT * volume;
  const allUnder = isUnder(held);
  return i => {
    const at = WIDTH * i;
    if (isBare(rows, at)) {
      isBareWeight[i] = 1;
      for (let k = 0; k < LOADS; k++) loads[k]![i] = rows[at + WEIGHT + k]!;
      return true;
    }
    if (isByBodies(rows, at) || Math.abs(rows[at + DISPLACED]!) > most) return false;
    const side = allUnder ? -1 : sideOf(rows, at, state.up, state.level);
    if (side === 0) return false;
    const lift = side < 0 ? density : 0;
    for (let k = 0; k < LOADS; k++) loads[k]![i] = rows[at + WEIGHT + k]! - lift * rows[at + DISPLACED + k]!;
    for (let r = 0; r < direct.length; r++) direct[r]![i] = driftBy(drifts[r]!, side, rows, at + DISPLACED);
    return true;
  };
}

/** What so much hull more does to a reading by itself. */
const driftBy = ({ under, above }: Drift, side: -1 | 1, rows: Float64Array, at: number): number =>
  side > 0
    ? above * rows[at]!
    : under[0] * rows[at]! + under[1] * rows[at + 1]! + under[2] * rows[at + 2]! + under[3] * rows[at + 3]!;

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
