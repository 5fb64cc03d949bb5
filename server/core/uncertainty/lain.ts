import type { EnergyState } from '../conditions/energy.ts';
import type { FloatingState } from '../conditions/float.ts';
import { emptyImmersion, type Immersion } from '../geometry/cut/immersion.ts';
import { dot, unit } from '../geometry/form/vector.ts';
import { type Arrangement, floatBoat } from './floatBoat.ts';
import { IMMERSED } from './heldBoat.ts';

/**
 * How far from its middle a boat lay at each point of a rule, kept from one keystroke to the next: the search at a point begins
 * that far from the new middle, close to where it ends. So that where it ends does not hang on that, it begins at the middle
 * after all where the points are others, or where it has ended far from where it began.
 */
export interface Lain {
  /** What one of each z does to the loads: where the points are. */
  readonly columns: readonly (readonly number[])[];
  readonly away: readonly (Float64Array | null)[];
}

/** Points that have moved by less than this share of the loads are where they were. */
const SAME_POINTS = 0.05;
/** Cosine of the angle within which what was expected was found: a degree. */
const AS_EXPECTED = Math.cos(Math.PI / 180);

/** Whether points are where they were the last time. */
export function areAsBefore({ columns }: Lain, now: Lain['columns']): boolean {
  return (
    columns.length === now.length &&
    now.every((column, k) =>
      column.every((load, part) => {
        const size = Math.sqrt(now.reduce((sum, other) => sum + other[part]! ** 2, 0));
        return Math.abs(load - columns[k]![part]!) <= SAME_POINTS * size;
      }),
    )
  );
}

/** Lays a boat in the water that lay so far `away` from the middle the last time. */
export function floatAsBefore(
  arrangement: Arrangement,
  middle: FloatingState,
  away: Float64Array | null,
): FloatingState | null {
  const expected = away && expectedAt(middle, away);
  const found = expected && floatBoat(arrangement, expected);
  return found && dot(found.state.up, expected.state.up) > AS_EXPECTED ? found : floatBoat(arrangement, middle);
}

function expectedAt(middle: FloatingState, away: Float64Array): FloatingState | null {
  const numbers = numbersOf(middle.state);
  if (away.length !== numbers.length) return null;
  for (let i = 0; i < numbers.length; i++) numbers[i]! += away[i]!;
  return withNumbers(middle, numbers);
}

export function awayFrom(middle: FloatingState, floating: FloatingState): Float64Array | null {
  const numbers = numbersOf(floating.state);
  const origin = numbersOf(middle.state);
  if (numbers.length !== origin.length) return null;
  for (let i = 0; i < numbers.length; i++) numbers[i]! -= origin[i]!;
  return numbers;
}

interface Surface {
  readonly level: number;
  readonly sums: Immersion;
}

/** A level and its sums. */
const SURFACE = 1 + IMMERSED.length;

/** The attitude, and all that tells where surfaces lie; of a boat under water those in its tanks. */
function numbersOf({ up, level, immersed, waters }: EnergyState): Float64Array {
  const surfaces: readonly Surface[] = Number.isFinite(level) ? [{ level, sums: immersed }, ...waters] : waters;
  const numbers = new Float64Array(up.length + SURFACE * surfaces.length);
  numbers.set(up);
  let at = up.length;
  for (const { level: height, sums } of surfaces) {
    numbers[at++] = height;
    for (const key of IMMERSED) numbers[at++] = sums[key];
  }
  return numbers;
}

function withNumbers(floating: FloatingState, numbers: Float64Array): FloatingState {
  const { state } = floating;
  let at = state.up.length;
  const surface = (): Surface => {
    const level = numbers[at++]!;
    const sums = emptyImmersion();
    for (const key of IMMERSED) sums[key] = numbers[at++]!;
    return { level, sums };
  };
  const hull = Number.isFinite(state.level) ? surface() : { level: state.level, sums: state.immersed };
  const up = unit([numbers[0]!, numbers[1]!, numbers[2]!]);
  const waters = state.waters.map(water => ({ ...water, ...surface() }));
  return { ...floating, state: { ...state, up, level: hull.level, immersed: hull.sums, waters } };
}
