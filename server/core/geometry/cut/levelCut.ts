import type { Vec3 } from '../form/vector.ts';
import { addWhole, type Cuttable, emptyImmersion, type Immersion } from './immersion.ts';

/** Of the volume asked for. */
const CLOSE = 1e-13;
/** Of the whole volume: what rounding leaves uncertain in any cut. */
const ROUNDING = 4e-16;

/** Of the volume, where a rough body only tells where to begin. */
const ROUGHLY = 1e-3;
/** Halvings after which two doubles within a boat are one; each other step halves the miss. */
const MOST_CUTS = 200;

/** What lies below the level that holds a volume. */
export interface Filled {
  /** m, along n. */
  readonly level: number;
  readonly sums: Immersion;
  /** Share of the volume that a flat slice on the surface stands for, in place of another cut; 0 for none. */
  readonly sliceShare: number;
}

export interface FillOptions {
  /** A level to try first, m. */
  readonly guess?: number | undefined;
  /** The share of the volume that may be left to a flat slice. */
  readonly near?: number | undefined;
}

/**
 * The level h (m) at which exactly `volume` (m3) of `body` lies below the plane n·p = h, `n` a unit vector; the lowest
 * or highest point of the body for a volume out of its range.
 */
export const levelFor = (body: Cuttable, n: Vec3, volume: number, guess?: number): number =>
  fillTo(body, n, volume, { guess }).level;

/**
 * The part of `body` that holds `volume` below a plane square to `n`, and that plane. What the last cut lacks or has too
 * much of, `near` of the volume at most, is laid on the surface as a flat slice, so that sums are right to its square.
 */
export function fillTo(body: Cuttable, n: Vec3, volume: number, { guess, near = CLOSE }: FillOptions = {}): Filled {
  if (!(volume > 0)) return { level: body.extent(n)[0], sums: emptyImmersion(), sliceShare: 0 };
  if (volume >= body.volume) {
    const sums = emptyImmersion();
    addWhole(body, sums);
    return { level: body.extent(n)[1], sums, sliceShare: 0 };
  }
  const wanted = { body, n, volume, enough: Math.max(near * volume, ROUNDING * body.volume) };
  const start = guess ?? (body.rough && fillTo(body.rough, n, volume, { near: ROUGHLY }).level);
  return (start === undefined ? null : fillFrom(start, wanted)) ?? fillBetween(wanted);
}

interface StillWanted {
  readonly body: Cuttable;
  readonly n: Vec3;
  readonly volume: number;
  /** Miss that a slice may make up for, m3. */
  readonly enough: number;
}

/** Newton's method with the area of the cut as slope; null unless each step at least halves the miss. */
function fillFrom(guess: number, { body, n, volume, enough }: StillWanted): Filled | null {
  let level = guess;
  let lastMiss = Infinity;
  for (let cuts = 0; cuts < MOST_CUTS; cuts++) {
    const sums = emptyImmersion();
    body.cut(n, level, sums);
    const miss = sums.volume - volume;
    if (Math.abs(miss) <= enough) return withSlice(level, n, sums, volume);
    if (!(Math.abs(miss) < lastMiss / 2 && sums.area > 0)) return null;
    lastMiss = Math.abs(miss);
    level -= miss / sums.area;
  }
  return null;
}

/** The same kept inside a bracket, which bisection shrinks whenever a step fails to halve the miss. */
function fillBetween({ body, n, volume, enough }: StillWanted): Filled {
  let [low, high] = body.extent(n);
  let level = low + ((high - low) * volume) / body.volume;
  let lastMiss = Infinity;
  let sums = emptyImmersion();
  for (let cuts = 0; cuts < MOST_CUTS; cuts++) {
    sums = emptyImmersion();
    body.cut(n, level, sums);
    const miss = sums.volume - volume;
    if (Math.abs(miss) <= enough) return withSlice(level, n, sums, volume);
    if (miss < 0) low = level;
    else high = level;
    const newton = level - miss / sums.area;
    const useful = newton > low && newton < high && Math.abs(miss) < lastMiss / 2;
    const next = useful ? newton : low + (high - low) / 2;
    lastMiss = Math.abs(miss);
    // At a flat face the volume jumps, and no level holds what is asked for.
    if (!(next > low && next < high) || next === level) break;
    level = next;
  }
  return { level, sums, sliceShare: 0 };
}

/** Adds the slice of even area that is missing, or takes off the one too much; the cut itself stays that at `level`. */
function withSlice(level: number, n: Vec3, sums: Immersion, volume: number): Filled {
  const lacking = volume - sums.volume;
  if (lacking === 0 || !(sums.area > 0)) return { level, sums, sliceShare: 0 };
  const depth = lacking / sums.area;
  const lift = (lacking * depth) / 2;
  sums.volume = volume;
  sums.mx += depth * sums.ax + lift * n[0];
  sums.my += depth * sums.ay + lift * n[1];
  sums.mz += depth * sums.az + lift * n[2];
  return { level: level + depth, sums, sliceShare: Math.abs(lacking) / volume };
}
