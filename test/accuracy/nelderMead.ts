/**
 * Least value of a function of several variables without derivatives: the simplex method of Nelder & Mead, Computer J. 7
 * (1965) 308-313 (from memory), begun again around its answer until that no longer moves.
 */
export function minimise(
  f: (x: readonly number[]) => number,
  start: readonly number[],
  sizes: readonly number[],
): readonly number[] {
  let best = start;
  for (const share of [1, 0.03]) {
    best = descend(
      f,
      best,
      sizes.map(size => share * size),
      sizes.map(size => SMALL * size),
    );
  }
  return best;
}

const MOST_STEPS = 200;
/** Of the first sizes: corners nearer together are one. */
const SMALL = 1e-6;

interface Corner {
  readonly x: readonly number[];
  readonly value: number;
}

function descend(
  f: (x: readonly number[]) => number,
  start: readonly number[],
  sizes: readonly number[],
  small: readonly number[],
): readonly number[] {
  const at = (x: readonly number[]): Corner => ({ x, value: f(x) });
  let corners = [at(start), ...sizes.map((size, i) => at(start.map((value, k) => (k === i ? value + size : value))))];
  for (let step = 0; step < MOST_STEPS; step++) {
    corners.sort((a, b) => a.value - b.value);
    const least = corners[0]!;
    const worst = corners.at(-1)!;
    if (corners.every(({ x }) => x.every((value, k) => Math.abs(value - least.x[k]!) <= small[k]!))) break;
    const others = corners.slice(0, -1);
    const centre = start.map((_, k) => others.reduce((sum, corner) => sum + corner.x[k]!, 0) / others.length);
    /** From the worst corner through the middle of the others: 1 mirrors it. */
    const beyond = (factor: number): Corner => at(centre.map((value, k) => value + factor * (value - worst.x[k]!)));
    const mirrored = beyond(1);
    let better: Corner | null = null;
    if (mirrored.value < least.value) {
      const further = beyond(2);
      better = further.value < mirrored.value ? further : mirrored;
    } else if (mirrored.value < others.at(-1)!.value) better = mirrored;
    else {
      const closer = beyond(mirrored.value < worst.value ? 0.5 : -0.5);
      if (closer.value < Math.min(mirrored.value, worst.value)) better = closer;
    }
    corners = better
      ? [...others, better]
      : corners.map(corner => (corner === least ? least : at(corner.x.map((value, k) => (value + least.x[k]!) / 2))));
  }
  return corners.reduce((a, b) => (b.value < a.value ? b : a)).x;
}
