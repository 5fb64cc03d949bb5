import type { HighsSolution } from 'highs';
import highsLoader from 'highs';
import { broughtBy, broughtByMove } from '../../server/core/corrections/balance/brought.ts';
import type { BalanceRow, Scope } from '../../server/core/corrections/balance/row.ts';
import type { CorrectedBoat } from '../../server/core/corrections/correction.ts';
import type { BoatToTrim } from '../../server/core/corrections/room/boatToTrim.ts';
import { findMovers, type Move, type Mover } from '../../server/core/corrections/room/movers.ts';
import { shifted } from '../../server/core/corrections/room/shift.ts';
import { type Piece, type Slot, slotSets } from '../../server/core/corrections/room/slots.ts';
import { balancesOf } from '../../server/core/corrections/search/balances.ts';
import { benchFor } from '../../server/core/corrections/search/correct.ts';
import { lay } from '../../server/core/corrections/search/realise.ts';
import { linearText } from './linearText.ts';

/*
 * What a builder with a week to think would find: HiGHS (highs-js 1.15.3) over all bays at once, each filled in any way the
 * stock can be laid, with things moved besides; cut to the millimetre and floated. Its pieces refute a refusal when the
 * boat then keeps all limits.
 */

const highs = await highsLoader();

/** What a builder does in one go at most. */
const MOST_PIECES = 5;
const MOST_MOVED = 2;
/** Ways to bundle strips in a bay that are tried. */
const MOST_BUNDLES = 8;

/** Ways to fill each bay: slots of one way stand together. */
type WaysOfBay = readonly (readonly Slot[])[];

/** Every bay with every way of the program's, and any number of strips abreast and in layers. */
function waysOf({ boat }: BoatToTrim): readonly WaysOfBay[] {
  const sets = [...slotSets(boat, false), ...slotSets(boat, true)];
  return boat.bays
    .map(bay => {
      const own = sets.map(set => set.filter(slot => slot.bay.name === bay.name)).filter(set => set.length > 0);
      const ways = [...own, ...own.slice(0, 1).flatMap(([single]) => bundlesOf(single!))];
      const keyOf = (way: readonly Slot[]) =>
        JSON.stringify(way.map(({ breadth, depth, isShot }) => [breadth, depth, isShot]));
      return [...new Map(ways.map(way => [keyOf(way), way])).values()];
    })
    .filter(ways => ways.length > 0);
}

function bundlesOf(single: Slot): WaysOfBay {
  const { bay, breadth, depth, strips, isShot, pieces } = single;
  if (strips[0] * strips[1] > 1 || isShot || pieces.length > 0) return [];
  const abreast = Math.floor((bay.to[1] - bay.from[1]) / breadth + 1e-6);
  const layers = Math.floor((bay.to[2] - bay.from[2]) / depth + 1e-6);
  const bundles: Slot[][] = [];
  for (let a = 1; a <= abreast; a++) {
    for (let l = 1; l <= layers; l++) {
      const [wide, deep] = [a * breadth, l * depth];
      bundles.push([
        {
          ...single,
          breadth: wide,
          depth: deep,
          strips: [a, l],
          massPerLength: single.density * wide * deep,
          offset: [bay.from[1] + wide / 2, bay.to[1] - wide / 2],
          height: bay.takes === 'lead' ? bay.from[2] + deep / 2 : bay.to[2] - deep / 2,
        },
      ]);
    }
  }
  return bundles.slice(0, MOST_BUNDLES);
}

const PARTS = [0.6, 0.8, 0.95, 1] as const;
const ROUNDS = 4;

/** Pieces and moves with which the boat keeps all limits, by the full model; null when none were found. */
export function heldByBound(boatToTrim: BoatToTrim, scope: Scope): CorrectedBoat | null {
  const ways = waysOf(boatToTrim);
  const slots = ways.flat(2);
  const movers = findMovers(boatToTrim);
  const either = ways.map(of => of.map(way => way.map(slot => slots.indexOf(slot))));
  const bench = benchFor(boatToTrim, scope, 1);
  for (const part of PARTS) {
    const rowsFor = balancesOf(boatToTrim, scope, part);
    let laid: CorrectedBoat | null = null;
    for (let round = 0; round < ROUNDS; round++) {
      const rows = rowsFor(laid);
      const found = solve(linearText(slots, rows, { movers, either, mostPieces: MOST_PIECES, mostMoved: MOST_MOVED }));
      if (!found) break;
      const used = slots.flatMap((slot, i) => (primalOf(found, `m${i}`) > 0.02 ? [{ slot, i }] : []));
      const pieces = used.map(({ slot, i }) => pieceOf(slot, `${i}`, found));
      const moved = movers.filter(
        (_, j) => Math.abs(primalOf(found, `x${j}`)) + Math.abs(primalOf(found, `y${j}`)) > 1,
      );
      const slid = slideTo(pieces, moved, rows);
      const next = slid && lay(slid.pieces, slid.moves, bench);
      if (!next) break;
      if (next.left.length === 0 && next.moves.every(move => liesInside(move, boatToTrim))) return next;
      laid = next;
    }
  }
  return null;
}

/** What is moved is still in its compartment by its middle: how far it may go is told by boxes, and most rooms are round. */
function liesInside({ moved }: Move, { boat, source }: BoatToTrim): boolean {
  const home = boat.compartments.find(({ name }) => name === moved.inside);
  const middle = [0, 1, 2].map(axis => (moved.from[axis]! + moved.to[axis]!) / 2) as [number, number, number];
  return !home || source.around.shapes.depthIn(home.form)(middle) >= 0;
}

function solve(text: string): HighsSolution | null {
  const found = solved(text);
  return found.Status === 'Optimal' || (found.Status === 'Time limit reached' && 'm0' in found.Columns) ? found : null;
}

/** Its search over whole numbers now and then gives up in error: then without them, for what it finds is floated in any case. */
function solved(text: string): HighsSolution {
  try {
    return highs.solve(text, { time_limit: 5 });
  } catch {
    return highs.solve(text.replace(/^(?:General|Binary)$[\s\S]*(?=^End)/m, ''), { time_limit: 5 });
  }
}

const primalOf = (found: HighsSolution, name: string): number => {
  const column = found.Columns[name];
  return column && 'Primal' in column ? column.Primal : 0;
};

const MM = 1e-3;

/** Cut to the millimetre, or so many whole pieces; where the programme has it. */
function pieceOf(slot: Slot, i: string, found: HighsSolution): Piece {
  const grams = primalOf(found, `m${i}`);
  const counts = slot.pieces.map((_, k) => Math.round(primalOf(found, `n${i}x${k}`)));
  const room = slot.station[1] - slot.station[0];
  const long =
    counts.length > 0
      ? counts.reduce((sum, count, k) => sum + count * slot.pieces[k]!, 0) / slot.massPerLength
      : Math.min(Math.max(MM, Math.round(grams / 1e3 / slot.massPerLength / MM) * MM), Math.floor(room / MM) * MM);
  const middle = slot.station[0] + primalOf(found, `q${i}`) / grams / 1e3;
  return { slot, mass: long * slot.massPerLength, station: [middle - long / 2, middle + long / 2], offset: 0, counts };
}

interface Done {
  readonly pieces: readonly Piece[];
  readonly moves: readonly Move[];
}

/** As cut, at the marks of the tape where they balance best. */
function slideTo(pieces: readonly Piece[], movers: readonly Mover[], rows: readonly BalanceRow[]): Done | null {
  const found = solve(
    linearText(
      pieces.map(({ slot }) => slot),
      rows.map(loose),
      { movers, cut: pieces.map(({ mass }) => mass) },
    ),
  );
  if (!found) return null;
  const onMarks = pieces.map((piece, i): Piece => {
    const { slot } = piece;
    const grams = primalOf(found, `m${i}`);
    const long = piece.station[1] - piece.station[0];
    const rest = Math.min(Math.max(0, slot.offset[0]), slot.offset[1]);
    const start = slot.station[0] + primalOf(found, `q${i}`) / grams / 1e3 - long / 2;
    const marked = within(Math.round(start / MM) * MM, slot.station[0], slot.station[1] - long);
    const offset = rest + (primalOf(found, `s${i}`) - primalOf(found, `p${i}`)) / grams / 1e3;
    return { ...piece, station: [marked, marked + long], offset: within(Math.round(offset / MM) * MM, ...slot.offset) };
  });
  const moves = movers.flatMap((mover, j): Move[] => {
    const metres = (name: string) => Math.round(primalOf(found, `${name}${j}`) / mover.part.mass / 1e6 / MM) * MM;
    const [along, across] = [metres('x'), metres('y')];
    return along === 0 && across === 0
      ? []
      : [{ part: mover.part, moved: shifted(mover.part, along, across), along, across }];
  });
  return { pieces: onMarks, moves };
}

const within = (value: number, least: number, most: number): number => Math.min(Math.max(value, least), most);

/** Limits may be missed, at a price: what is cut need not be able to keep them all on paper. */
function loose(row: BalanceRow): BalanceRow {
  const { wanted } = row;
  if ('least' in wanted)
    return { ...row, wanted: { ...wanted, near: [...wanted.near, FAR], least: wanted.least - FAR.size } };
  return {
    ...row,
    wanted: { ...wanted, off: [...wanted.off, { size: 1e3 * wanted.slack, price: 1e4 / wanted.slack }] },
  };
}

const FAR = { size: 10, price: 1e4 };

/** What offers and bounds are weighed by: grams of lead, foam by its room. */
export const gramsOf = (pieces: readonly Piece[]): number =>
  pieces.reduce((sum, { mass, slot }) => sum + 1e3 * mass * (slot.material === 'lead' ? 1 : 30), 0);

/** The least that any pieces and moves of these things could cost and bring every figure as near to its middle as the offer. */
export function leastFor(boatToTrim: BoatToTrim, offer: CorrectedBoat, scope: Scope): number | null {
  const movers = findMovers(boatToTrim).filter(({ part }) => offer.moves.some(move => move.part.name === part.name));
  const rows = balancesOf(boatToTrim, scope, 0.75)(offer).map(row => asOffered(row, offer));
  const slots = slotSets(boatToTrim.boat, false);
  const least = Math.min(
    ...slots.map(set => {
      const found = solve(linearText(set, rows, { movers }));
      return found ? found.ObjectiveValue : Number.POSITIVE_INFINITY;
    }),
  );
  return Number.isFinite(least) ? least : null;
}

/** As wanted as the offer brings it, at no price. */
function asOffered(row: BalanceRow, { pieces, moves }: CorrectedBoat): BalanceRow {
  const brought =
    pieces.reduce((sum, piece) => sum + broughtBy(piece, row), 0) +
    moves.reduce((sum, move) => sum + broughtByMove(move, row), 0);
  const { wanted } = row;
  if ('least' in wanted) return { ...row, wanted: { ...wanted, least: Math.min(wanted.least, brought), near: [] } };
  const slack = Math.max(Math.abs(wanted.value - brought), 1e-3 * wanted.slack);
  return { ...row, wanted: { value: wanted.value, slack, off: [{ size: slack, price: 0 }] } };
}
