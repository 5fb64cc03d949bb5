import type { Steps } from '../../steps/steps.ts';
import { weldSteps } from '../cut/weld.ts';
import type { Polyhedron } from '../form/form.ts';
import type { Vec3 } from '../form/vector.ts';
import { type Crossings, countedTwice, findCrossings } from './crossings.ts';
import { meshEdgesSteps } from './meshEdges.ts';
import { closeGaps, findGaps, type Gap, volumeUnder } from './meshGaps.ts';
import { insideOut, orientSteps } from './meshPieces.ts';
import { onceEach } from './repeatedFaces.ts';

/** A mesh made fit for sums, and what was wrong with it. Lengths are in the mesh's own unit. */
export interface CheckedMesh {
  /** Welded, neighbours agreeing, outward; with the holes that it has. */
  readonly surface: Polyhedron;
  /** The same with its holes closed straight across. */
  readonly closed: Polyhedron;
  /** That without what lies in hollows of it: the surface that water meets. */
  readonly outer: Polyhedron;
  readonly faults: MeshFaults;
}

export interface MeshFaults {
  /** Triangles as they came. */
  readonly triangles: number;
  /** Corners closer than this were joined. */
  readonly tolerance: number;
  /** Corners that lay apart by less than that. */
  readonly joined: number;
  /** Triangles with two corners in one spot, left out. */
  readonly degenerate: number;
  /** Triangles on the same corners as another, facing the same way, left out. */
  readonly repeated: number;
  /** Edges that have a triangle on one side only. */
  readonly openEdges: number;
  /** Holes that one can see through, and the width of the widest; the other open edges are seams without width. */
  readonly gaps: number;
  readonly widestGap: number;
  /** Share of the volume that hangs on how the holes are closed: what lies under straight lids, seen from the middle. */
  readonly atStake: number;
  /** Edges that three triangles or more have. */
  readonly crowdedEdges: number;
  /** Edges across which the sides cannot agree. */
  readonly twisted: number;
  /** Triangles that faced the wrong way and were turned over. */
  readonly turned: number;
  /** Closed pieces inside another, taken as hollows. */
  readonly cavities: number;
  readonly crossings: Crossings;
  /** Share of the volume that crossing pieces count twice; null without crossings, or where holes or too many of them leave it untold. */
  readonly countedTwice: number | null;
}

/** Corners closer than this share of the mesh's diagonal are one: STL's numbers keep about seven digits. */
const WELD_SHARE = 1e-6;
/** A hole narrower than so many times the welding tolerance is a seam. */
const SEAM = 4;

/** Null for a mesh without any extent, or with none that is more than the rounding of its numbers. */
export function* checkMeshSteps(raw: Polyhedron): Steps<CheckedMesh | null> {
  const diagonal = diagonalOf(raw);
  yield;
  const farthest = raw.vertices.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  if (!(diagonal > WELD_SHARE * farthest && diagonal < Infinity)) return null;
  const tolerance = WELD_SHARE * diagonal;
  yield;
  const welded = yield* weldSteps(raw, tolerance);
  if (welded.form.faces.length === 0) return null;
  yield;
  const { form: single, repeated } = yield* onceEach(welded.form);
  yield;
  const edges = yield* meshEdgesSteps(single);
  yield;
  const oriented = yield* orientSteps(single, edges);
  yield;
  const found = yield* findGaps(oriented.form, oriented.turned > 0 ? yield* meshEdgesSteps(oriented.form) : edges);
  yield;
  let closed = closeGaps(oriented.form, found);
  yield;
  let surface = oriented.form;
  let { turned } = oriented;
  let body = volumeOf(closed);
  if (body.volume < 0) {
    yield;
    surface = insideOut(surface);
    closed = closed === oriented.form ? surface : insideOut(closed);
    turned = surface.faces.length / 3 - turned;
    yield;
    body = volumeOf(closed);
  }
  yield;
  const wide = found.filter(gap => isWide(gap, tolerance));
  const under = wide.reduce((sum, gap) => sum + volumeUnder(closed, gap, body.centroid), 0);
  yield;
  const crossings = yield* findCrossings(surface, tolerance);
  return {
    surface,
    closed,
    outer: oriented.inner ? withoutFaces(closed, oriented.inner) : closed,
    faults: {
      triangles: raw.faces.length / 3,
      tolerance,
      joined: welded.joined,
      degenerate: welded.degenerate,
      repeated,
      openEdges: found.reduce((sum, gap) => sum + gap.rim.length, 0),
      gaps: wide.length,
      widestGap: wide.reduce((widest, gap) => Math.max(widest, gap.width), 0),
      atStake: body.volume > 0 ? Math.min(1, under / body.volume) : Math.min(1, wide.length),
      crowdedEdges: edges.crowded.length,
      twisted: oriented.twisted,
      turned,
      cavities: oriented.cavities,
      crossings,
      countedTwice: crossings.pairs > 0 && wide.length === 0 ? yield* countedTwice(closed) : null,
    },
  };
}

const withoutFaces = (form: Polyhedron, left: Uint8Array): Polyhedron => ({
  ...form,
  faces: form.faces.filter((_, i) => left[Math.trunc(i / 3)] !== 1),
});

const isWide = (gap: Gap, tolerance: number): boolean => gap.area > SEAM * tolerance * gap.width;

function diagonalOf({ vertices }: Polyhedron): number {
  let square = 0;
  for (let axis = 0; axis < 3; axis++) {
    let [least, most] = [Infinity, -Infinity];
    for (let i = axis; i < vertices.length; i += 3) {
      least = Math.min(least, vertices[i]!);
      most = Math.max(most, vertices[i]!);
    }
    square += (most - least) ** 2;
  }
  return Math.sqrt(square);
}

/** Signed volume and centroid of a closed surface, from the tetrahedra between one of its corners and its triangles. */
function volumeOf({ vertices, faces }: Polyhedron): { readonly volume: number; readonly centroid: Vec3 } {
  const at = (vertex: number, axis: number): number => vertices[3 * vertex + axis]! - vertices[axis]!;
  let [volume, mx, my, mz] = [0, 0, 0, 0];
  for (let i = 0; i < faces.length; i += 3) {
    const [a, b, c] = [faces[i]!, faces[i + 1]!, faces[i + 2]!];
    const [ax, ay, az] = [at(a, 0), at(a, 1), at(a, 2)];
    const [bx, by, bz] = [at(b, 0), at(b, 1), at(b, 2)];
    const [cx, cy, cz] = [at(c, 0), at(c, 1), at(c, 2)];
    const each = (ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx)) / 6;
    volume += each;
    mx += (each * (ax + bx + cx)) / 4;
    my += (each * (ay + by + cy)) / 4;
    mz += (each * (az + bz + cz)) / 4;
  }
  return { volume, centroid: [mx / volume + vertices[0]!, my / volume + vertices[1]!, mz / volume + vertices[2]!] };
}
