/**
 * An independent way to cut a frustum: along its generators, not disk by disk. On the generator at the angle psi from
 * u (the direction towards n in the disks) the plane is met at one station, so the wet part is an interval; the volume
 * follows from the surface by the divergence theorem about the point where the plane meets the axis.
 */
export interface FrustumCut {
  readonly volume: number;
  /** First moments of the volume along the axis (from station 0) and towards u. */
  readonly alongAxis: number;
  readonly towardsU: number;
  readonly wall: number;
  readonly wallAlongAxis: number;
  readonly wallTowardsU: number;
}

/** Gauss-Legendre with five points (Abramowitz & Stegun, Handbook of Mathematical Functions, table 25.4, from memory). */
const FIVE = [
  [0, 128 / 225],
  [Math.sqrt(5 - 2 * Math.sqrt(10 / 7)) / 3, (322 + 13 * Math.sqrt(70)) / 900],
  [-Math.sqrt(5 - 2 * Math.sqrt(10 / 7)) / 3, (322 + 13 * Math.sqrt(70)) / 900],
  [Math.sqrt(5 + 2 * Math.sqrt(10 / 7)) / 3, (322 - 13 * Math.sqrt(70)) / 900],
  [-Math.sqrt(5 + 2 * Math.sqrt(10 / 7)) / 3, (322 - 13 * Math.sqrt(70)) / 900],
] as const;

function integrate(f: (x: number) => number, from: number, to: number, panels: number): number {
  const half = (to - from) / panels / 2;
  let sum = 0;
  for (let i = 0; i < panels; i++) {
    const middle = from + (2 * i + 1) * half;
    for (const [x, weight] of FIVE) sum += weight * f(middle + x * half);
  }
  return sum * half;
}

/** Frustum from station s0, radius r0 to s1, r1; plane along·s + across·(distance towards u) = h, `along` not 0. */
export function bruteFrustum(
  [s0, r0, s1, r1]: readonly [number, number, number, number],
  along: number,
  across: number,
  h: number,
): FrustumCut {
  const slope = (r1 - r0) / (s1 - s0);
  const radius = (s: number): number => r0 + slope * (s - s0);
  const centre = h / along;
  // Where the wet interval starts or ends at an end circle it has a kink: integrate from one to the next.
  const kinks = [0, Math.PI];
  for (const [s, r] of [
    [s0, r0],
    [s1, r1],
  ] as const) {
    const cosine = (h - along * s) / (across * r);
    if (Math.abs(cosine) < 1) kinks.push(Math.acos(cosine));
  }
  const steepest = along / (across * slope);
  if (Math.abs(steepest) < 1) kinks.push(Math.acos(-steepest));
  kinks.sort((a, b) => a - b);

  const wet = (psi: number): readonly [number, number] => {
    const start = along * s0 + across * r0 * Math.cos(psi) - h;
    const end = along * s1 + across * r1 * Math.cos(psi) - h;
    const cross = s0 + ((s1 - s0) * start) / (start - end);
    if (start <= 0) return [s0, end <= 0 ? s1 : cross];
    return end < 0 ? [cross, s1] : [s0, s0];
  };
  const over = (f: (s: number, cosine: number) => number): number => {
    let sum = 0;
    for (let i = 1; i < kinks.length; i++) {
      const generator = (psi: number): number => {
        const [from, to] = wet(psi);
        return integrate(s => f(s, Math.cos(psi)), from, to, 1);
      };
      sum += integrate(generator, kinks[i - 1]!, kinks[i]!, 60);
    }
    return 2 * sum;
  };
  const slant = Math.hypot(1, slope);
  // (p - centre)·N for the outward normal N = e - slope·a, per ds dpsi.
  const flux = (s: number): number => (radius(s) - slope * (s - centre)) * radius(s);
  const ends = [
    { reach: s1 - centre, disk: wetDisk(r1, (h - along * s1) / across), s: s1 },
    { reach: centre - s0, disk: wetDisk(r0, (h - along * s0) / across), s: s0 },
  ];
  const volume = (over(flux) + ends.reduce((sum, { reach, disk }) => sum + reach * disk.area, 0)) / 3;
  const axial = (over(s => flux(s) * (s - centre)) + endSum(ends, e => e.reach * e.disk.area * (e.s - centre))) / 4;
  const lateral = (over((s, c) => flux(s) * radius(s) * c) + endSum(ends, e => e.reach * e.disk.moment)) / 4;
  return {
    volume,
    alongAxis: axial + centre * volume,
    towardsU: lateral,
    wall: over(s => slant * radius(s)),
    wallAlongAxis: over(s => slant * radius(s) * s),
    wallTowardsU: over((s, c) => slant * radius(s) * radius(s) * c),
  };
}

interface End {
  readonly reach: number;
  readonly s: number;
  readonly disk: { readonly area: number; readonly moment: number };
}

const endSum = (ends: readonly End[], f: (end: End) => number): number => ends.reduce((sum, end) => sum + f(end), 0);

/** Area and first moment of the part of a disk up to tau from its centre, by strips in the angle. */
function wetDisk(radius: number, tau: number): { readonly area: number; readonly moment: number } {
  if (radius === 0) return { area: 0, moment: 0 };
  const to = Math.acos(Math.min(1, Math.max(-1, -tau / radius)));
  const strip = (t: number): number => 2 * (radius * Math.sin(t)) ** 2;
  return {
    area: integrate(strip, 0, to, 20),
    moment: integrate(t => -radius * Math.cos(t) * strip(t), 0, to, 20),
  };
}
