import { quoted } from '../../../schema/quoted.ts';
import type { Polyhedron } from '../geometry/form/form.ts';
import { inStretches, type Steps } from '../steps/steps.ts';
import { type FaultyMesh, faulty, MOST_TRIANGLES, tooManyTriangles } from './meshFile.ts';

/** Header, count of triangles, and per triangle a normal, three corners and two spare bytes; 32-bit, little-endian. */
const HEADER = 84;
const TRIANGLE = 50;

/**
 * Reads STL, binary or text. Every triangle has corners of its own; the normals are left aside, since the order of the
 * corners tells the same. A binary file is known by its length, whatever its header says.
 */
export function* readStl(bytes: Uint8Array): Steps<Polyhedron | FaultyMesh> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const count = bytes.length >= HEADER ? view.getUint32(HEADER - 4, true) : 0;
  const wanted = HEADER + TRIANGLE * count;
  if (count > 0 && bytes.length === wanted) return yield* readBinary(view, count);
  const start = new TextDecoder('latin1').decode(bytes.subarray(0, 1024));
  if (/^\s*solid\b/i.test(start) && (/\bfacet\b/i.test(start) || bytes.length < HEADER)) return yield* readText(bytes);
  if (count > 0 && bytes.length > wanted) return yield* readBinary(view, count);
  // Any file has some number there: only one near its length is a count.
  if (count > 0 && wanted < 4 * bytes.length) {
    return faulty(
      'mesh-unreadable',
      `is cut short: it promises ${count} triangles and holds ${Math.floor((bytes.length - HEADER) / TRIANGLE)}. Export or copy it again.`,
    );
  }
  return faulty(
    'mesh-unreadable',
    'is neither STL nor 3MF inside. Export it again from the drawing program as STL (binary or text) or as 3MF.',
  );
}

const isBad = (value: number): boolean => !Number.isFinite(value);

/** Triangles that are read in one step. */
const STEP = 50_000;
/** Bytes of text that are read in one step. */
const PIECE = 1 << 18;
/** Characters that a corner, or the last line, may have. */
const LONGEST = 1 << 16;
/** This and all below it is no sign that is seen. */
const BLANK = 0x20;

function* readBinary(view: DataView, count: number): Steps<Polyhedron | FaultyMesh> {
  if (count > MOST_TRIANGLES) return tooManyTriangles();
  const vertices = new Float64Array(9 * count);
  let firstBad = Infinity;
  yield* inStretches(count, STEP, (from, to) => {
    for (let triangle = from; triangle < to; triangle++) {
      const corners = HEADER + TRIANGLE * triangle + 12;
      for (let k = 0; k < 9; k++) {
        const value = view.getFloat32(corners + 4 * k, true);
        if (isBad(value)) firstBad = Math.min(firstBad, triangle);
        vertices[9 * triangle + k] = value;
      }
    }
  });
  if (count > STEP) yield;
  if (firstBad === Infinity) return loose(vertices);
  return faulty(
    'mesh-unreadable',
    `is damaged: triangle ${firstBad + 1} has a corner that is no place. Export it again.`,
  );
}

const CORNER_OR_END = /\bvertex[ \t]+(\S+)[ \t]+(\S+)[ \t]+(\S+)|\bendloop\b/gi;

/** A piece of text at a time: what is not wholly in one, such as a corner that it cuts, is read with the next. */
function* readText(bytes: Uint8Array): Steps<Polyhedron | FaultyMesh> {
  const decoder = new TextDecoder();
  const places: number[] = [];
  let inLoop = 0;
  let lines = 1;
  let rest = '';
  for (let at = 0; at < bytes.length; at += PIECE) {
    if (at > 0) yield;
    const isLast = at + PIECE >= bytes.length;
    const text = rest + decoder.decode(bytes.subarray(at, at + PIECE), { stream: !isLast });
    let taken = 0;
    for (const match of text.matchAll(CORNER_OR_END)) {
      const end = match.index + match[0].length;
      if (end === text.length && !isLast) break;
      taken = end;
      const damage = (what: string) => damagedText(lines + linesIn(text, match.index), what);
      if (match[1] === undefined) {
        if (inLoop !== 3) return damage(`a triangle has ${inLoop} corners`);
        inLoop = 0;
        if (places.length > 9 * MOST_TRIANGLES) return tooManyTriangles();
        continue;
      }
      inLoop++;
      for (const figure of match.slice(1)) {
        const value = Number(figure);
        if (isBad(value)) return damage(`${quoted(figure)} is no number`);
        places.push(value);
      }
    }
    taken = Math.max(taken, text.length - LONGEST);
    lines += linesIn(text, taken);
    rest = text.slice(taken);
  }
  if (inLoop > 0 || !/\bendsolid\b/i.test(lastLine(bytes))) {
    return faulty('mesh-unreadable', 'is cut short: it ends without “endsolid”. Export or copy it again.');
  }
  if (places.length === 0)
    return faulty('mesh-unreadable', 'has no triangles in it. Export it again with the form in view.');
  return loose(Float64Array.from(places));
}

/** Line ends before a place in a text. */
function linesIn(text: string, end: number): number {
  let count = 0;
  // Ends: the next line end is behind the one before.
  for (let at = text.indexOf('\n'); at >= 0 && at < end; at = text.indexOf('\n', at + 1)) count++;
  return count;
}

/** The last that is not blank, or the end of it. */
function lastLine(bytes: Uint8Array): string {
  let end = bytes.length;
  // Ends: each round takes a byte away.
  while (end > 0 && bytes[end - 1]! <= BLANK) end--;
  const written = new TextDecoder().decode(bytes.subarray(Math.max(0, end - LONGEST), end));
  return written.slice(written.lastIndexOf('\n') + 1);
}

const damagedText = (line: number, what: string): FaultyMesh =>
  faulty('mesh-unreadable', `is damaged: in line ${line} ${what}. Export it again.`);

const loose = (vertices: Float64Array): Polyhedron => ({
  shape: 'polyhedron',
  vertices,
  faces: counting(vertices.length / 3),
});

function counting(count: number): Uint32Array {
  const numbers = new Uint32Array(count);
  for (let i = 0; i < count; i++) numbers[i] = i;
  return numbers;
}
