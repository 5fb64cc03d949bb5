import { gaussLegendre, gaussLegendreInAngle, type Quadrature } from './quadrature.ts';

/**
 * A body of revolution, cut disk by disk. With `along` = n·axis, `across` = |n - along·axis| and `h` measured from the
 * body's origin, the plane crosses the disk at station s in a chord at the signed distance
 * tau = (h - along·s)/across from its centre, towards n; the part beyond the chord is dry.
 *
 * In the plane itself, lambda = across·s - along·tau runs square to all the chords, and ds = across·dlambda: working
 * in lambda, nothing is divided by `across`, so a plane nearly square to the axis costs no accuracy.
 */
export interface SweepPlane {
  readonly along: number;
  readonly across: number;
  readonly h: number;
}

/** One disk cut by the plane, at a node of the quadrature. Lengths in m. */
export interface Chord {
  s: number;
  radius: number;
  tau: number;
  /** Half the chord. */
  halfWidth: number;
  /** Half the angle of the wet arc, 0..pi. */
  phi: number;
  lambda: number;
  /** The quadrature's share of dlambda. */
  weight: number;
  /** Radius gained per metre of axis. */
  slope: number;
}

export interface ChordVisitor {
  /** A frustum wholly on the wet side, from station s0 to s1. */
  whole(s0: number, r0: number, s1: number, r1: number): void;
  /** The record is used again: read it, do not keep it. */
  chord(chord: Chord): void;
}

/**
 * Half-width sqrt(P·Q) and wet angle 2·atan(sqrt(Q/P)) hang on P = radius - tau and Q = radius + tau, both linear
 * along a frustum; where one of them is zero the plane enters or leaves the disk.
 */
interface StretchEnd {
  readonly s: number;
  readonly p: number;
  readonly q: number;
  readonly lambda: number;
}

/**
 * Below this sine of the angle between plane normal and axis the plane counts as square to the axis; what is neglected
 * is of its order (first moment across) or of its square (volume).
 */
export const SQUARE_TO_AXIS = 1e-12;
/** P or Q below this share of the radius, or of its value at the other end, is a zero spoilt by rounding. */
const ROUNDED_ZERO = 1e-14;

/**
 * How far beyond a stretch, in lengths of it, the nearest zero of P or Q has to be. A branch point at distance d of a
 * unit stretch lets n-point Gauss-Legendre converge like rho^(-2n), rho = (1 + 2d) + sqrt((1 + 2d)^2 - 1) (Trefethen,
 * Approximation Theory and Approximation Practice, ch. 19, from memory): d = 1/3 gives rho = 3, and 3^-32 = 5e-16.
 */
const CLEAR = 1 / 3;
/** The clearance that a split leaves: a little more, so that rounding does not ask for a second one. */
const CLEARED = 0.34;
/** Rules for stretches with no zero at their ends, by the clearance at which each reaches 1e-15. */
const SMOOTH: readonly (readonly [clearance: number, rule: Quadrature])[] = [
  [20, gaussLegendre(4)],
  [4, gaussLegendre(6)],
  [1, gaussLegendre(10)],
  [0, gaussLegendre(16)],
];
/** For a zero right at an end; in the angle, another zero `CLEAR` away gives rho = 2.4, and 2.4^-40 = 6e-16. */
const ROOTED = gaussLegendreInAngle(20);

/**
 * Visits the wet side of every frustum between neighbours of `profile` (s, radius in turn): whole frusta as such, cut
 * ones chord by chord. `plane.across` must exceed `SQUARE_TO_AXIS`.
 */
export function sweepChords(profile: Float64Array, plane: SweepPlane, visitor: ChordVisitor): void {
  const { along, across, h } = plane;
  const chord: Chord = { s: 0, radius: 0, tau: 0, halfWidth: 0, phi: 0, lambda: 0, weight: 0, slope: 0 };
  for (let i = 0; i + 3 < profile.length; i += 2) {
    const s0 = profile[i]!;
    const r0 = profile[i + 1]!;
    const s1 = profile[i + 2]!;
    const r1 = profile[i + 3]!;
    if (s1 <= s0) continue;
    const g0 = h - along * s0;
    const g1 = h - along * s1;
    // P and Q at the two ends, times `across`: the disk is dry where Q <= 0, wet where P <= 0, cut in between.
    const p0 = across * r0 - g0;
    const p1 = across * r1 - g1;
    const q0 = across * r0 + g0;
    const q1 = across * r1 + g1;
    if (q0 <= 0 && q1 <= 0) continue;
    if (p0 <= 0 && p1 <= 0) {
      visitor.whole(s0, r0, s1, r1);
      continue;
    }
    const pRoot = p0 <= 0 || p1 <= 0 ? p0 / (p0 - p1) : Number.NaN;
    const qRoot = q0 <= 0 || q1 <= 0 ? q0 / (q0 - q1) : Number.NaN;
    const pStation = s0 + (s1 - s0) * pRoot;
    const pRadius = r0 + (r1 - r0) * pRoot;
    const qStation = s0 + (s1 - s0) * qRoot;
    const qRadius = r0 + (r1 - r0) * qRoot;
    if (p0 <= 0) visitor.whole(s0, r0, pStation, pRadius);
    if (p1 <= 0) visitor.whole(pStation, pRadius, s1, r1);
    const leaves = p0 <= 0 || p1 <= 0 ? pZero(plane, pStation, pRadius) : null;
    const enters = q0 <= 0 || q1 <= 0 ? qZero(plane, qStation, qRadius) : null;
    const from = (p0 <= 0 ? leaves : q0 <= 0 ? enters : null) ?? disk(plane, s0, r0, g0);
    const to = (p1 <= 0 ? leaves : q1 <= 0 ? enters : null) ?? disk(plane, s1, r1, g1);
    // Close to a tangent, rounding can turn a sliver inside out.
    if (!(to.lambda > from.lambda)) continue;
    // A plane that grazes the frustum along a line leaves chords of no width: it is wet or dry as a whole.
    if (from.p === 0 && to.p === 0) {
      visitor.whole(from.s, from.q / 2, to.s, to.q / 2);
      continue;
    }
    if (from.q === 0 && to.q === 0) continue;
    chord.slope = (r1 - r0) / (s1 - s0);
    sweepStretch(from, to, chord, visitor);
  }
}

/** The disk at an end of a frustum; `depth` is how far its centre lies below the surface. */
function disk({ along, across }: SweepPlane, s: number, radius: number, depth: number): StretchEnd {
  const tau = depth / across;
  const least = ROUNDED_ZERO * radius;
  const p = radius - tau;
  const q = radius + tau;
  return { s, p: p < least ? 0 : p, q: q < least ? 0 : q, lambda: across * s - along * tau };
}

/** Where the plane leaves the disk: P is zero there. */
const pZero = ({ along, across }: SweepPlane, s: number, radius: number): StretchEnd => ({
  s,
  p: 0,
  q: 2 * radius,
  lambda: across * s - along * radius,
});

/** Where it enters: Q is. */
const qZero = ({ along, across }: SweepPlane, s: number, radius: number): StretchEnd => ({
  s,
  p: 2 * radius,
  q: 0,
  lambda: across * s + along * radius,
});

/** Splits until the zeros of P and Q beyond the ends are clear of the stretch, then visits the nodes of a rule. */
function sweepStretch(start: StretchEnd, end: StretchEnd, chord: Chord, visitor: ChordVisitor): void {
  const pStart = clearance(start.p, end.p);
  const pEnd = clearance(end.p, start.p);
  const qStart = clearance(start.q, end.q);
  const qEnd = clearance(end.q, start.q);
  const atStart = Math.min(pStart || Infinity, qStart || Infinity);
  const atEnd = Math.min(pEnd || Infinity, qEnd || Infinity);
  const least = Math.min(atStart, atEnd);
  if (least < CLEAR) {
    const share = Math.min(least / CLEARED, 0.5);
    const middle = between(start, end, atStart <= atEnd ? share : 1 - share);
    sweepStretch(start, middle, chord, visitor);
    sweepStretch(middle, end, chord, visitor);
    return;
  }
  const rooted = pStart === 0 || pEnd === 0 || qStart === 0 || qEnd === 0;
  const rule = rooted ? ROOTED : smoothRule(least);
  const { fromStart, fromEnd, weight } = rule;
  const stretch = end.lambda - start.lambda;
  for (let i = 0; i < weight.length; i++) {
    const f = fromStart[i]!;
    const g = fromEnd[i]!;
    const p = start.p * g + end.p * f;
    const q = start.q * g + end.q * f;
    const rootP = Math.sqrt(p);
    const rootQ = Math.sqrt(q);
    chord.s = start.s * g + end.s * f;
    chord.lambda = start.lambda * g + end.lambda * f;
    chord.radius = (p + q) / 2;
    chord.tau = (q - p) / 2;
    chord.halfWidth = rootP * rootQ;
    chord.phi = 2 * Math.atan2(rootQ, rootP);
    chord.weight = weight[i]! * stretch;
    visitor.chord(chord);
  }
}

function smoothRule(clear: number): Quadrature {
  // A closure for each stretch would be made and thrown away.
  for (const [reach, rule] of SMOOTH) if (clear >= reach) return rule;
  return ROOTED;
}

/**
 * How far before `here`, in lengths of the stretch, a linear function falls to zero: 0 when that is lost in rounding
 * (splitting towards it would not end), Infinity when it does not fall.
 */
function clearance(here: number, there: number): number {
  if (here >= there) return Infinity;
  return here < there * ROUNDED_ZERO ? 0 : here / (there - here);
}

const between = (start: StretchEnd, end: StretchEnd, f: number): StretchEnd => ({
  s: start.s * (1 - f) + end.s * f,
  p: start.p * (1 - f) + end.p * f,
  q: start.q * (1 - f) + end.q * f,
  lambda: start.lambda * (1 - f) + end.lambda * f,
});
