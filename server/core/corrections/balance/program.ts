import { type Constraint, type Model, solve } from 'yalps';
import type { Slot } from '../room/slots.ts';

export type RowName =
  | 'surfaced draft'
  | 'surfaced trim'
  | 'surfaced heel'
  | 'surfaced metacentric height'
  | 'submerged trim'
  | 'submerged heel'
  | 'neutral fill'
  | 'submerged stiffness in trim'
  | 'submerged stiffness in heel';

/**
 * One balance that the added pieces must bring about, linear in each piece's mass and in its moments aft and to starboard.
 * Masses in kg, moments in kg·m, as the row's own unit says.
 */
export interface Row {
  readonly name: RowName;
  readonly measure: 'mass' | 'moment';
  /** What one kilogram does when its middle is at the forward port corner of the lever's room, and what moving it adds. */
  readonly effectOf: (slot: Slot) => Effect;
  readonly wanted: Aim | Band;
}

export interface Effect {
  /** Per kg at the corner. */
  readonly perMass: number;
  /** Per kg·m aft of the corner, and to starboard of it. */
  readonly perAft: number;
  readonly perStarboard: number;
}

/** A figure to reach, and how far it may be missed either way. */
export interface Aim {
  readonly value: number;
  readonly slack: number;
}

/** A figure to keep within; infinite ends are open. */
export interface Band {
  readonly least: number;
  readonly most: number;
}

/** A piece of the solution: its mass and the middle of it. */
export interface Share {
  readonly slot: Slot;
  /** kg. */
  readonly mass: number;
  /** m. */
  readonly station: number;
  readonly offset: number;
  /** How many of each whole piece, as in the lever's `pieces`. */
  readonly counts: readonly number[];
}

export interface Solution {
  readonly shares: readonly Share[];
  /** What the programme minimises: lead in g, foam's room and missed aims priced in g of lead. */
  readonly cost: number;
}

export interface ProgramOptions {
  /** Aims and bands may be missed at a price far above any lead: for the nearest that can be had. */
  readonly elastic?: boolean;
  /** Masses that are already cut, kg, by lever: only their places are free. */
  readonly cut?: ReadonlyMap<Slot, number>;
  /** Masses that the pieces will be about, kg, by lever: there they keep clear of their room's ends exactly. */
  readonly near?: ReadonlyMap<Slot, number>;
}

/** Grams and g·mm, so that rows are alike. */
const UNIT = { mass: 1e3, moment: 1e6 } as const;

/** Missing an aim by its whole slack is worth avoiding at the price of this much lead, g. */
const GRAMS_PER_SLACK = 2;
/** Foam is so light that its room is what costs: a gram of it counts as this much lead. */
const FOAM_PRICE = 30;

/** What a gram costs, in g of lead. */
export const priceOf = ({ material }: Slot): number => (material === 'lead' ? 1 : FOAM_PRICE);

/** Of a row's slack: as much may be left of an aim that is met. */
const ROUNDING = 1e-9;

/** Price of missing a row altogether, by its whole slack (or one unit of a band), when that is allowed. */
const GRAMS_PER_MISS = 1e4;

/** Whole pieces are given up after so many branches: by count and not by the clock, so that a slow machine finds the same. */
const MOST_BRANCHES = 4000;

/** Tangents to m² between nothing and the longest piece; more of them bring the room's ends closer. */
const TANGENTS = 5;

/** Lead off the centreline is untidy: so little, in g for each g·mm, that any heel to mend outweighs it. */
const PRICE_OFF_CENTRE = 1e-4;

/*
 * Variables of each lever, in grams and millimetres: its mass m, the moment q = m·(x - x0) aft of the forward end of its
 * room, and s and p, by which it lies to starboard or to port of where it would rest, both times m. A piece as long as
 * l = m/λ keeps clear of both ends when
 *   m²/(2λ) <= q <= m·L - m²/(2λ)
 * which is convex; tangents to m² hold it from outside, and rounding pulls the piece inside.
 */

/** Where a piece lies athwart unless it has to hold a heel: on the centreline, or as near to it as its room goes, m. */
const restOf = ({ offset }: Slot): number => Math.min(Math.max(0, offset[0]), offset[1]);

/** The cheapest pieces in these levers that satisfy every row; null when there are none. */
export function cheapestPieces(
  slots: readonly Slot[],
  rows: readonly Row[],
  options: ProgramOptions = {},
): Solution | null {
  const constraints = new Map<string, Constraint>();
  const variables = new Map<string, Map<string, number>>();
  for (const row of rows) addRow(row, constraints, variables, options.elastic ?? false);
  for (const [i, slot] of slots.entries()) {
    const columns = roomColumns(slot, i, constraints, options);
    for (const row of rows) {
      const unit = UNIT[row.measure];
      const { perMass, perAft, perStarboard } = row.effectOf(slot);
      // A moment row takes kg·m for kg at an arm in m: with g·mm the arms come in mm, and moments as they are.
      columns.m.set(row.name, ((perMass + perStarboard * (restOf(slot) - slot.offset[0])) * unit) / 1e3);
      columns.q.set(row.name, (perAft * unit) / 1e6);
      columns.s.set(row.name, (perStarboard * unit) / 1e6);
      columns.p.set(row.name, (-perStarboard * unit) / 1e6);
    }
    variables.set(`m${i}`, columns.m).set(`q${i}`, columns.q).set(`s${i}`, columns.s).set(`p${i}`, columns.p);
  }
  const integers = slots.flatMap((slot, i) => {
    if (options.cut?.has(slot) || slot.pieces.length === 0) return [];
    return wholePieces(slot, i, { constraints, variables });
  });
  const model: Model<string, string> = { direction: 'minimize', objective: 'cost', constraints, variables, integers };
  const solution = solve(model, { includeZeroVariables: true, maxIterations: MOST_BRANCHES });
  if (solution.status !== 'optimal') return null;
  const found = new Map(solution.variables);
  const shares = slots.map((slot, i): Share => {
    const grams = found.get(`m${i}`) ?? 0;
    const along = grams > 0 ? (found.get(`q${i}`) ?? 0) / grams : 0;
    const across = grams > 0 ? ((found.get(`s${i}`) ?? 0) - (found.get(`p${i}`) ?? 0)) / grams : 0;
    return {
      slot,
      mass: grams / 1e3,
      station: slot.station[0] + along / 1e3,
      offset: restOf(slot) + across / 1e3,
      counts: countsOf(
        slot,
        stepsOf(slot).map((_, k) => Math.round(found.get(`n${i}.${k}`) ?? 0)),
      ),
    };
  });
  return { shares, cost: solution.result };
}

function addRow(
  { name, measure, wanted }: Row,
  constraints: Map<string, Constraint>,
  variables: Map<string, Map<string, number>>,
  elastic: boolean,
): void {
  const unit = UNIT[measure];
  const miss = (kind: string, sign: number, price: number, most: number) => {
    const column = new Map([
      [name, -sign],
      ['cost', price],
    ]);
    if (Number.isFinite(most)) {
      constraints.set(`${kind} ${name}`, { max: most });
      column.set(`${kind} ${name}`, 1);
    }
    variables.set(`${kind} ${name}`, column);
  };
  if ('least' in wanted) {
    if (Number.isFinite(wanted.least)) constraints.set(name, { min: unit * wanted.least });
    if (Number.isFinite(wanted.most)) constraints.set(name, { ...constraints.get(name), max: unit * wanted.most });
    if (!elastic) return;
    for (const [kind, sign] of SIDES) miss(`far ${kind}`, sign, GRAMS_PER_MISS / 1e3, Number.POSITIVE_INFINITY);
    return;
  }
  const slack = unit * wanted.slack;
  // A trace of rounding as an aim can mislead the solver into giving up.
  const isNothing = Math.abs(wanted.value) < ROUNDING * wanted.slack;
  constraints.set(name, { equal: isNothing ? 0 : unit * wanted.value });
  for (const [kind, sign] of SIDES) {
    miss(kind, sign, GRAMS_PER_SLACK / slack, slack);
    if (elastic) miss(`far ${kind}`, sign, GRAMS_PER_MISS / slack, Number.POSITIVE_INFINITY);
  }
}

const SIDES = [
  ['over', 1],
  ['under', -1],
] as const;

/** The lever's mass is made up of whole pieces: so many of each. */
function wholePieces(
  slot: Slot,
  i: number,
  into: { readonly constraints: Map<string, Constraint>; readonly variables: Map<string, Map<string, number>> },
): readonly string[] {
  into.constraints.set(`whole${i}`, { equal: 0 });
  into.variables.get(`m${i}`)?.set(`whole${i}`, 1);
  return stepsOf(slot).map((mass, k) => {
    into.variables.set(`n${i}.${k}`, new Map([[`whole${i}`, -1e3 * mass]]));
    return `n${i}.${k}`;
  });
}

/**
 * The steps that a lever's mass is counted in, kg. Where every piece is so many of the smallest, that one alone: two small
 * pieces and one of twice the mass are the same to the balances, and the solver need not try both.
 */
function stepsOf({ pieces }: Slot): readonly number[] {
  const smallest = Math.min(...pieces);
  return pieces.every(mass => Math.abs(mass / smallest - Math.round(mass / smallest)) < 1e-9) ? [smallest] : pieces;
}

/** So many of each piece, large ones first, from so many steps. */
function countsOf({ pieces }: Slot, counted: readonly number[]): readonly number[] {
  if (counted.length === pieces.length || pieces.length === 0) return counted;
  const smallest = Math.min(...pieces);
  let left = counted[0]!;
  const counts = pieces.map(() => 0);
  for (const k of [...pieces.keys()].sort((a, b) => pieces[b]! - pieces[a]!)) {
    const size = Math.round(pieces[k]! / smallest);
    counts[k] = Math.floor(left / size);
    left -= counts[k] * size;
  }
  return counts;
}

interface Columns {
  readonly m: Map<string, number>;
  readonly q: Map<string, number>;
  readonly s: Map<string, number>;
  readonly p: Map<string, number>;
}

/** The columns of a lever with what keeps its piece inside the room. */
function roomColumns(slot: Slot, i: number, constraints: Map<string, Constraint>, options: ProgramOptions): Columns {
  const m = new Map([['cost', priceOf(slot)]]);
  const q = new Map<string, number>();
  const s = new Map([['cost', PRICE_OFF_CENTRE]]);
  const p = new Map([['cost', PRICE_OFF_CENTRE]]);
  const room = 1e3 * (slot.station[1] - slot.station[0]);
  const longest = room * slot.massPerLength;
  const cut = options.cut?.get(slot);
  const known = cut ?? options.near?.get(slot);
  const tangents = [
    ...(known === undefined ? [] : [Math.min(1e3 * known, longest)]),
    ...(cut === undefined ? Array.from({ length: TANGENTS }, (_, t) => (longest * t) / (TANGENTS - 1)) : []),
  ];
  for (const [t, at] of tangents.entries()) {
    // m²/(2λ) >= slope·m - rest
    const slope = at / slot.massPerLength;
    const rest = (at * at) / (2 * slot.massPerLength);
    constraints.set(`fore${i}.${t}`, { min: -rest });
    m.set(`fore${i}.${t}`, -slope);
    q.set(`fore${i}.${t}`, 1);
    constraints.set(`aft${i}.${t}`, { max: rest });
    m.set(`aft${i}.${t}`, slope - room);
    q.set(`aft${i}.${t}`, 1);
  }
  const rest = restOf(slot);
  for (const [side, column, reach] of [
    [`starboard${i}`, s, slot.offset[1] - rest],
    [`port${i}`, p, rest - slot.offset[0]],
  ] as const) {
    constraints.set(side, { max: 0 });
    m.set(side, -1e3 * reach);
    column.set(side, 1);
  }
  if (cut !== undefined) {
    constraints.set(`cut${i}`, { equal: 1e3 * cut });
    m.set(`cut${i}`, 1);
  }
  return { m, q, s, p };
}
