import type { Revolved } from '../form/form.ts';
import { addScaled, cross, dot, length, scale, type Vec3 } from '../form/vector.ts';
import { type Chord, type ChordVisitor, SQUARE_TO_AXIS, type SweepPlane, sweepChords } from './chordSweep.ts';
import { addPatch, addSecond, boxOf, type Cuttable, type Immersion } from './immersion.ts';
import { addPlaneSums, emptyPlaneSums, type PlaneSums, planeFrame } from './planeFrame.ts';

/**
 * Stations closer than this share of the body's size make a flat shoulder: half an inch and 12.7 mm may differ in their
 * last digit, and a flank a few digits long has no slope worth the name.
 */
const SAME_STATION = 1e-9;

/** The profile as s, radius in turn: what the inner loops read. */
export function flatProfile({ profile }: Revolved): Float64Array {
  const size = Math.max(...profile.map(([, radius]) => radius), profile.at(-1)![0] - profile[0]![0]);
  const flat: number[] = [];
  for (const [s, radius] of profile) {
    const last = flat.at(-2);
    flat.push(last !== undefined && s - last <= SAME_STATION * size ? last : s, radius);
  }
  return Float64Array.from(flat);
}

/** Least and greatest of `n·p` over a body of revolution, m: every frustum lies between its two end circles. */
export function revolvedExtent(form: Revolved, profile: Float64Array, n: Vec3): readonly [number, number] {
  const along = dot(n, form.axis);
  const across = length(addScaled(n, form.axis, -along));
  const start = dot(n, form.origin);
  let lowest = Infinity;
  let highest = -Infinity;
  for (let i = 0; i < profile.length; i += 2) {
    const middle = start + along * profile[i]!;
    const reach = across * profile[i + 1]!;
    if (middle - reach < lowest) lowest = middle - reach;
    if (middle + reach > highest) highest = middle + reach;
  }
  return [lowest, highest];
}

/**
 * A solid of revolution. A disk of radius r cut at tau keeps the segment r²·acos(-tau/r) + tau·sqrt(r² - tau²), with
 * first moment -(2/3)(r² - tau²)^(3/2) towards n (CRC Standard Mathematical Tables, circular segment, from memory).
 */
export function revolvedSolid(form: Revolved): Cuttable {
  const { origin, axis } = form;
  const profile = flatProfile(form);
  const whole = solidTally(1);
  for (let i = 0; i + 3 < profile.length; i += 2) {
    whole.whole(profile[i]!, profile[i + 1]!, profile[i + 2]!, profile[i + 3]!);
  }
  const extent = (n: Vec3) => revolvedExtent(form, profile, n);
  return {
    volume: whole.volume,
    moment: addScaled(scale(origin, whole.volume), axis, whole.alongAxis),
    box: boxOf(extent),
    extent,
    cut(n, h, sums) {
      const along = dot(n, axis);
      const inPlane = addScaled(n, axis, -along);
      const across = length(inPlane);
      const level = h - dot(n, origin);
      if (across < SQUARE_TO_AXIS) {
        cutSquare(form, profile, along, level, sums);
        return;
      }
      const plane = { along, across, h: level };
      const tally = solidTally(across);
      sweepChords(profile, plane, tally);
      addVolume(sums, form, tally);
      const toDry = scale(inPlane, 1 / across);
      // The segments' first moments -(2/3)w³ are the second moments of their chords, summed already.
      const lower = -across * tally.waterplane.yy;
      sums.mx += lower * toDry[0];
      sums.my += lower * toDry[1];
      sums.mz += lower * toDry[2];
      addChordSums(sums, form, n, plane, toDry, tally.waterplane);
    },
  };
}

/**
 * Adds a waterplane given by its moments across the chords (x, which is lambda) and along them (y); `toDry` is the
 * unit vector in the disks' plane towards n. All is multiplied by `factor`.
 */
export function addChordSums(
  sums: Immersion,
  form: Revolved,
  n: Vec3,
  plane: SweepPlane,
  toDry: Vec3,
  chords: PlaneSums,
  factor = 1,
): void {
  const foot = addScaled(form.origin, n, plane.h);
  const square = addScaled(scale(form.axis, plane.across), toDry, -plane.along);
  addPlaneSums(sums, chords, foot, square, cross(form.axis, toDry), factor);
}

interface SolidTally extends ChordVisitor {
  readonly waterplane: PlaneSums;
  volume: number;
  /** First moment of the volume along the axis, from the origin. */
  alongAxis: number;
}

function solidTally(across: number): SolidTally {
  return {
    volume: 0,
    alongAxis: 0,
    waterplane: emptyPlaneSums(),
    whole(s0: number, r0: number, s1: number, r1: number) {
      const depth = s1 - s0;
      const volume = (Math.PI * depth * (r0 * r0 + r0 * r1 + r1 * r1)) / 3;
      this.volume += volume;
      this.alongAxis += s0 * volume + (Math.PI * depth * depth * (r0 * r0 + 2 * r0 * r1 + 3 * r1 * r1)) / 12;
    },
    chord({ s, radius, tau, halfWidth, phi, lambda, weight }: Chord) {
      const slice = (radius * radius * phi + tau * halfWidth) * across * weight;
      this.volume += slice;
      this.alongAxis += slice * s;
      const strip = 2 * halfWidth * weight;
      const { waterplane } = this;
      waterplane.area += strip;
      waterplane.x += strip * lambda;
      waterplane.xx += strip * lambda * lambda;
      waterplane.yy += (strip * halfWidth * halfWidth) / 3;
    },
  };
}

function addVolume(sums: Immersion, form: Revolved, tally: SolidTally): void {
  const { volume, alongAxis } = tally;
  sums.volume += volume;
  sums.mx += volume * form.origin[0] + alongAxis * form.axis[0];
  sums.my += volume * form.origin[1] + alongAxis * form.axis[1];
  sums.mz += volume * form.origin[2] + alongAxis * form.axis[2];
}

/** The plane square to the axis: whole disks on one side of the station that it cuts. */
function cutSquare(form: Revolved, profile: Float64Array, along: number, level: number, sums: Immersion): void {
  const tally = solidTally(1);
  const { radius } = sweepSquare(profile, along, level, tally);
  addVolume(sums, form, tally);
  const disk = Math.PI * radius * radius;
  addPatch(sums, disk, addScaled(form.origin, form.axis, level / along));
  for (const direction of planeFrame(form.axis)) addSecond(sums, (disk * radius * radius) / 4, direction);
}

/** Visits the wet frusta for a plane square to the axis; the answer is the radius and slope where it cuts. */
export function sweepSquare(
  profile: Float64Array,
  along: number,
  level: number,
  visitor: Pick<ChordVisitor, 'whole'>,
): { readonly radius: number; readonly slope: number } {
  const station = level / along;
  let cut = { radius: 0, slope: 0 };
  for (let i = 0; i + 3 < profile.length; i += 2) {
    const s0 = profile[i]!;
    const r0 = profile[i + 1]!;
    const s1 = profile[i + 2]!;
    const r1 = profile[i + 3]!;
    if (s0 < station && station <= s1) {
      const slope = (r1 - r0) / (s1 - s0);
      cut = { radius: r0 + slope * (station - s0), slope };
      if (along > 0) visitor.whole(s0, r0, station, cut.radius);
      else visitor.whole(station, cut.radius, s1, r1);
    } else if (along > 0 ? s1 <= station : s0 >= station) visitor.whole(s0, r0, s1, r1);
  }
  return cut;
}
