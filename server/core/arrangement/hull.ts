import type { Bounds } from '../geometry/cut/solids.ts';
import type { Vec3 } from '../geometry/form/vector.ts';
import type { CrossSection } from '../geometry/shapes/crossSection.ts';
import type { Shapes } from '../geometry/shapes/shapes.ts';
import type { Occupant } from './occupant.ts';

/** What the boat is held against. m, boat axes. */
export interface Hull {
  /** Null where the file does not say it. */
  readonly length: number | null;
  /** The things that are the hull itself: its main shells, or its largest compartments where no shell holds them. */
  readonly own: readonly Occupant[];
  /** Height of its lowest point, or the baseline where that is lower. */
  readonly keel: number;
  /**
   * How far a place lies outside the outer form of the shells at its station, m; 0 within, null where the file does not
   * tell what the hull is at that station.
   */
  readonly outside: (place: Vec3) => number | null;
}

/** A shell of less than this share of the largest one's cross-section is a fin or a casing, not the hull. */
const MAIN = 0.25;
/** The shells of a hull reach over so much of its length at least. */
const WHOLE = 0.6;
/** The room about the shells is at least so much of that about the largest compartment, or they do not hold it. */
const HOLDS = 0.9;

export function hullOf(things: readonly Occupant[], length: number | null, shapes: Shapes): Hull {
  const shells = things.filter(({ kind, form }) => kind === 'shell' && form);
  const compartments = things.filter(({ kind, form }) => kind === 'compartment' && form);
  const main = mainOf(shells);
  const holds = main.length > 0 && isWholeHull(main, compartments, length);
  const own = holds ? main : mainOf(compartments);
  const keel = Math.min(0, ...own.map(({ bounds }) => bounds.from[2]));
  if (!holds) return { length, own, keel, outside: () => null };
  const sectionsOf = (some: readonly Occupant[]) => some.flatMap(({ form }) => shapes.crossSectionsOf(form!));
  return { length, own, keel, outside: outsideOf(sectionsOf(main), sectionsOf(shells)) };
}

function mainOf(things: readonly Occupant[]): readonly Occupant[] {
  const areas = things.map(({ bounds }) => across(bounds));
  const most = Math.max(0, ...areas);
  return things.filter((_, i) => areas[i]! >= MAIN * most);
}

const across = ({ from, to }: Bounds): number => (to[1] - from[1]) * (to[2] - from[2]);
const room = (bounds: Bounds): number => across(bounds) * (bounds.to[0] - bounds.from[0]);

function isWholeHull(main: readonly Occupant[], compartments: readonly Occupant[], length: number | null): boolean {
  const from = Math.min(...main.map(({ bounds }) => bounds.from[0]));
  const to = Math.max(...main.map(({ bounds }) => bounds.to[0]));
  const shelled = main.reduce((sum, { bounds }) => sum + room(bounds), 0);
  const largest = Math.max(0, ...compartments.map(({ bounds }) => room(bounds)));
  return (length === null || to - from >= WHOLE * length) && shelled >= HOLDS * largest;
}

/** A place is outside where a main shell reaches its station and it lies in none of the shells there. */
function outsideOf(main: readonly CrossSection[], all: readonly CrossSection[]): Hull['outside'] {
  return ([x, y, z]) => {
    if (!main.some(section => section(x))) return null;
    let least = Infinity;
    for (const section of all) {
      const there = section(x);
      if (!there) continue;
      least = Math.min(least, there([y, z]));
      if (least === 0) return 0;
    }
    return least;
  };
}
