import { pacer, type Steps } from '../../steps/steps.ts';
import type { Polyhedron } from '../form/form.ts';
import { type Point2, triangulate } from '../outline/outline.ts';

/** One row of a table of offsets: the starboard half of the hull's cross-section at a station. */
export interface Section {
  /** m aft of the bow tip. */
  readonly station: number;
  /** [half-breadth, height] from keel to deck, m; one point or more, half-breadths not negative. */
  readonly outline: readonly Point2[];
}

/** Points of outlines that are joined to the next in one step. */
const STEP = 500;

/**
 * A table of offsets as a body of flat faces, mirrored about the centreline, outward. Stations rise.
 *
 * Two neighbouring outlines of equally many points are joined point to point. Otherwise they are joined by girth: each
 * point goes to the one that lies at the like share of the way from keel to deck on the other outline. A four-sided
 * patch, which is hardly ever flat, is drawn as four triangles about its middle, which gives it the volume of the
 * surface that straight lines sweep. A keel and a deck that do not come to the centreline are closed straight across,
 * the first and the last section by flat faces; `endsClosed` false leaves out those faces and the flat deck. In steps.
 */
export function* sectionsFormSteps(
  sections: readonly Section[],
  { endsClosed }: { readonly endsClosed: boolean },
): Steps<Polyhedron> {
  const isDue = pacer(STEP);
  const mesh = mirroredMesh();
  const rows = sections.map(section => rowOf(section, mesh));
  for (let i = 1; i < rows.length; i++) {
    if (isDue(rows[i]!.points.length)) yield;
    joinRows(rows[i - 1]!, rows[i]!, mesh, endsClosed);
  }
  const [first, last] = [rows[0], rows.at(-1)];
  if (endsClosed && first && last) {
    for (const [a, b, c] of endFace(first)) mesh.face(c, b, a);
    for (const [a, b, c] of endFace(last)) mesh.face(a, b, c);
  }
  return mesh.form();
}

/** An outline with the centreline point under its keel end and the one at its deck end before and after. */
interface Row {
  readonly points: readonly Point2[];
  /** Vertex of each point, starboard side. */
  readonly vertices: readonly number[];
}

function rowOf({ station, outline }: Section, mesh: MirroredMesh): Row {
  const points: readonly Point2[] = [[0, outline[0]?.[1] ?? 0], ...outline, [0, outline.at(-1)?.[1] ?? 0]];
  const known = new Map<string, number>();
  const vertices = points.map(([y, z]) => {
    const key = `${y} ${z}`;
    const vertex = known.get(key) ?? mesh.vertex(station, y, z);
    known.set(key, vertex);
    return vertex;
  });
  return { points, vertices };
}

function joinRows(a: Row, b: Row, mesh: MirroredMesh, withDeck: boolean): void {
  const [lastA, lastB] = [a.points.length - 2, b.points.length - 2];
  const patch = (i: number, j: number): void =>
    mesh.patch(a.vertices[i]!, a.vertices[i + 1]!, b.vertices[j + 1]!, b.vertices[j]!);
  patch(0, 0);
  if (lastA === lastB) for (let i = 1; i < lastA; i++) patch(i, i);
  else joinByGirth(a, b, mesh);
  if (withDeck) patch(lastA, lastB);
}

function joinByGirth(a: Row, b: Row, mesh: MirroredMesh): void {
  const [sharesA, sharesB] = [girthShares(a), girthShares(b)];
  let [i, j] = [0, 0];
  // Ends: each round goes one point along one of the two, neither beyond its last.
  while (i + 1 < sharesA.length || j + 1 < sharesB.length) {
    const [from, to] = [a.vertices[i + 1]!, b.vertices[j + 1]!];
    const isAtEnd = j + 1 === sharesB.length;
    if (isAtEnd || (i + 1 < sharesA.length && sharesA[i + 1]! <= sharesB[j + 1]!))
      mesh.face(from, a.vertices[++i + 1]!, to);
    else mesh.face(from, b.vertices[++j + 1]!, to);
  }
}

/** How far along the girth each point of the outline itself lies, 0 at the keel and 1 at the deck. */
function girthShares({ points }: Row): readonly number[] {
  const outline = points.slice(1, -1);
  let girth = 0;
  const along = outline.map((point, i) => {
    const before = outline[i - 1];
    if (before) girth += Math.hypot(point[0] - before[0], point[1] - before[1]);
    return girth;
  });
  return along.map(length => (girth > 0 ? length / girth : 0));
}

/** The starboard half of the face that closes a row, seen from aft; the outline may touch the centreline on its way. */
function endFace({ points, vertices }: Row): readonly (readonly [number, number, number])[] {
  const distinct = vertices.flatMap((vertex, i) => (vertex === vertices[i - 1] ? [] : [i]));
  const onCentreline = distinct.flatMap((point, k) => (points[point]![0] === 0 ? [k] : []));
  return onCentreline.slice(1).flatMap((end, m) => {
    const loop = distinct.slice(onCentreline[m]!, end + 1);
    const corner = (k: number): number => vertices[loop[k]!]!;
    return triangulate(loop.map(point => points[point]!)).map(
      ([a, b, c]) => [corner(a), corner(b), corner(c)] as const,
    );
  });
}

/** Collects the starboard half of a body and mirrors it to port. */
interface MirroredMesh {
  vertex(x: number, y: number, z: number): number;
  /** A triangle; its mirror image comes with it. One in the centreline plane would cancel out and is left out. */
  face(a: number, b: number, c: number): void;
  /** A four-sided patch, as four triangles about its middle. */
  patch(a: number, b: number, c: number, d: number): void;
  form(): Polyhedron;
}

function mirroredMesh(): MirroredMesh {
  const vertices: number[] = [];
  const mirrors: number[] = [];
  const faces: number[] = [];
  const vertex = (x: number, y: number, z: number): number => {
    const number = mirrors.length;
    vertices.push(x, y, z);
    mirrors.push(number);
    if (y === 0) return number;
    vertices.push(x, -y, z);
    mirrors[number] = number + 1;
    mirrors.push(number);
    return number;
  };
  const face = (a: number, b: number, c: number): void => {
    if (a === b || b === c || c === a) return;
    const mirrored = [mirrors[a]!, mirrors[b]!, mirrors[c]!] as const;
    if (mirrored[0] === a && mirrored[1] === b && mirrored[2] === c) return;
    faces.push(a, b, c, mirrored[2], mirrored[1], mirrored[0]);
  };
  const patch = (...corners: readonly [number, number, number, number]): void => {
    const distinct = corners.filter((corner, i) => corners.indexOf(corner) === i);
    if (distinct.length < 3 || distinct.every(corner => mirrors[corner] === corner)) return;
    if (distinct.length === 3) {
      face(distinct[0]!, distinct[1]!, distinct[2]!);
      return;
    }
    const middle = ([0, 1, 2] as const).map(
      axis => distinct.reduce((sum, corner) => sum + vertices[3 * corner + axis]!, 0) / 4,
    );
    const centre = vertex(middle[0]!, middle[1]!, middle[2]!);
    for (const [i, corner] of distinct.entries()) face(corner, distinct[(i + 1) % 4]!, centre);
  };
  const form = (): Polyhedron => ({
    shape: 'polyhedron',
    vertices: Float64Array.from(vertices),
    faces: Uint32Array.from(faces),
  });
  return { vertex, face, patch, form };
}
