import { pacer, type Steps } from '../../steps/steps.ts';
import { product } from '../../uncertainty/normal.ts';
import type { ResidualLoads } from '../../uncertainty/residualLoads.ts';
import type { Belief } from '../../uncertainty/spread.ts';
import { backward, cholesky, forward, type Matrix, type Triangle } from '../estimation/cholesky.ts';
import { more, type SeenSum, type Weights } from '../estimation/space.ts';
import type { DayInput } from './day.ts';
import { PLACES, type WaterPlace } from './foretold.ts';
import type { Explanation } from './weigh.ts';

/** A boat's inputs, and the load of what is not written down in one place, as an explanation has them. */
export interface View {
  readonly explanation: Explanation;
  /** Covariance of two sums over the inputs and the load. */
  covariance(a: Sum, b: Sum): number;
  /** A sum through the readings, its load that of all places in turn; and an input alone, null for one of which they do not tell. */
  seen(row: Sum): SeenSum;
  seenAlone(at: number): SeenSum | null;
}

/** So much of each input, in its own standard uncertainties, and of each part of the load. */
export interface Sum {
  readonly inputs: ArrayLike<number>;
  readonly load: readonly number[];
}

const NO_LOAD = [0, 0, 0, 0];

/** `all` are the inputs that the explanation knows of, in its order. */
export function viewOf(
  explanation: Explanation,
  all: readonly DayInput[],
  inputs: readonly DayInput[],
  place: WaterPlace,
): View {
  const { known, items, load } = explanation;
  const ids = new Map(all.map(({ id }, k) => [id, k]));
  const from = items.length + 4 * PLACES.indexOf(place);
  const strays = items.flatMap(({ shifts }, n) =>
    shifts.flatMap(({ input, by }) => {
      const at = inputs.findIndex(({ id }) => id === input.id);
      return at < 0 ? [] : [{ at, n, by: by / inputs[at]!.sigma }];
    }),
  );
  // An input of which no reading tells is as it was before: independent of all others.
  const apart = inputs.map(({ id }) => !ids.has(id));
  const whole = (sum: Sum): Weights => {
    const x = new Array<number>(known.x.length).fill(0);
    const w = new Array<number>(known.w.mean.length).fill(0);
    for (const [i, { id }] of inputs.entries()) {
      const k = ids.get(id);
      if (k !== undefined) x[k] = sum.inputs[i]!;
    }
    for (const { at, n, by } of strays) w[n]! += sum.inputs[at]! * by;
    if (load) for (const [part, value] of sum.load.entries()) w[from + part]! += value;
    return { x, w };
  };
  const alone = (at: number): Sum => ({ inputs: inputs.map((_, k) => (k === at ? 1 : 0)), load: [] });
  return {
    explanation,
    seen: sum => known.seen(whole(sum)),
    seenAlone: at => {
      const k = ids.get(inputs[at]!.id);
      if (k === undefined) return null;
      return strays.some(stray => stray.at === at) ? known.seen(whole(alone(at))) : known.seenAlone(k);
    },
    covariance: (a, b) =>
      known.covariance(whole(a), whole(b)) +
      apart.reduce((sum, isApart, i) => sum + (isApart ? a.inputs[i]! * b.inputs[i]! : 0), 0),
  };
}

/** Inputs that are looked at in one step. */
const STEP = 500;

/** The loads that the inputs push, and with them that of what is not written down, as an explanation has them. */
export function* beliefOf(
  { covariance, seen, seenAlone }: View,
  { inputs, loads: pushed }: ResidualLoads,
): Steps<Belief & { readonly triangle: Triangle }> {
  const loads = pushed.map((row, part): Sum => ({ inputs: row, load: NO_LOAD.map((_, k) => (k === part ? 1 : 0)) }));
  const between: (readonly number[])[] = [];
  for (const a of loads) {
    between.push(loads.map(b => covariance(a, b)));
    yield;
  }
  const triangle = triangleOf(between);
  const alone: (SeenSum | null)[] = [];
  const isDue = pacer(STEP);
  for (const i of inputs.keys()) {
    alone.push(seenAlone(i));
    if (isDue(1)) yield;
  }
  const withOne = (i: number, sum: Sum, as: SeenSum): number => sum.inputs[i]! + (alone[i] ? more(alone[i], as) : 0);
  const seenLoads = loads.map(seen);
  yield;
  const weights = NO_LOAD.map(() => new Float64Array(inputs.length));
  for (const i of inputs.keys()) {
    const parts = forward(
      triangle,
      loads.map((load, part) => withOne(i, load, seenLoads[part]!)),
    );
    for (const [k, row] of weights.entries()) row[i] = parts[k]!;
  }
  const column = (k: number) => NO_LOAD.map((_, part) => triangle[part]![k] ?? 0);
  const columns = NO_LOAD.map((_, k) => column(k));
  const beside = columns.map((load, k) => load.map((value, part) => value - product(pushed[part]!, weights[k]!)));
  const byInput = (byLoad: readonly number[]) => {
    const ofLoad = backward(triangle, byLoad);
    return Float64Array.from(inputs, (_, i) => pushed.reduce((sum, row, part) => sum + row[i]! * ofLoad[part]!, 0));
  };
  return {
    columns,
    weights,
    triangle,
    more: z => NO_LOAD.map((_, part) => z.reduce((sum, value, k) => sum + value * beside[k]![part]!, 0)),
    variance: sum => {
      const whole = { inputs: sum, load: NO_LOAD };
      return covariance(whole, whole);
    },
    byInput,
    parts: (sum, byLoad) => {
      const whole = { inputs: sum, load: backward(triangle, byLoad) };
      const as = seen(whole);
      return sum.map((change, i) => (change === 0 ? 0 : Math.max(0, change * withOne(i, whole, as))));
    },
  };
}

/** Of loads that hang on each other, or of which nothing is open, as near as rounding lets. */
function triangleOf(covariance: Matrix): Triangle {
  const sizes = covariance.map((row, i) => Math.sqrt(Math.max(row[i]!, 0)) || NEGLIGIBLE);
  const scaled = covariance.map((row, i) =>
    row.map((value, k) => value / (sizes[i]! * sizes[k]!) + (i === k ? ROUNDING : 0)),
  );
  return cholesky(scaled)!.map((row, i) => row.map(value => value * sizes[i]!));
}

const NEGLIGIBLE = 1e-12;
const ROUNDING = 1e-9;
