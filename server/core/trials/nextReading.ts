import { pacer, type Steps } from '../steps/steps.ts';
import { cholesky, forward, inner } from './estimation/cholesky.ts';

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
  readonly find: () => Steps<readonly Readable<What>[]>;
}

/** Of each input by its uncertainty, and of a weight too much with its moments in each place, kg and kg·m. */
export interface ReadingRow {
  readonly inputs: readonly number[];
  /** Afloat, under water and ashore in turn; empty where no such weight counts. */
  readonly loads: readonly number[];
}

/** What the inputs, and a weight, do to a reading, the reading in its own uncertainty. */
type Tells =
  /** Several readings at once. */
  | { readonly of: 'boat'; readonly rows: readonly ReadingRow[] }
  /** One input alone, by its place. */
  | { readonly of: 'input'; readonly at: number; readonly weight: number };

/** What is left open of sums over inputs and weights, each seen once and then held against others. */
export interface Open<Seen> {
  see(row: ReadingRow): Seen;
  /** One input alone, by its place. */
  seeInput(at: number): Seen;
  covariance(a: Seen, b: Seen): number;
}

/** What a reading would leave of a figure's uncertainty. */
export interface Worth<What> {
  readonly what: What;
  /** Uncertainty of the figure afterwards, as a share of what it is now. */
  readonly left: number;
}

/** So many of a set are held against the figure in one step. */
const STEP = 50;

/** Less of an uncertainty (its variance) than this is not worth the walk to the scale. */
const WORTH_KNOWING = 0.05;

/**
 * The reading that takes most of a figure's uncertainty for its trouble, known before it is taken: what a reading will leave open
 * hangs on what it has to do with the figure and on how well it is read, not on what it will show (the value of an experiment
 * beforehand: Lindley, On a measure of the information provided by an experiment, 1956; from memory). Exact where all that is
 * open is normal. What takes so long that it could be no better, did it tell all, is not looked into. Null where none is worth
 * it.
 */
export function* nextReading<What, Seen>(
  figure: Seen,
  open: Open<Seen>,
  sets: readonly Readables<What>[],
): Steps<Worth<What> | null> {
  const now = open.covariance(figure, figure);
  if (!(now > 0)) return null;
  let best = null as { readonly worth: Worth<What>; readonly rate: number } | null;
  for (const set of sets) {
    if (best && 1 / set.trouble < best.rate) continue;
    yield;
    const isDue = pacer(STEP);
    for (const { what, tells, trouble } of yield* set.find()) {
      if (isDue(1)) yield;
      const taken = tells.of === 'boat' ? takenBy(tells.rows, figure, open) : takenByOne(tells, figure, open);
      const left = Math.max(0, 1 - taken / now);
      const rate = (1 - left) / trouble;
      if (1 - left >= WORTH_KNOWING && (!best || rate > best.rate))
        best = { worth: { what, left: Math.sqrt(left) }, rate };
    }
  }
  return best?.worth ?? null;
}

/** What readings take off a figure's variance, each in its own uncertainty (the linear-Gaussian update; from memory). */
export function takenBy<Seen>(rows: readonly ReadingRow[], figure: Seen, open: Open<Seen>): number {
  const seen = rows.map(row => open.see(row));
  const triangle = cholesky(seen.map((a, i) => seen.map((b, k) => open.covariance(a, b) + (i === k ? 1 : 0))));
  if (!triangle) return 0;
  const told = forward(
    triangle,
    seen.map(each => open.covariance(each, figure)),
  );
  return inner(told, told);
}

/** The same of one input by itself. */
function takenByOne<Seen>(
  { at, weight }: { readonly at: number; readonly weight: number },
  figure: Seen,
  open: Open<Seen>,
): number {
  const seen = open.seeInput(at);
  return (weight * open.covariance(seen, figure)) ** 2 / (1 + weight ** 2 * open.covariance(seen, seen));
}

/** Inputs alone, of which nothing was read: independent, with variance one. */
export const UNREAD: Open<ReadingRow | number> = {
  see: row => row,
  seeInput: at => at,
  covariance: (a, b) => {
    if (typeof a === 'number') return typeof b === 'number' ? Number(a === b) : b.inputs[a]!;
    return typeof b === 'number' ? a.inputs[b]! : inner(a.inputs, b.inputs);
  },
};
