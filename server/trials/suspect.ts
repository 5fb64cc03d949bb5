import type { Reading } from '../boat/trial.ts';
import type { Bodies } from '../bodies/assemble.ts';
import type { Vec3 } from '../geometry/vector.ts';
import type { Comparison } from './compare.ts';
import type { DayInput } from './day.ts';
import { UNLISTED } from './hidden.ts';
import { dot, leastSquaresFrom } from './leastSquares.ts';
import type { Slip } from './reconcile.ts';
import { SLIP_SCORE, standings } from './slips.ts';

/** Below this share of what makes a slip there is none, straight lines or not. */
const NEARLY = 0.7;
const MOST = 3;

/**
 * Readings that may be slips, the worst first, by straight lines from what the file says: cheap enough for every keystroke.
 * Besides the figures of the file an unlisted weight is left open, and another one that is felt under water only, for what
 * it pushes aside.
 */
export function suspectsOf(comparisons: readonly Comparison[], inputs: readonly DayInput[]): readonly Slip[] {
  const told = comparisons.filter(({ lay, trial }) => lay !== null && trial.explained === null);
  const [first] = told;
  if (!first?.lay) return [];
  const { bodies } = first.lay.rest.arrangement;
  const ids = [...new Set([...inputs, ...told.flatMap(({ day }) => day.inputs)].map(({ id }) => id))];
  let rows = told.flatMap(comparison => rowsOf(comparison, ids, unlistedLoads(bodies)));
  const suspects: Slip[] = [];
  while (suspects.length < MOST) {
    const worst = worstOf(rows);
    if (!worst) break;
    suspects.push(worst.slip);
    rows = rows.filter(row => row !== worst.row);
  }
  return suspects;
}

/** The row that fits the others least, and what they expect of it; null where all fit. */
function worstOf(rows: readonly Row[]): { readonly row: Row; readonly slip: Slip } | null {
  const observed = rows.map(({ value, sigma }) => ({ value, sigma }));
  const slopes = rows.map(row => row.slopes);
  const fit = leastSquaresFrom(
    (slopes[0] ?? []).map(() => 0),
    slopes.map((row, i) => row.map(slope => slope / observed[i]!.sigma)),
    observed.map(({ value, sigma }) => value / sigma),
  );
  if (!fit) return null;
  const values = slopes.map(row => dot(row, fit.solution));
  const estimated = { unknowns: fit.solution, covariance: fit.covariance, modelled: { values, slopes } };
  const stood = standings(estimated, observed);
  const most = stood.reduce((worst, next, i) => (Math.abs(next.score) > Math.abs(stood[worst]!.score) ? i : worst), 0);
  const [row, standing] = [rows[most], stood[most]];
  if (!row || !standing || Math.abs(standing.score) <= NEARLY * SLIP_SCORE) return null;
  return { row, slip: { ...standing, reading: row.reading, expected: row.predicted + standing.expected } };
}

type Loads = readonly (readonly [mass: number, x: number, y: number, z: number])[];

/** Each standard uncertainty of an unlisted weight as a load: its mass in the middle of the hull, and its place. */
function unlistedLoads({ hull, mass }: Bodies): Loads {
  const sigma = UNLISTED.mass * mass;
  const along = (axis: Vec3) => {
    const [from, to] = hull.extent(axis);
    return { middle: (from + to) / 2, spread: UNLISTED.place * (to - from) };
  };
  const [x, y, z] = [along([1, 0, 0]), along([0, 1, 0]), along([0, 0, 1])];
  return [
    [sigma, sigma * x.middle, sigma * y.middle, sigma * z.middle],
    [0, sigma * x.spread, 0, 0],
    [0, 0, sigma * y.spread, 0],
    [0, 0, 0, sigma * z.spread],
  ];
}

interface Row {
  readonly reading: Reading;
  readonly predicted: number;
  /** Read less predicted. */
  readonly value: number;
  readonly sigma: number;
  readonly slopes: readonly number[];
}

function rowsOf({ trial, day, readings, answers }: Comparison, ids: readonly string[], loads: Loads): readonly Row[] {
  return readings.flatMap(({ reading, predicted, sigma }, i) => {
    if (reading.isSlip || predicted === null || !answers) return [];
    const byId = new Map(day.inputs.map(({ id }, k) => [id, answers.slopes[i]![k]!]));
    const unlisted = loads.map(load => load.reduce((sum, part, k) => sum + part * answers.loads[i]![k]!, 0));
    const share = trial.condition === 'submerged' || trial.condition === 'hung' ? UNLISTED.volume / UNLISTED.mass : 0;
    const under = unlisted.map(slope => share * slope);
    return [
      {
        reading,
        predicted,
        value: reading.value - predicted,
        sigma,
        slopes: [...ids.map(id => byId.get(id) ?? 0), ...unlisted, ...under],
      },
    ];
  });
}
