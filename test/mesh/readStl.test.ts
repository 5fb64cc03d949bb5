import { describe, expect, it } from 'vitest';
import { solidOf } from '../../server/core/geometry/cut/solids.ts';
import { boxForm } from '../../server/core/geometry/form/box.ts';
import type { LoadedMesh } from '../../server/core/meshFiles/meshFile.ts';
import { readMeshFile, readMeshSteps } from '../../server/core/meshFiles/readMeshFile.ts';
import { inSteps } from '../../server/core/steps/steps.ts';
import { expectClose } from '../geometry/helpers/close.ts';
import { ellipsoidMesh } from '../geometry/helpers/meshes.ts';
import { binaryStl, textStl } from '../helpers/stl.ts';

const box = boxForm([0, -20, 5], [400, 20, 35]);
const hull = ellipsoidMesh([450, 60, 50], 24);
const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
/** STL keeps numbers to 24 bits. */
const SINGLE = 1e-6;

function loaded(bytes: Uint8Array): LoadedMesh {
  const file = readMeshFile(bytes);
  if (file.status !== 'loaded') throw new Error(file.words);
  return file;
}

function words(bytes: Uint8Array): string {
  const file = readMeshFile(bytes);
  return file.status === 'faulty' ? `${file.code}: ${file.words}` : 'read';
}

describe('STL files', () => {
  it.each([
    ['binary', binaryStl(hull)],
    ['binary whose header says solid', binaryStl(hull, 1, 'solid facet normal')],
    ['binary with bytes to spare', Uint8Array.from([...binaryStl(hull), 0, 0, 0])],
    ['text', bytesOf(textStl(hull))],
    ['text in capitals with line ends of the old kind', bytesOf(textStl(hull).toUpperCase().replaceAll('\n', '\r\n'))],
    ['text without a name', bytesOf(textStl(hull, 1, ''))],
  ])('%s', (_, bytes) => {
    const { mesh, unit } = loaded(bytes);
    expect(unit).toBeNull();
    expect(mesh.faults).toMatchObject({ triangles: hull.faces.length / 3, openEdges: 0, turned: 0 });
    expect(mesh.surface.vertices.length / 3).toBe(23 * 24 + 2);
    expectClose(solidOf(mesh.closed).volume, solidOf(hull).volume, SINGLE);
  });

  it('text of several solids is one mesh', () => {
    const two = textStl(box) + textStl(boxForm([0, -20, 40], [400, 20, 50]), 1, 'deck house');
    expectClose(solidOf(loaded(bytesOf(two)).mesh.closed).volume, 400 * 40 * 40, SINGLE);
  });

  it('text is read in pieces, wherever they end', () => {
    const text = textStl(box);
    const pieces = 1 << 18;
    // A line with signs of two and three bytes in it: each corner comes to lie across the end of a piece.
    for (let before = text.length; before > 0; before -= 13) {
      const moved = text.replace('outer loop', `outer loop é€${'x'.repeat(pieces - before)}`);
      expect(loaded(bytesOf(moved)).mesh).toEqual(loaded(bytesOf(text)).mesh);
    }
  });

  it('text of long lines or none is read in steps', () => {
    const stepsOf = (text: string): number => {
      const work = inSteps(() => readMeshSteps(bytesOf(text)));
      let steps = 0;
      // Ends: the file does.
      while (!work.step()) steps += 1;
      expect(work.all()).toMatchObject({ status: 'faulty' });
      return steps;
    };
    expect(stepsOf(`solid facet ${'x'.repeat(5_000_000)}`)).toBeGreaterThan(15);
    expect(stepsOf(`solid facet${'\n'.repeat(5_000_000)}vertex a b c`)).toBeGreaterThan(15);
  });

  it('reads where the bytes lie in a larger buffer', () => {
    const file = binaryStl(box);
    const around = new Uint8Array(file.length + 11);
    around.set(file, 7);
    expectClose(solidOf(loaded(around.subarray(7, 7 + file.length)).mesh.closed).volume, 400 * 40 * 30, SINGLE);
  });
});

describe('files that are no mesh', () => {
  const file = binaryStl(box);
  const text = textStl(box);
  const damaged = binaryStl(box);
  new DataView(damaged.buffer).setFloat32(84 + 50 * 3 + 16, Number.NaN, true);

  it.each([
    [
      'binary cut short',
      file.subarray(0, file.length - 60),
      'mesh-unreadable: is cut short: it promises 12 triangles and holds 10.',
    ],
    ['a place that is none', damaged, 'mesh-unreadable: is damaged: triangle 4 has a corner that is no place.'],
    [
      'text cut short between triangles',
      bytesOf(text.slice(0, text.indexOf('facet', 400))),
      'is cut short: it ends without “endsolid”',
    ],
    [
      'text cut short in a triangle',
      bytesOf(text.slice(0, text.indexOf('vertex', 400) + 60)),
      'is cut short: it ends without “endsolid”',
    ],
    [
      'a decimal comma',
      bytesOf(text.replace('4.000000000e+2', '4,000000000e+2')),
      'in line 18 “4,000000000e+2” is no number',
    ],
    [
      'a figure far down',
      bytesOf(`solid facet\n${'\n'.repeat(600_000)}vertex 1 2 x\nendloop\nendsolid\n`),
      'in line 600002 “x” is no number',
    ],
    [
      'a facet of four corners',
      bytesOf(text.replace('    endloop', '      vertex 0 0 0\n    endloop')),
      'in line 8 a triangle has 4 corners',
    ],
    ['text without triangles', bytesOf('solid nothing\nendsolid nothing\n'), 'has no triangles in it'],
    ['nothing', new Uint8Array(), 'is neither STL nor 3MF inside'],
    ['a page', bytesOf('<html><body>Not found</body></html>'.repeat(20)), 'is neither STL nor 3MF inside'],
    ['one point', bytesOf(textStl(box, 0)), 'has no form: all its triangles lie in one spot'],
  ])('%s', (_, bytes, expected) => {
    expect(words(bytes)).toContain(expected);
  });

  it('more bytes, or triangles, than are read', () => {
    expect(words(new Uint8Array(64 * 1024 * 1024 + 1))).toContain('mesh-too-large: has 65 MB; 64 MB is the most');
    const many = new Uint8Array(84 + 50 * 500_001);
    new DataView(many.buffer).setUint32(80, 500_001, true);
    expect(words(many)).toContain('mesh-too-large: has more than 500,000 triangles');
  });
});
