import { type Constraint, type Model, solve } from 'yalps';
import type { Mover } from '../room/movers.ts';
import type { Slot } from '../room/slots.ts';
import { type BalanceRow, keyOf, type Stretch } from './row.ts';

/** A piece of the solution: its mass and the middle of it. */
export interface SlotShare {
  readonly slot: Slot;
  /** kg. */
  readonly mass: number;
  /** m. */
  readonly station: number;
  readonly offset: number;
  /** How many of each whole piece, as in the slot's `pieces`. */
  readonly counts: readonly number[];
}

/** How far a part of the file is moved, m; aft and to starboard positive. */
export interface MoverShift {
  readonly mover: Mover;
  readonly along: number;
  readonly across: number;
}

export interface Solution {
  readonly shares: readonly SlotShare[];
  readonly shifts: readonly MoverShift[];
  /** What the programme minimises: lead in g, foam's room, the effort of moves and what it costs to be off the aims priced in g of lead. */
  readonly cost: number;
}

export interface ProgramOptions {
  /** Parts of the file that may be moved as well. */
  readonly movers?: readonly Mover[];
  /** Aims and bands may be missed at a price far above any lead: for the nearest that can be had. */
  readonly elastic?: boolean;
  /** Masses that are already cut, kg, by slot: only their places are free. */
  readonly cut?: ReadonlyMap<Slot, number>;
  /** Masses that the pieces will be about, kg, by slot: there they keep clear of their room's ends exactly. */
  readonly near?: ReadonlyMap<Slot, number>;
}

/** Grams and g·mm, so that rows are alike. */
const UNIT = { mass: 1e3, moment: 1e6 } as const;

/** Foam is so light that its room is what costs: a gram of it counts as this much lead. */
const FOAM_PRICE = 30;

/** What a gram costs, in g of lead. */
export const priceOf = ({ material }: Slot): number => (material === 'lead' ? 1 : FOAM_PRICE);

/** The price of pieces as materials, g of lead. */
export const priceOfPieces = (pieces: readonly { readonly mass: number; readonly slot: Slot }[]): number =>
  pieces.reduce((sum, { mass, slot }) => sum + 1e3 * mass * priceOf(slot), 0);

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

/** Moving costs nothing but effort, by what is moved and how far: so little, in g for each g·mm, that any lead outweighs it. */
const PRICE_OF_EFFORT = 1e-5;

/*
 * Variables of each slot, in grams and millimetres: its mass m, the moment q = m·(x - x0) aft of the forward end of its
 * room, and s and p, by which it lies to starboard or to port of where it would rest, both times m. A piece as long as
 * l = m/λ keeps clear of both ends when
 *   m²/(2λ) <= q <= m·L - m²/(2λ)
 * which is convex; tangents to m² hold it from outside, and rounding pulls the piece inside.
 */

/** Where a piece lies athwart unless it has to hold a heel: on the centreline, or as near to it as its room goes, m. */
const restOf = ({ offset }: Slot): number => Math.min(Math.max(0, offset[0]), offset[1]);

/** The cheapest pieces in these slots that satisfy every row; null when there are none. */
export function cheapestPieces(
  slots: readonly Slot[],
  rows: readonly BalanceRow[],
  options: ProgramOptions = {},
): Solution | null {
  const constraints = new Map<string, Constraint>();
  const variables = new Map<string, Map<string, number>>();
  for (const row of rows) addRow(row, constraints, variables, options.elastic ?? false);
  for (const [i, slot] of slots.entries()) {
    const columns = roomColumns(slot, i, constraints, options);
    for (const row of rows) {
      const key = keyOf(row);
      const unit = UNIT[row.measure];
      const { perMass, perAft, perStarboard } = row.effectOf(slot);
      // A moment row takes kg·m for kg at an arm in m: with g·mm the arms come in mm, and moments as they are.
      columns.m.set(key, ((perMass + perStarboard * (restOf(slot) - slot.offset[0])) * unit) / 1e3);
      columns.q.set(key, (perAft * unit) / 1e6);
      columns.s.set(key, (perStarboard * unit) / 1e6);
      columns.p.set(key, (-perStarboard * unit) / 1e6);
    }
    variables.set(`m${i}`, columns.m).set(`q${i}`, columns.q).set(`s${i}`, columns.s).set(`p${i}`, columns.p);
  }
  const movers = options.movers ?? [];
  for (const [j, mover] of movers.entries()) addMover(mover, j, rows, { constraints, variables });
  const integers = slots.flatMap((slot, i) => {
    if (options.cut?.has(slot) || slot.pieces.length === 0) return [];
    return wholePieces(slot, i, { constraints, variables });
  });
  const model: Model<string, string> = { direction: 'minimize', objective: 'cost', constraints, variables, integers };
  const solution = solve(model, { includeZeroVariables: true, maxIterations: MOST_BRANCHES });
  if (solution.status !== 'optimal') return null;
  const found = new Map(solution.variables);
  const shares = slots.map((slot, i): SlotShare => {
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
  const shifts = movers.map((mover, j): MoverShift => {
    const metres = (plus: string, minus: string) =>
      ((found.get(`${plus}${j}`) ?? 0) - (found.get(`${minus}${j}`) ?? 0)) / (mover.part.mass * 1e6);
    return { mover, along: metres('aft', 'forward'), across: metres('right', 'left') };
  });
  return { shares, shifts, cost: solution.result };
}

function addRow(
  row: BalanceRow,
  constraints: Map<string, Constraint>,
  variables: Map<string, Map<string, number>>,
  elastic: boolean,
): void {
  const { measure, wanted } = row;
  const name = keyOf(row);
  const unit = UNIT[measure];
  /** A column by which the row may be off to one side, at a price for each of its units, as far as `most` of them. */
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
  const missAlong = (kind: string, sign: number, stretches: readonly Stretch[]) => {
    for (const [k, { size, price }] of stretches.entries()) miss(`${kind}${k}`, sign, price / unit, unit * size);
  };
  if ('least' in wanted) {
    const { least, most, near } = wanted;
    const comfortable = near.reduce((sum, { size }) => sum + size, least);
    if (Number.isFinite(least)) constraints.set(name, { min: unit * comfortable });
    if (Number.isFinite(most)) constraints.set(name, { ...constraints.get(name), max: unit * most });
    missAlong('near', -1, near);
    if (!elastic) return;
    for (const [kind, sign] of SIDES) miss(`far ${kind}`, sign, GRAMS_PER_MISS / 1e3, Number.POSITIVE_INFINITY);
    return;
  }
  const slack = unit * wanted.slack;
  // A trace of rounding as an aim can mislead the solver into giving up.
  const isNothing = Math.abs(wanted.value) < ROUNDING * wanted.slack;
  constraints.set(name, { equal: isNothing ? 0 : unit * wanted.value });
  for (const [kind, sign] of SIDES) {
    missAlong(kind, sign, wanted.off);
    if (elastic) miss(`far ${kind}`, sign, GRAMS_PER_MISS / slack, Number.POSITIVE_INFINITY);
  }
}

const SIDES = [
  ['over', 1],
  ['under', -1],
] as const;

interface Tableau {
  readonly constraints: Map<string, Constraint>;
  readonly variables: Map<string, Map<string, number>>;
}

/** What a part weighs times how far it goes, g·mm, each way as far as its room allows. */
function addMover({ part, along, across }: Mover, j: number, rows: readonly BalanceRow[], into: Tableau): void {
  for (const [kind, axis, sign, reach] of [
    [`aft${j}`, 'along', 1, along.most],
    [`forward${j}`, 'along', -1, -along.least],
    [`right${j}`, 'across', 1, across.most],
    [`left${j}`, 'across', -1, -across.least],
  ] as const) {
    if (reach <= 0) continue;
    const column = new Map([['cost', PRICE_OF_EFFORT]]);
    for (const row of rows) if (row.axis === axis) column.set(keyOf(row), (sign * UNIT[row.measure]) / 1e6);
    into.constraints.set(kind, { max: part.mass * reach * 1e6 });
    column.set(kind, 1);
    into.variables.set(kind, column);
  }
}

/** The slot's mass is made up of whole pieces: so many of each. */
function wholePieces(slot: Slot, i: number, into: Tableau): readonly string[] {
  into.constraints.set(`whole${i}`, { equal: 0 });
  into.variables.get(`m${i}`)?.set(`whole${i}`, 1);
  return stepsOf(slot).map((mass, k) => {
    into.variables.set(`n${i}.${k}`, new Map([[`whole${i}`, -1e3 * mass]]));
    return `n${i}.${k}`;
  });
}

/**
 * The steps that a slot's mass is counted in, kg. Where every piece is so many of the smallest, that one alone: two small
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

/** The columns of a slot with what keeps its piece inside the room. */
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
    // As the scale shows it, a piece that fills its room may seem to be more than that takes.
    constraints.set(`cut${i}`, { equal: Math.min(1e3 * cut, longest) });
    m.set(`cut${i}`, 1);
  }
  return { m, q, s, p };
}
