import { type Constraint, type Model, solve } from 'yalps';
import type { Lever } from './levers.ts';

/**
 * What added pieces must bring, linear at a known surface. Masses are net of buoyancy at that surface (kg); moments are
 * about the point that the figures refer to (kg·m), aft and to starboard positive.
 */
export interface Need {
  readonly mass: Aim;
  readonly aft: Aim;
  readonly starboard: Aim;
}

/** A figure to reach, and how far it may be missed either way. */
export interface Aim {
  readonly value: number;
  readonly slack: number;
}

/** What one kilogram of a lever's pieces does at that surface. */
export interface Effect {
  readonly lever: Lever;
  /** Net downward mass per kg of piece: 1 above water or inside, less below, negative for foam under water. */
  readonly perKilogram: number;
  /** Station and offset that the moments count from, m. */
  readonly station: number;
  readonly offset: number;
}

/** A piece of the solution: its mass and the middle of it. */
export interface Share {
  readonly lever: Lever;
  /** kg. */
  readonly mass: number;
  /** m. */
  readonly station: number;
  readonly offset: number;
}

/** Grams and g·mm for the rows, so that they are alike. */
const ROWS = [
  ['mass', 1e3],
  ['aft', 1e6],
  ['starboard', 1e6],
] as const;

/** Missing an aim by its whole slack is worth avoiding at the price of this much lead, g. */
const GRAMS_PER_SLACK = 2;

/** Tangents to m² between nothing and the longest piece; more of them bring the room's ends closer. */
const TANGENTS = 6;

/*
 * Variables of each lever, in grams and millimetres so that rows are alike: its mass m, and the moments q = m·(x - x0) and
 * p = m·(y - y0) about the forward and port corner of its room. A piece as long as l = m/λ keeps clear of both ends when
 *   m·l/2 <= q <= m·L - m·l/2,   m²/(2λ) <= q <= m·L - m²/(2λ)
 * which is convex; tangents to m² hold it from outside, and rounding pulls the piece inside.
 */

/** The least added mass that brings the need, with every lever given used or not; null when there is none. */
export function leastMass(effects: readonly Effect[], need: Need): readonly Share[] | null {
  const constraints = new Map<string, Constraint>();
  const variables = new Map<string, Map<string, number>>();
  for (const [row, factor] of ROWS) {
    const { value, slack } = need[row];
    constraints.set(row, { equal: factor * value });
    for (const [sign, name] of [
      [1, 'over'],
      [-1, 'under'],
    ] as const) {
      const limit = `${name} ${row}`;
      constraints.set(limit, { max: factor * slack });
      variables.set(
        limit,
        new Map([
          [row, -sign],
          [limit, 1],
          ['cost', GRAMS_PER_SLACK / (factor * slack)],
        ]),
      );
    }
  }
  for (const [i, { lever, perKilogram: k, station, offset }] of effects.entries()) {
    const x0 = 1e3 * (lever.station[0] - station);
    const y0 = 1e3 * (lever.offset[0] - offset);
    const room = 1e3 * (lever.station[1] - lever.station[0]);
    const m = new Map([
      ['mass', k],
      ['aft', k * x0],
      ['starboard', k * y0],
      // Lead is dearer than foam by mass, but foam is so light that its room is what costs.
      ['cost', lever.material === 'lead' ? 1 : 30],
    ]);
    const q = new Map([['aft', k]]);
    const p = new Map([['starboard', k]]);
    const longest = room * lever.massPerLength;
    for (let t = 0; t < TANGENTS; t++) {
      const at = (longest * t) / (TANGENTS - 1);
      const slope = at / lever.massPerLength;
      const rest = (at * at) / (2 * lever.massPerLength);
      // m²/(2λ) >= slope·m - rest
      constraints.set(`fore${i}.${t}`, { min: -rest });
      m.set(`fore${i}.${t}`, -slope);
      q.set(`fore${i}.${t}`, 1);
      constraints.set(`aft${i}.${t}`, { max: rest });
      m.set(`aft${i}.${t}`, slope - room);
      q.set(`aft${i}.${t}`, 1);
    }
    constraints.set(`side${i}`, { max: 0 });
    m.set(`side${i}`, -1e3 * (lever.offset[1] - lever.offset[0]));
    p.set(`side${i}`, 1);
    variables.set(`m${i}`, m).set(`q${i}`, q).set(`p${i}`, p);
  }
  const model: Model<string, string> = { direction: 'minimize', objective: 'cost', constraints, variables };
  const solution = solve(model, { includeZeroVariables: true, timeout: 200 });
  if (solution.status !== 'optimal') return null;
  const found = new Map(solution.variables);
  return effects.map(({ lever }, i) => {
    const grams = found.get(`m${i}`) ?? 0;
    const along = grams > 0 ? (found.get(`q${i}`) ?? 0) / grams : 0;
    const across = grams > 0 ? (found.get(`p${i}`) ?? 0) / grams : 0;
    return {
      lever,
      mass: grams / 1e3,
      station: lever.station[0] + along / 1e3,
      offset: lever.offset[0] + across / 1e3,
    };
  });
}
