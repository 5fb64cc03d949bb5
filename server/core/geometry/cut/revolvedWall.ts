import type { Revolved } from '../form/form.ts';
import { addScaled, dot, length, scale } from '../form/vector.ts';
import { type Chord, type ChordVisitor, SQUARE_TO_AXIS, type SweepPlane, sweepChords } from './chordSweep.ts';
import { addPatch, addSecond, type Immersion } from './immersion.ts';
import { emptyPlaneSums, type PlaneSums, planeFrame } from './planeFrame.ts';
import { addChordSums, flatProfile, revolvedExtent, sweepSquare } from './revolved.ts';
import { type Wall, wallOfSurface } from './wall.ts';

export interface WallEnds {
  /** Whether the flat disks over the two ends belong to the wall. */
  readonly endsClosed: boolean;
}

/**
 * The wall of a body of revolution: the flanks of its frusta, the flat shoulders that its profile spells out by two
 * points of one station (an end drawn from the axis outward is one), and the end disks when they are closed. Of the
 * circle of a disk cut at tau an arc of 2·r·phi is wet, cos phi = -tau/r, with first moment -2·r²·sin phi towards n.
 */
export function revolvedWall(form: Revolved, { endsClosed }: WallEnds): Wall {
  const profile = flatProfile(form);
  const rings = flatRings(profile, endsClosed);
  const whole = wallTally(1);
  for (let i = 0; i + 3 < profile.length; i += 2) {
    whole.whole(profile[i]!, profile[i + 1]!, profile[i + 2]!, profile[i + 3]!);
  }
  for (const ring of rings) addWholeRing(whole, ring);
  return wallOfSurface({
    area: whole.area,
    moment: addScaled(scale(form.origin, whole.area), form.axis, whole.alongAxis),
    extent: n => revolvedExtent(form, profile, n),
    cut(n, h, thickness, sums) {
      const along = dot(n, form.axis);
      const inPlane = addScaled(n, form.axis, -along);
      const across = length(inPlane);
      const plane = { along, across, h: h - dot(n, form.origin) };
      if (across < SQUARE_TO_AXIS) {
        cutSquare(form, profile, rings, plane, thickness, sums);
        return;
      }
      const tally = wallTally(across);
      sweepChords(profile, plane, tally);
      for (const ring of rings) cutRing(ring, plane, tally);
      addArea(sums, form, tally, thickness);
      const toDry = scale(inPlane, 1 / across);
      // As for the solid, the first moments across the axis are the strip's second moments along the chords.
      const lower = -across * tally.strip.yy * thickness;
      sums.mx += lower * toDry[0];
      sums.my += lower * toDry[1];
      sums.mz += lower * toDry[2];
      addChordSums(sums, form, n, plane, toDry, tally.strip, thickness);
    },
  });
}

/** A flat ring square to the axis. */
interface Ring {
  readonly s: number;
  readonly inner: number;
  readonly outer: number;
}

function flatRings(profile: Float64Array, endsClosed: boolean): Ring[] {
  const rings: Ring[] = [];
  for (let i = 0; i < profile.length; i += 2) {
    const s = profile[i]!;
    const radius = profile[i + 1]!;
    const isEnd = i === 0 || i === profile.length - 2;
    if (isEnd && endsClosed) rings.push({ s, inner: 0, outer: radius });
    if (i === 0 || profile[i - 2] !== s) continue;
    const before = profile[i - 1]!;
    rings.push({ s, inner: Math.min(before, radius), outer: Math.max(before, radius) });
  }
  return rings.filter(ring => ring.outer > ring.inner);
}

interface WallTally extends ChordVisitor {
  area: number;
  /** First moment of the area along the axis, from the origin. */
  alongAxis: number;
  readonly strip: PlaneSums;
}

function wallTally(across: number): WallTally {
  return {
    area: 0,
    alongAxis: 0,
    strip: emptyPlaneSums(),
    whole(s0: number, r0: number, s1: number, r1: number) {
      if (s1 <= s0) return;
      const slant = 2 * Math.PI * Math.hypot(s1 - s0, r1 - r0);
      this.area += (slant * (r0 + r1)) / 2;
      this.alongAxis += slant * ((s0 * (r0 + r1)) / 2 + ((s1 - s0) * (r0 + 2 * r1)) / 6);
    },
    chord({ s, radius, halfWidth, phi, lambda, weight, slope }: Chord) {
      const stretch = 2 * radius * Math.sqrt(1 + slope * slope) * weight;
      const arc = stretch * phi * across;
      this.area += arc;
      this.alongAxis += arc * s;
      // The wet arc grows at both its ends, one half-width either side.
      const gain = stretch / halfWidth;
      const { strip } = this;
      strip.area += gain;
      strip.x += gain * lambda;
      strip.xx += gain * lambda * lambda;
      strip.yy += stretch * halfWidth;
    },
  };
}

function addWholeRing(tally: WallTally, { s, inner, outer }: Ring): void {
  const area = Math.PI * (outer * outer - inner * inner);
  tally.area += area;
  tally.alongAxis += s * area;
}

function cutRing(ring: Ring, { along, across, h }: SweepPlane, tally: WallTally): void {
  const tau = (h - along * ring.s) / across;
  const outer = segment(ring.outer, tau);
  const inner = segment(ring.inner, tau);
  const area = outer.area - inner.area;
  tally.area += area;
  tally.alongAxis += ring.s * area;
  const gain = (2 * (outer.halfWidth - inner.halfWidth)) / across;
  const lambda = across * ring.s - along * tau;
  const { strip } = tally;
  strip.area += gain;
  strip.x += gain * lambda;
  strip.xx += gain * lambda * lambda;
  strip.yy += (2 * (outer.halfWidth ** 3 - inner.halfWidth ** 3)) / (3 * across);
}

/** The part of a disk up to tau from its centre. */
function segment(radius: number, tau: number): { readonly area: number; readonly halfWidth: number } {
  if (tau >= radius) return { area: Math.PI * radius * radius, halfWidth: 0 };
  if (tau <= -radius) return { area: 0, halfWidth: 0 };
  const halfWidth = Math.sqrt((radius - tau) * (radius + tau));
  return { area: radius * radius * Math.atan2(halfWidth, -tau) + tau * halfWidth, halfWidth };
}

function addArea(sums: Immersion, form: Revolved, tally: WallTally, thickness: number): void {
  const volume = thickness * tally.area;
  const alongAxis = thickness * tally.alongAxis;
  sums.volume += volume;
  sums.mx += volume * form.origin[0] + alongAxis * form.axis[0];
  sums.my += volume * form.origin[1] + alongAxis * form.axis[1];
  sums.mz += volume * form.origin[2] + alongAxis * form.axis[2];
}

/** The plane square to the axis: whole circles on one side of the station that it cuts, and flat rings all at once. */
function cutSquare(
  form: Revolved,
  profile: Float64Array,
  rings: readonly Ring[],
  { along, h }: SweepPlane,
  thickness: number,
  sums: Immersion,
): void {
  const tally = wallTally(0);
  const { radius, slope } = sweepSquare(profile, along, h, tally);
  for (const ring of rings) if (along * ring.s < h) addWholeRing(tally, ring);
  addArea(sums, form, tally, thickness);
  const gain = 2 * Math.PI * radius * Math.sqrt(1 + slope * slope) * thickness;
  addPatch(sums, gain, addScaled(form.origin, form.axis, h / along));
  for (const direction of planeFrame(form.axis)) addSecond(sums, (gain * radius * radius) / 2, direction);
}
