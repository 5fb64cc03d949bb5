import type { Bounds } from '../cut/solids.ts';
import type { Form, Revolved } from '../form/form.ts';
import type { Point2 } from '../outline/outline.ts';
import { planeSection } from '../outline/planeSection.ts';

/**
 * What a form is at a station: how far a place [offset, height] there lies outside its outer form, m; 0 within. Null where
 * the form does not reach. A hollow counts as within: between two walls side by side, or one above the other.
 */
export type CrossSection = (station: number) => ((place: Point2) => number) | null;

/** Triangles from which a mesh is cut at a set of stations instead of at each that is asked for. */
const MANY = 3000;
/** Of those stations, in the length of the mesh. */
const STATIONS = 128;
/** Stations that are remembered. */
const REMEMBERED = 600;
/** The first and the last cut lie this share of the length within the form: at its very end there is nothing to cut. */
const END = 1e-6;

/** The sections of a form, those of each of its parts. */
export function crossSectionsOf(form: Form, boundsOf: (form: Form) => Bounds): readonly CrossSection[] {
  if (form.shape === 'compound') return form.parts.flatMap(part => crossSectionsOf(part, boundsOf));
  const { from, to } = boundsOf(form);
  return [crossSectionOf(form, [from[0], to[0]])];
}

function crossSectionOf(form: Form, [from, to]: readonly [number, number]): CrossSection {
  if (form.shape === 'revolved' && Math.abs(form.axis[0]) === 1) return roundSection(form, [from, to]);
  const length = to - from;
  const step = form.shape === 'polyhedron' && form.faces.length > 3 * MANY ? length / STATIONS : 0;
  const known = new Map<number, ((place: Point2) => number) | null>();
  return station => {
    if (!(station >= from && station <= to)) return null;
    const near = step > 0 ? from + step * Math.round((station - from) / step) : station;
    const at = Math.min(Math.max(near, from + END * length), to - END * length);
    const had = known.get(at);
    if (had !== undefined) return had;
    if (known.size >= REMEMBERED) known.clear();
    const loops = planeSection(form, [1, 0, 0], at).map(loop => loop.map(([, y, z]): Point2 => [y, z]));
    const made = loops.length > 0 ? (place: Point2) => outsideOf(loops, place) : null;
    known.set(at, made);
    return made;
  };
}

function roundSection({ origin, axis, profile }: Revolved, [from, to]: readonly [number, number]): CrossSection {
  return station => {
    if (!(station >= from && station <= to)) return null;
    const s = (station - origin[0]) * axis[0];
    let radius = 0;
    for (let i = 1; i < profile.length; i++) {
      const [[s0, r0], [s1, r1]] = [profile[i - 1]!, profile[i]!];
      if (s < s0 || s > s1) continue;
      radius = Math.max(radius, s1 > s0 ? r0 + ((r1 - r0) * (s - s0)) / (s1 - s0) : Math.max(r0, r1));
    }
    return ([y, z]) => Math.max(0, Math.hypot(y - origin[1], z - origin[2]) - radius);
  };
}

/** Closed lines and a place: 0 between their walls, else the distance to the nearest. */
function outsideOf(loops: readonly (readonly Point2[])[], place: Point2): number {
  return isBetween(loops, place) ? 0 : Math.sqrt(leastSquare(loops, place));
}

function isBetween(loops: readonly (readonly Point2[])[], [y, z]: Point2): boolean {
  let [port, starboard, below, above] = [false, false, false, false];
  for (const loop of loops) {
    let [y0, z0] = loop.at(-1)!;
    for (const [y1, z1] of loop) {
      if (z0 > z !== z1 > z) {
        const at = y0 + ((y1 - y0) * (z - z0)) / (z1 - z0);
        if (at <= y) port = true;
        if (at >= y) starboard = true;
      }
      if (y0 > y !== y1 > y) {
        const at = z0 + ((z1 - z0) * (y - y0)) / (y1 - y0);
        if (at <= z) below = true;
        if (at >= z) above = true;
      }
      [y0, z0] = [y1, z1];
    }
  }
  return (port && starboard) || (below && above);
}

/** The square of the distance from a place to the nearest of some closed lines. */
function leastSquare(loops: readonly (readonly Point2[])[], [y, z]: Point2): number {
  let square = Infinity;
  for (const loop of loops) {
    let [y0, z0] = loop.at(-1)!;
    for (const [y1, z1] of loop) {
      const [dy, dz] = [y1 - y0, z1 - z0];
      const long = dy * dy + dz * dz;
      const f = long > 0 ? Math.min(1, Math.max(0, ((y - y0) * dy + (z - z0) * dz) / long)) : 0;
      const [offY, offZ] = [y - y0 - f * dy, z - z0 - f * dz];
      square = Math.min(square, offY * offY + offZ * offZ);
      [y0, z0] = [y1, z1];
    }
  }
  return square;
}
