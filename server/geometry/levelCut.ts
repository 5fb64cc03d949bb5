import { type Cuttable, emptyImmersion } from './immersion.ts';
import type { Vec3 } from './vector.ts';

/** Of the volume asked for. */
const CLOSE = 1e-13;
/** Of the whole volume: what rounding leaves uncertain in any cut. */
const ROUNDING = 4e-16;

/**
 * The level h (m) at which exactly `volume` (m3) of `body` lies below the plane n·p = h, `n` a unit vector; the lowest
 * or highest point of the body for a volume out of its range. Newton's method with the area of the cut as slope, kept
 * inside a bracket that bisection shrinks whenever a step fails to halve the error.
 */
export function levelFor(body: Cuttable, n: Vec3, volume: number, guess?: number): number {
  let [low, high] = body.extent(n);
  if (!(volume > 0)) return low;
  if (volume >= body.volume) return high;
  const enough = Math.max(CLOSE * volume, ROUNDING * body.volume);
  const inside = guess !== undefined && guess > low && guess < high;
  let level = inside ? guess : low + ((high - low) * volume) / body.volume;
  let lastMiss = Infinity;
  for (;;) {
    const sums = emptyImmersion();
    body.cut(n, level, sums);
    const miss = sums.volume - volume;
    if (Math.abs(miss) <= enough) return level;
    if (miss < 0) low = level;
    else high = level;
    const newton = level - miss / sums.area;
    const useful = newton > low && newton < high && Math.abs(miss) < lastMiss / 2;
    const next = useful ? newton : low + (high - low) / 2;
    lastMiss = Math.abs(miss);
    if (next <= low || next >= high || next === level) return level;
    level = next;
  }
}
