import { findMaterial } from '../../../../schema/materials.ts';
import type { Bay, Boat, Part, StockMaterial } from '../../boat/boat.ts';
import type { Vec3 } from '../../geometry/form/vector.ts';

/**
 * A stretch of a bay that is still free, and the strip that pieces for it are cut from. A piece lies fore and aft in it:
 * its mass and where it lies are free, its cross-section is the strip's. Lead lies on the bay's floor, foam under its
 * roof.
 */
export interface Slot {
  readonly bay: Bay;
  readonly material: 'lead' | 'foam';
  /** It is poured: loose shot between two dams, which fills its cross-section from below. */
  readonly isShot: boolean;
  /** Of what displaces, kg/m3: of shot the metal alone, for water fills its gaps. */
  readonly density: number;
  /** Cross-section of the piece, m. */
  readonly breadth: number;
  readonly depth: number;
  /** How many strips of the stock lie side by side in it, and how many on top of each other. */
  readonly strips: readonly [abreast: number, layers: number];
  /** kg per metre of length. */
  readonly massPerLength: number;
  /** Masses of the whole pieces that it must be made up of, kg; empty when it is cut to any length. */
  readonly pieces: readonly number[];
  /** Free room: stations between which the piece lies, and where its middle may be athwart, m. */
  readonly station: readonly [number, number];
  readonly offset: readonly [number, number];
  /** Height of the middle of the piece, m. */
  readonly height: number;
}

/** A piece laid in a slot's room. */
export interface Piece {
  readonly slot: Slot;
  /** kg. */
  readonly mass: number;
  /** Ends, m. */
  readonly station: readonly [number, number];
  /** Middle athwart, m. */
  readonly offset: number;
  /** How many of each whole piece it is made up of, as in the slot's `pieces`; empty when it is cut. */
  readonly counts: readonly number[];
}

/** Free stretches shorter than this are of no use, m. */
const SHORTEST_ROOM = 0.004;

/** What may still be put aboard: every free stretch of every bay that the stock fits into. */
export const findSlots = (boat: Boat): readonly Slot[] =>
  boat.bays.flatMap(bay => {
    const [usual] = sectionsFor(bay, boat.stock[bay.takes]);
    return usual ? slotsOf(bay, usual, boat) : [];
  });

/**
 * The same with each way to cut or lay the stock, the one to try first at the head: only a piece narrower than its bay can
 * hold a list, only one as broad as the bay fills it. A single set where there is no choice.
 */
export function slotSets(boat: Boat, isListing: boolean): readonly (readonly Slot[])[] {
  const ways = boat.bays.map(bay => {
    const stock = boat.stock[bay.takes];
    const sections = sectionsFor(bay, stock);
    // A strip, and whole pieces in a single row, can hold a list as they are.
    return isListing && !stock.strip && stock.pieces.length === 0 ? [...sections].reverse() : sections;
  });
  const sets = Math.max(1, ...ways.map(({ length }) => length));
  return Array.from({ length: sets }, (_, k) =>
    boat.bays.flatMap((bay, i) => {
      const section = ways[i]![Math.min(k, ways[i]!.length - 1)];
      return section ? slotsOf(bay, section, boat) : [];
    }),
  );
}

function slotsOf(bay: Bay, { size: [breadth, depth], strips, isShot }: Section, boat: Boat): readonly Slot[] {
  const stock = boat.stock[bay.takes];
  const offset = [bay.from[1] + breadth / 2, bay.to[1] - breadth / 2] as const;
  const height = bay.takes === 'lead' ? bay.from[2] + depth / 2 : bay.to[2] - depth / 2;
  const slab: Box = {
    from: [bay.from[0], bay.from[1], height - depth / 2],
    to: [bay.to[0], bay.to[1], height + depth / 2],
  };
  return freeStretches(slab, boat.payload, bay.inside)
    .filter(([from, to]) => to - from >= SHORTEST_ROOM)
    .map(station => ({
      bay,
      material: bay.takes,
      isShot,
      density: isShot ? SHOT.density : stock.density,
      breadth,
      depth,
      strips,
      massPerLength: (isShot ? stock.shot! : stock.density) * breadth * depth,
      pieces: isShot ? [] : stock.pieces,
      station,
      offset,
      height,
    }));
}

type Size = readonly [breadth: number, depth: number];

interface Section {
  readonly size: Size;
  readonly strips: readonly [abreast: number, layers: number];
  readonly isShot: boolean;
}

const inOne = (size: Size, isShot = false): Section => ({ size, strips: [1, 1], isShot });

const SHOT = findMaterial('lead shot')!;

/**
 * Cross-sections that pieces for a bay may have, the usual one first; none where the stock does not fit. A strip lies flat,
 * or on edge where it does not fit flat; then as many abreast as the bay is broad, and in as many layers as fill it. Whole pieces are taken for cubes laid in a row, or in as many rows as lie abreast. Where the stock says
 * nothing, pieces are as deep as the bay, and as broad or half as broad.
 */
function sectionsFor(bay: Bay, stock: StockMaterial): readonly Section[] {
  const room: Size = [bay.to[1] - bay.from[1], bay.to[2] - bay.from[2]];
  const hasOther = stock.strip !== null || stock.pieces.length > 0;
  const poured =
    stock.shot !== null && room[0] > 0 && room[1] > 0 ? POURED.map(part => inOne([room[0], part * room[1]], true)) : [];
  return stock.shot !== null && !hasOther ? poured : [...solidSections(bay, stock), ...poured];
}

/** How deep a bay is filled, the first to try first. */
const POURED = [1, 1 / 2, 1 / 4];

function solidSections(bay: Bay, stock: StockMaterial): readonly Section[] {
  const room: Size = [bay.to[1] - bay.from[1], bay.to[2] - bay.from[2]];
  if (stock.strip) {
    const [b, d] = stock.strip;
    const ways = [[b, d] as const, [d, b] as const].map(size => ({
      size,
      abreast: Math.floor(room[0] / size[0] + HAIR),
      layers: Math.floor(room[1] / size[1] + HAIR),
    }));
    const [usual, other] = ways.filter(({ abreast, layers }) => abreast * layers > 0);
    if (!usual) return [];
    const fullest = other && other.abreast * other.layers > usual.abreast * usual.layers ? other : usual;
    const sections = [
      bundle(usual.size, 1, 1),
      bundle(usual.size, usual.abreast, 1),
      bundle(fullest.size, fullest.abreast, fullest.layers),
    ];
    return sections.filter(({ strips }, i) => i === 0 || strips[0] * strips[1] > product(sections[i - 1]!.strips));
  }
  if (room[0] <= 0 || room[1] <= 0) return [];
  if (stock.pieces.length === 0) return [inOne(room), inOne([room[0] / 2, room[1]])];
  const cube = Math.cbrt(Math.max(...stock.pieces) / stock.density);
  const [breadth, depth] = [Math.min(cube, room[0]), Math.min(cube, room[1])];
  const row = inOne([breadth, depth]);
  const abreast = Math.floor(room[0] / breadth + HAIR);
  return abreast > 1 ? [row, inOne([abreast * breadth, depth])] : [row];
}

const bundle = ([breadth, depth]: Size, abreast: number, layers: number): Section => ({
  size: [abreast * breadth, layers * depth],
  strips: [abreast, layers],
  isShot: false,
});

const product = ([abreast, layers]: Section['strips']): number => abreast * layers;

/** Sizes that differ by less are the same on the bench, m. */
const HAIR = 1e-6;

interface Box {
  readonly from: Vec3;
  readonly to: Vec3;
}

/** The stations of the slab that no part takes up already, whole breadth. */
function freeStretches(
  slab: Box,
  parts: readonly Part[],
  inside: string | null,
): readonly (readonly [number, number])[] {
  const taken = parts
    .filter(part => part.inside === inside && meets(part, slab))
    .map(part => [part.from[0], part.to[0]] as const)
    .sort((a, b) => a[0] - b[0]);
  const free: (readonly [number, number])[] = [];
  let from = slab.from[0];
  for (const [start, end] of taken) {
    if (start > from) free.push([from, start]);
    from = Math.max(from, end);
  }
  if (from < slab.to[0]) free.push([from, slab.to[0]]);
  return free;
}

/** Two boxes take up room in common. */
export const meets = (a: Box, b: Box): boolean =>
  ([0, 1, 2] as const).every(axis => a.from[axis] < b.to[axis] - HAIR && a.to[axis] > b.from[axis] + HAIR);
