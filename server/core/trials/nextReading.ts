import type { Steps } from '../steps/steps.ts';
import { innerProduct } from './estimation/leastSquares.ts';

/** Something that could be read, weighed or measured. */
export interface Readable<What> {
  readonly what: What;
  readonly tells: Tells;
  /** How long it takes, with what has to be set up, minutes. */
  readonly trouble: number;
}

/** Readings that are found together. */
export interface Readables<What> {
  /** The least trouble of any, minutes. */
  readonly trouble: number;
  readonly find: () => readonly Readable<What>[];
}

/** What every input does to a reading, the input by its uncertainty, the reading in its own. */
type Tells =
  /** Several readings at once. */
  | { readonly of: 'boat'; readonly rows: readonly (readonly number[])[] }
  /** One input alone, by its place. */
  | { readonly of: 'input'; readonly at: number; readonly weight: number };

/** What a reading would leave of a figure's uncertainty. */
export interface Worth<What> {
  readonly what: What;
  /** Uncertainty of the figure afterwards, as a share of what it is now. */
  readonly left: number;
}

/** Less of an uncertainty (its variance) than this is not worth the walk to the scale. */
const WORTH_KNOWING = 0.05;

/**
 * The reading that takes most of a figure's uncertainty for its trouble, known before it is taken: what a reading will leave open
 * hangs on how the inputs act and on how well it is read, not on what it will show (the value of an experiment beforehand:
 * Lindley, On a measure of the information provided by an experiment, 1956; from memory). `figure`: its change for each input
 * by its uncertainty; `known`: the rows of what was read already. What takes so long that it could be no better, did it tell
 * all, is not looked into. Null where none is worth it.
 */
export function* nextReading<What>(
  figure: readonly number[],
  known: readonly (readonly number[])[],
  sets: readonly Readables<What>[],
): Steps<Worth<What> | null> {
  const heard = heardFrom(known);
  const now = varianceBy(figure, heard);
  if (!(now > 0)) return null;
  let best = null as { readonly worth: Worth<What>; readonly rate: number } | null;
  const alongs = heard.map(q => innerProduct(q, figure));
  for (const set of sets) {
    if (best && 1 / set.trouble < best.rate) continue;
    yield;
    for (const { what, tells, trouble } of set.find()) {
      const after =
        tells.of === 'boat' ? varianceAfter(figure, tells.rows, heard) : now - takenByOne(figure, tells, heard, alongs);
      const left = Math.max(0, after / now);
      const rate = (1 - left) / trouble;
      if (1 - left >= WORTH_KNOWING && (!best || rate > best.rate))
        best = { worth: { what, left: Math.sqrt(left) }, rate };
    }
  }
  return best?.worth ?? null;
}

/** Variance of a figure once some readings are known, inputs independent with variance one beforehand. */
export const varianceAfter = (
  figure: readonly number[],
  rows: readonly (readonly number[])[],
  before: readonly (readonly number[])[] = [],
): number => varianceBy(figure, heardFrom(rows, before));

/**
 * What readings take off the inputs' covariance, one after the other: it is I - Σ q·qᵀ, and a reading with the row r takes
 * off p·pᵀ/(1 + r·p), p what it sees of what is left (the linear-Gaussian update, a reading at a time; from memory).
 */
function heardFrom(
  rows: readonly (readonly number[])[],
  before: readonly (readonly number[])[] = [],
): readonly (readonly number[])[] {
  const taken = [...before];
  for (const row of rows) {
    const seen = [...row];
    for (const q of taken) {
      const along = innerProduct(q, row);
      if (along !== 0) for (const k of seen.keys()) seen[k]! -= along * q[k]!;
    }
    const size = Math.sqrt(1 + innerProduct(row, seen));
    taken.push(seen.map(part => part / size));
  }
  return taken;
}

/** What one input by itself takes off a figure's variance: as above, of a row that has nothing else. */
function takenByOne(
  figure: readonly number[],
  { at, weight }: { readonly at: number; readonly weight: number },
  taken: readonly (readonly number[])[],
  alongs: readonly number[],
): number {
  let seen = 1;
  let ofFigure = figure[at]!;
  for (const [i, q] of taken.entries()) {
    seen -= q[at]! ** 2;
    ofFigure -= q[at]! * alongs[i]!;
  }
  return (weight * ofFigure) ** 2 / (1 + weight ** 2 * seen);
}

const varianceBy = (figure: readonly number[], taken: readonly (readonly number[])[]): number =>
  taken.reduce((left, q) => left - innerProduct(q, figure) ** 2, innerProduct(figure, figure));
