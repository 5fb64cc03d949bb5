import type { Uncertainty } from '../uncertainty/spread.ts';
import { inner } from './estimation/cholesky.ts';
import { more, type SeenSum } from './estimation/space.ts';
import { type Open, type ReadingRow, UNREAD } from './nextReading.ts';
import type { DayInput } from './pool/day.ts';
import type { Estimate } from './pool/estimate.ts';
import { PLACES } from './pool/foretold.ts';
import { supposedBy } from './pool/suppose.ts';
import { type View, viewOf } from './pool/view.ts';

/** A sum as each explanation has it. */
export interface ByEach {
  /** Over the inputs and loads, or one input alone by its place. */
  readonly row: ReadingRow | number;
  /** What it is on the mean. */
  readonly means: readonly number[];
  /** Null for what no reading tells of. */
  readonly seen: readonly (SeenSum | null)[];
}

/**
 * What the trials leave open, over all explanations that count for a figure: within each by straight lines, and between them by
 * what each has the figure be and foretells for a reading (the law of total variance; as if the mixture were one normal
 * distribution). `inputs` are those that rows count; null where the figure hangs on nothing that is known.
 */
export function openWithTrials(
  { explanations, foretold }: Estimate,
  { value, explained, hangsOn }: Uncertainty,
  inputs: readonly DayInput[],
): { readonly figure: ByEach; readonly open: Open<ByEach> } | null {
  if (!hangsOn) return null;
  const told = explained ?? [{ rank: 0, odds: 1, value }];
  const total = told.reduce((sum, { odds }) => sum + odds, 0);
  const each = told.map(({ rank, odds, value }): Explained => {
    const explanation = explanations[rank]!;
    const { off, loads } = supposedBy(explanation, foretold.inputs);
    return {
      part: odds / total,
      value,
      view: viewOf(explanation, foretold.inputs, inputs, PLACES[0]),
      off: inputs.map(({ id }) => off.get(id) ?? 0),
      loads: PLACES.flatMap(place => loads[place]),
    };
  });
  const see = (row: ReadingRow): ByEach => ({
    row,
    means: each.map(({ off, loads }) => inner(row.inputs, off) + inner(row.loads, loads)),
    seen: each.map(({ view }) => view.seen({ inputs: row.inputs, load: row.loads })),
  });
  const changes = new Map(hangsOn.inputs.map(({ id }, k) => [id, hangsOn.changes[k]!]));
  const row = { inputs: inputs.map(({ id }) => changes.get(id) ?? 0), loads: hangsOn.loads };
  const mean = (of: readonly number[]) => each.reduce((sum, { part }, e) => sum + part * of[e]!, 0);
  return {
    figure: { ...see(row), means: each.map(one => one.value) },
    open: {
      see,
      seeInput: at => ({
        row: at,
        means: each.map(({ off }) => off[at]!),
        seen: each.map(({ view }) => view.seenAlone(at)),
      }),
      covariance: (a, b) => {
        const [meanA, meanB] = [mean(a.means), mean(b.means)];
        return each.reduce(
          (sum, { part }, e) => {
            const [one, two] = [a.seen[e], b.seen[e]];
            const between = (a.means[e]! - meanA) * (b.means[e]! - meanB);
            return sum + part * (between + (one && two ? more(one, two) : 0));
          },
          UNREAD.covariance(a.row, b.row),
        );
      },
    },
  };
}

/** One explanation: its part of all, what it has the figure be, and the boat on the mean. */
interface Explained {
  readonly part: number;
  readonly value: number;
  readonly view: View;
  readonly off: readonly number[];
  readonly loads: readonly number[];
}
