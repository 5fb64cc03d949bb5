import { createDescriber } from '../../schema/describe.ts';
import { arranged } from '../../server/core/analysis/arranged.ts';
import { createNeighbours } from '../../server/core/arrangement/neighbours.ts';
import type { KeptEntries } from '../../server/core/boat/sectionReader.ts';
import type { Finding } from '../../server/core/findings/finding.ts';
import type { Polyhedron } from '../../server/core/geometry/form/form.ts';
import { createShapes } from '../../server/core/geometry/shapes/shapes.ts';
import { type MeshLookup, missingMesh } from '../../server/core/meshFiles/meshFile.ts';
import { readMeshFile } from '../../server/core/meshFiles/readMeshFile.ts';
import { finish } from '../../server/core/steps/steps.ts';
import { readSyntax } from '../../server/core/text/reading/syntax.ts';
import { readBoat } from '../helpers/atOnce.ts';
import { binaryStl } from '../helpers/stl.ts';

const describer = createDescriber();

/** Rings named “collar INNER OUTER.stl” by their radii, 30 long, about a fore-and-aft axis. */
const rings: MeshLookup = name => {
  const radii = /^collar ([\d.]+) ([\d.]+)\.stl$/.exec(name);
  return radii ? readMeshFile(binaryStl(ring(Number(radii[1]), Number(radii[2]), 30))) : missingMesh();
};

/** The schemas are made once for all boats. */
let kept: KeptEntries | undefined;

/** All that is said of the reading of a text and of where things lie in it. */
export function saidOf(text: string): readonly Finding[] {
  const syntax = readSyntax(text);
  const shapes = createShapes();
  const reading = readBoat(syntax, describer, kept, { meshes: rings, shapes });
  kept = { ...reading.kept, lists: new Map() };
  return [...syntax.findings, ...reading.findings, ...finish(arranged(syntax, reading, createNeighbours(shapes)))];
}

const SIDES = 48;

/** Corners of the inside lie outside its circle, so that a tube of that radius goes through. */
function ring(inner: number, outer: number, length: number): Polyhedron {
  const vertices: number[] = [];
  const faces: number[] = [];
  for (let i = 0; i < SIDES; i++) {
    const angle = (2 * Math.PI * i) / SIDES;
    for (const x of [0, length])
      for (const r of [inner / Math.cos(Math.PI / SIDES), outer])
        vertices.push(x, r * Math.cos(angle), r * Math.sin(angle));
  }
  const at = (side: number, end: number, rim: number): number => 4 * (side % SIDES) + 2 * end + rim;
  const quad = (a: number, b: number, c: number, d: number): void => void faces.push(a, b, c, a, c, d);
  for (let i = 0; i < SIDES; i++) {
    quad(at(i, 0, 1), at(i + 1, 0, 1), at(i + 1, 1, 1), at(i, 1, 1));
    quad(at(i, 1, 0), at(i + 1, 1, 0), at(i + 1, 0, 0), at(i, 0, 0));
    quad(at(i, 0, 0), at(i + 1, 0, 0), at(i + 1, 0, 1), at(i, 0, 1));
    quad(at(i, 1, 1), at(i + 1, 1, 1), at(i + 1, 1, 0), at(i, 1, 0));
  }
  return { shape: 'polyhedron', vertices: Float64Array.from(vertices), faces: Uint32Array.from(faces) };
}
