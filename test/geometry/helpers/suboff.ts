/**
 * The bare hull of a published submarine model, in feet from its nose: Groves, Huang & Chang, DTRC/SHD-1298-01 (March
 * 1989, AD-A210 642), Table 1.
 */
export const MAX_RADIUS = 5 / 6;
export const LENGTH = 14.291667;
/** Where bow, mid-body, afterbody and cap begin, and the end. */
export const JOINS = [0, 3.333333, 10.645833, 13.979167, LENGTH] as const;

const RH = 0.1175;
const K0 = 10;
const K1 = 44.6244;

export function bowRadius(x: number): number {
  const a = 0.3 * x - 1;
  const inside = 1.126395101 * x * a ** 4 + 0.442874707 * x ** 2 * a ** 3 + 1 - a ** 4 * (1.2 * x + 1);
  return MAX_RADIUS * Math.max(0, inside) ** (1 / 2.1);
}

export function afterRadius(x: number): number {
  const xi = (13.979167 - x) / 3.333333;
  const square =
    RH ** 2 +
    RH * K0 * xi ** 2 +
    (20 - 20 * RH ** 2 - 4 * RH * K0 - K1 / 3) * xi ** 3 +
    (-45 + 45 * RH ** 2 + 6 * RH * K0 + K1) * xi ** 4 +
    (36 - 36 * RH ** 2 - 4 * RH * K0 - K1) * xi ** 5 +
    (-10 + 10 * RH ** 2 + RH * K0 + K1 / 3) * xi ** 6;
  return MAX_RADIUS * Math.sqrt(square);
}

export const capRadius = (x: number): number =>
  RH * MAX_RADIUS * Math.sqrt(Math.max(0, 1 - (3.2 * x - 44.733333) ** 2));

export function radius(x: number): number {
  if (x < JOINS[1]) return bowRadius(x);
  if (x < JOINS[2]) return MAX_RADIUS;
  return x < JOINS[3] ? afterRadius(x) : capRadius(x);
}

export type Profile = readonly (readonly [s: number, radius: number])[];

/** `count` stretches each; stations crowd where the radius rises without a slope (nose) and where the cap closes. */
export function segments(count: number): { bow: Profile; mid: Profile; after: Profile; cap: Profile } {
  const steps = Array.from({ length: count + 1 }, (_, i) => i / count);
  const tabulate = (from: number, to: number, crowd: (t: number) => number, at: (x: number) => number): Profile =>
    steps.map(t => {
      const x = from + (to - from) * crowd(t);
      return [x, at(x)] as const;
    });
  return {
    bow: tabulate(JOINS[0], JOINS[1], t => t ** 4, bowRadius),
    mid: [
      [JOINS[1], MAX_RADIUS],
      [JOINS[2], MAX_RADIUS],
    ],
    after: tabulate(JOINS[2], JOINS[3], t => t, afterRadius),
    cap: tabulate(JOINS[3], JOINS[4], t => Math.sin((t * Math.PI) / 2), capRadius),
  };
}
