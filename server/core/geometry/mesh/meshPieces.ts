import { pacer, type Steps } from '../../steps/steps.ts';
import type { BoundsTree } from '../cut/boundsTree.ts';
import { boundsTreeSteps } from '../cut/growTree.ts';
import type { Polyhedron } from '../form/form.ts';
import type { Vec3 } from '../form/vector.ts';
import { depthAt, hitsAft } from './lineCast.ts';
import { type MeshEdges, startOf } from './meshEdges.ts';

/** Triangles that hang together by edges which two of them share. */
interface Piece {
  readonly faces: readonly number[];
  /** Every edge of it has two triangles. */
  readonly isClosed: boolean;
}

interface Gathered {
  readonly pieces: readonly Piece[];
  /** Triangles to be turned over for neighbours to agree, 1 each. */
  readonly flips: Uint8Array;
  readonly twisted: number;
}

export interface Oriented {
  /** The same triangles, all outward (round a cavity: into it). */
  readonly form: Polyhedron;
  /** How many were turned over. */
  readonly turned: number;
  /** Closed pieces that bound a hollow inside another. */
  readonly cavities: number;
  /** Triangles of closed pieces that lie wholly inside another, 1 each; null when there are none. */
  readonly inner: Uint8Array | null;
  /** Edges across which no turning makes the sides agree, as on a Möbius band. */
  readonly twisted: number;
}

/** Pieces beyond which nobody looks which lies in which. */
const MANY = 64;
/** Triangles that are looked at in one step, each some five times. */
const STEP = 50_000;

/**
 * Makes neighbours agree which side is out, then each closed piece face outward; one that lies in an odd number of
 * others bounds a hollow and faces inward. An open piece keeps the side that most of its triangles say.
 */
export function* orientSteps(form: Polyhedron, edges: MeshEdges): Steps<Oriented> {
  const isDue = pacer(STEP);
  const { pieces, flips, twisted } = yield* gather(form, edges);
  if (isDue(flips.length)) yield;
  const agreed = flipped(form, face => flips[face]!);
  const rooms = yield* roomsOf(agreed, pieces);
  const inner = new Uint8Array(flips.length);
  let cavities = 0;
  for (const piece of pieces) {
    const turns = piece.faces.reduce((sum, face) => sum + flips[face]!, 0);
    let shouldTurn = 2 * turns > piece.faces.length;
    if (piece.isClosed) {
      const around = yield* countAround(agreed, piece, rooms);
      if (around > 0) for (const face of piece.faces) inner[face] = 1;
      const isHollow = around % 2 === 1;
      if (isHollow) cavities++;
      shouldTurn = volumeOf(agreed, piece) < 0 !== isHollow;
    }
    if (shouldTurn) for (const face of piece.faces) flips[face] = 1 - flips[face]!;
    if (isDue(piece.faces.length)) yield;
  }
  const turned = flips.reduce((sum, flip) => sum + flip, 0);
  return {
    form: turned === 0 ? form : flipped(form, face => flips[face]!),
    turned,
    cavities,
    inner: cavities > 0 ? inner : null,
    twisted,
  };
}

/** All triangles turned over. */
export const insideOut = (form: Polyhedron): Polyhedron => flipped(form, () => 1);

function flipped(form: Polyhedron, isFlipped: (face: number) => number): Polyhedron {
  const faces = form.faces.slice();
  for (let i = 0; i < faces.length; i += 3) {
    if (isFlipped(i / 3) === 0) continue;
    faces[i + 1] = form.faces[i + 2]!;
    faces[i + 2] = form.faces[i + 1]!;
  }
  return { ...form, faces };
}

function* gather({ faces }: Polyhedron, { mates }: MeshEdges): Steps<Gathered> {
  const count = faces.length / 3;
  const flips = new Uint8Array(count);
  const seen = new Uint8Array(count);
  const pieces: Piece[] = [];
  const isDue = pacer(STEP);
  let twisted = 0;
  for (let seed = 0; seed < count; seed++) {
    if (seen[seed]) continue;
    const piece = [seed];
    let isClosed = true;
    seen[seed] = 1;
    for (const face of piece) {
      if (isDue(1)) yield;
      for (let side = 3 * face; side < 3 * face + 3; side++) {
        const mate = mates[side]!;
        if (mate < 0) {
          isClosed = false;
          continue;
        }
        const other = Math.trunc(mate / 3);
        // Neighbours agree when each runs along the shared edge the other way.
        const wanted = startOf(faces, side) === startOf(faces, mate) ? 1 - flips[face]! : flips[face]!;
        if (seen[other]) {
          if (flips[other] !== wanted) twisted++;
          continue;
        }
        seen[other] = 1;
        flips[other] = wanted;
        piece.push(other);
      }
    }
    pieces.push({ faces: piece, isClosed });
  }
  return { pieces, flips, twisted: twisted / 2 };
}

/** Signed, about the origin of the mesh. */
function volumeOf({ vertices, faces }: Polyhedron, piece: Piece): number {
  let six = 0;
  for (const face of piece.faces) {
    const [a, b, c] = [3 * faces[3 * face]!, 3 * faces[3 * face + 1]!, 3 * faces[3 * face + 2]!];
    const [ax, ay, az] = [vertices[a]!, vertices[a + 1]!, vertices[a + 2]!];
    const [bx, by, bz] = [vertices[b]!, vertices[b + 1]!, vertices[b + 2]!];
    const [cx, cy, cz] = [vertices[c]!, vertices[c + 1]!, vertices[c + 2]!];
    six += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
  }
  return six / 6;
}

/** Triangles of a piece that are asked whether they lie inside another. */
const SAMPLES = 12;

/** The space inside a closed piece. */
interface Room {
  readonly piece: Piece;
  /** Least x, y, z, then greatest. */
  readonly bounds: readonly number[];
  /** Made when something in its bounds asks for it. */
  tree: BoundsTree | null;
}

/** Those of the closed pieces; none where they are too many to look which lies in which. */
function* roomsOf(form: Polyhedron, pieces: readonly Piece[]): Steps<readonly Room[]> {
  const closed = pieces.filter(piece => piece.isClosed);
  if (closed.length > MANY) return [];
  const isDue = pacer(STEP);
  const rooms: Room[] = [];
  for (const piece of closed) {
    rooms.push({ piece, bounds: boundsOfPiece(form, piece), tree: null });
    if (isDue(piece.faces.length)) yield;
  }
  return rooms;
}

/** How many closed pieces a closed piece lies in. */
function* countAround(form: Polyhedron, piece: Piece, rooms: readonly Room[]): Steps<number> {
  const own = rooms.find(room => room.piece === piece);
  if (!own) return 0;
  let around = 0;
  for (const room of rooms) if (room !== own && (yield* holds(form, room, own))) around++;
  return around;
}

function* holds(form: Polyhedron, room: Room, { piece, bounds }: Room): Steps<boolean> {
  if (room.bounds.some((limit, i) => (i < 3 ? bounds[i]! < limit : bounds[i]! > limit))) return false;
  room.tree ??= yield* boundsTreeSteps(partOf(form, room.piece));
  const { faces } = piece;
  const step = Math.max(1, Math.floor(faces.length / SAMPLES));
  for (let i = 0; i < faces.length; i += step) {
    const [x, y, z] = placeOn(form, faces[i]!);
    if (depthAt(hitsAft(room.tree, y, z), x) === 0) return false;
    yield;
  }
  return true;
}

/** A place on a triangle off its corners and its middle, where lines would hit edges of a regular mesh. */
function placeOn({ vertices, faces }: Polyhedron, face: number): Vec3 {
  const on = (axis: number): number =>
    0.31 * vertices[3 * faces[3 * face]! + axis]! +
    0.27 * vertices[3 * faces[3 * face + 1]! + axis]! +
    0.42 * vertices[3 * faces[3 * face + 2]! + axis]!;
  return [on(0), on(1), on(2)];
}

/** Least x, y, z, then greatest. */
function boundsOfPiece(form: Polyhedron, piece: Piece): readonly number[] {
  const bounds = [Infinity, Infinity, Infinity, -Infinity, -Infinity, -Infinity];
  for (const face of piece.faces) {
    for (let k = 0; k < 3; k++) {
      const at = 3 * form.faces[3 * face + k]!;
      for (let axis = 0; axis < 3; axis++) {
        const value = form.vertices[at + axis]!;
        if (value < bounds[axis]!) bounds[axis] = value;
        if (value > bounds[axis + 3]!) bounds[axis + 3] = value;
      }
    }
  }
  return bounds;
}

function partOf(form: Polyhedron, piece: Piece): Polyhedron {
  const faces = new Uint32Array(3 * piece.faces.length);
  piece.faces.forEach((face, i) => {
    faces.set(form.faces.subarray(3 * face, 3 * face + 3), 3 * i);
  });
  return { ...form, faces };
}
