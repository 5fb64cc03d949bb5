import type { StateFigure } from '../conditions/readings.ts';
import type { Steps } from '../steps/steps.ts';
import type { FloatedBoat } from './floatBoat.ts';
import { type Drift, driftsOf, type HeldBoat, heldBoat, IMMERSED, isUnder } from './heldBoat.ts';
import type { Input } from './input.ts';
import { addTo, product } from './normal.ts';
import type { Owner } from './owner.ts';
import { DISPLACED, isBare, isByBodies, sideOf, WEIGHT, WIDTH } from './pushRow.ts';
import { changeOf, immersedBy, residualLoadBy } from './residualLoadBy.ts';
import { rowSteps } from './rows.ts';

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
  const pushing: Pushing = {
    owner,
    held,
    found,
    rows: yield* rowSteps(owner.source, inputs, owner.variations),
    drifts: driftsOf(held),
    immersed: new Float64Array(IMMERSED.length),
  };
  let cut = 0;
  for (let i = 0; i < inputs.length; i++) {
    if (pushWhole(pushing, i)) continue;
    cut += 1;
    if (cut % CUT_A_STEP === 0) yield;
    if (!pushCut(pushing, i)) pushByBodies(pushing, i);
  }
  return found;
}

interface Pushing {
  readonly owner: Owner;
  readonly held: HeldBoat;
  readonly found: ResidualLoads;
  readonly rows: Float64Array;
  readonly drifts: readonly Drift[];
  /** What the input at hand has more under water. */
  readonly immersed: Float64Array;
}

/** Part of the boat's volume, or of its waterplane, up to which a reading follows more of it along a straight line. */
const STRAIGHT = 1e-3;

/** Notes what an input pushes that follows from its row; false, and notes nothing, where the surface cuts it or it is too broad. */
function pushWhole({ held, found, rows, drifts, immersed }: Pushing, i: number): boolean {
  const at = WIDTH * i;
  if (isBare(rows, at)) {
    found.isBareWeight[i] = 1;
    for (let k = 0; k < LOADS; k++) found.loads[k]![i] = rows[at + WEIGHT + k]!;
    return true;
  }
  const { volume, state } = held.floating;
  if (isByBodies(rows, at) || Math.abs(rows[at + DISPLACED]!) > STRAIGHT * volume) return false;
  const side = isUnder(held) ? -1 : sideOf(rows, at, state.up, state.level);
  if (side === 0) return false;
  immersed.fill(0);
  if (side < 0) for (let k = 0; k < LOADS; k++) immersed[k] = rows[at + DISPLACED + k]!;
  note(found, held.floating.density, { rows, drifts, immersed }, i);
  return true;
}

/** Notes what an input pushes whose bodies the surface cuts; false, and notes nothing, where the waterplane bends. */
function pushCut({ owner, held, found, rows, drifts, immersed }: Pushing, i: number): boolean {
  const { target } = found.inputs[i]!;
  const { volume, density, state } = held.floating;
  const at = WIDTH * i;
  if (isByBodies(rows, at) || isUnder(held) || target.on === 'water') return false;
  const changed = immersedBy(owner, found.inputs[i]!, target.at, state);
  if (Math.abs(changed.volume) > STRAIGHT * volume || Math.abs(changed.area) > STRAIGHT * state.immersed.area)
    return false;
  for (let k = 0; k < IMMERSED.length; k++) immersed[k] = changed[IMMERSED[k]!];
  note(found, density, { rows, drifts, immersed }, i);
  return true;
}

/** The weight of its row, less the water that it pushes aside. */
function note(
  { loads, direct }: ResidualLoads,
  density: number,
  { rows, drifts, immersed }: Pick<Pushing, 'rows' | 'drifts' | 'immersed'>,
  i: number,
): void {
  const at = WIDTH * i;
  // Volume and moment come first among the sums.
  for (let k = 0; k < LOADS; k++) loads[k]![i] = rows[at + WEIGHT + k]! - density * immersed[k]!;
  for (let r = 0; r < direct.length; r++) {
    const drift = drifts[r]!;
    direct[r]![i] = drift.volume * rows[at + DISPLACED]! + product(drift.immersed, immersed);
  }
}

/** Notes what an input pushes by the full model of the boat held in place. */
function pushByBodies({ owner, held, found: { inputs, loads, direct } }: Pushing, i: number): void {
  const [more, less] = changeOf(owner, inputs[i]!);
  const [ofMore, ofLess] = [residualLoadBy(held, more), residualLoadBy(held, less)];
  loads[0]![i] = (ofMore.mass - ofLess.mass) / 2;
  for (const axis of [0, 1, 2] as const) loads[axis + 1]![i] = (ofMore.moment[axis] - ofLess.moment[axis]) / 2;
  for (const [r, row] of direct.entries()) row[i] = (ofMore.direct[r]! - ofLess.direct[r]!) / 2;
}

/** What each input does to a reading, where one of each load does so much to it. */
export function changesBy({ loads, direct }: ResidualLoads, reading: number, byLoad: readonly number[]): Float64Array {
  const changes = direct[reading]!.slice();
  for (const [part, load] of loads.entries()) addTo(changes, load, byLoad[part]!);
  return changes;
}
