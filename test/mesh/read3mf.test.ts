import { strToU8, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { boundsOf, solidOf } from '../../server/core/geometry/cut/solids.ts';
import { boxForm } from '../../server/core/geometry/form/box.ts';
import type { LoadedMesh } from '../../server/core/meshFiles/meshFile.ts';
import { readMeshFile, readMeshSteps } from '../../server/core/meshFiles/readMeshFile.ts';
import { inSteps } from '../../server/core/steps/steps.ts';
import { expectClose, ROUNDING } from '../geometry/helpers/close.ts';
import { meshXml, model, pack, RELATIONS, threeMf } from '../helpers/threeMf.ts';

function loaded(bytes: Uint8Array): LoadedMesh {
  const file = readMeshFile(bytes);
  if (file.status !== 'loaded') throw new Error(file.words);
  return file;
}

function words(bytes: Uint8Array): string {
  const file = readMeshFile(bytes);
  return file.status === 'faulty' ? `${file.code}: ${file.words}` : 'read';
}

const box = boxForm([0, 0, 0], [30, 20, 10]);
const boxObject = (id: number, type = 'model') => `<object id="${id}" type="${type}">${meshXml(box)}</object>`;

describe('3MF files', () => {
  it('one object on the plate', () => {
    const { mesh, unit } = loaded(threeMf(boxObject(1), '<item objectid="1"/>'));
    expect(unit).toEqual({ name: 'millimetres', metres: 0.001 });
    expect(mesh.faults).toMatchObject({ triangles: 12, openEdges: 0 });
    expectClose(solidOf(mesh.closed).volume, 6000, ROUNDING);
  });

  it.each([
    ['micron', 1e-6],
    ['centimeter', 0.01],
    ['inch', 0.0254],
    ['foot', 0.3048],
    ['meter', 1],
  ])('in the unit %s', (name, metres) => {
    expect(loaded(threeMf(boxObject(1), '<item objectid="1"/>', ` unit="${name}"`)).unit?.metres).toBe(metres);
  });

  it('in millimetres when it names no unit', () => {
    expect(loaded(threeMf(boxObject(1), '<item objectid="1"/>', '')).unit?.metres).toBe(0.001);
  });

  it('an object twice, turned a quarter about z and put aside', () => {
    // Rows of the matrix: x goes to y, y to -x; then 100 along x.
    const items = '<item objectid="1"/><item objectid="1" transform="0 1 0 -1 0 0 0 0 1 100 0 0"/>';
    const { mesh } = loaded(threeMf(boxObject(1), items));
    expectClose(solidOf(mesh.closed).volume, 12000, ROUNDING);
    expect(boundsOf(mesh.closed)).toEqual({ from: [0, 0, 0], to: [100, 30, 10] });
  });

  it('components, the inner transform before the outer', () => {
    const resources = `${boxObject(1)}<object id="2"><components>
      <component objectid="1" transform="1 0 0 0 1 0 0 0 1 5 0 0"/></components></object>`;
    const { mesh } = loaded(threeMf(resources, '<item objectid="2" transform="2 0 0 0 2 0 0 0 2 0 0 0"/>'));
    expect(boundsOf(mesh.closed)).toEqual({ from: [10, 0, 0], to: [70, 40, 20] });
  });

  it('a mirrored item stays outward', () => {
    const { mesh } = loaded(threeMf(boxObject(1), '<item objectid="1" transform="-1 0 0 0 1 0 0 0 1 0 0 0"/>'));
    expect(mesh.faults.turned).toBe(0);
    expectClose(solidOf(mesh.closed).volume, 6000, ROUNDING);
  });

  it('a component in another file of the package', () => {
    const main = model(
      '<object id="8"><components><component p:path="/3D/Objects/fin.model" objectid="1"/></components></object>',
      '<item objectid="8"/>',
    );
    const bytes = pack({
      '_rels/.rels': RELATIONS,
      '3D/boat.model': main,
      '3D/Objects/fin.model': model(boxObject(1), ''),
    });
    expectClose(solidOf(loaded(bytes).mesh.closed).volume, 6000, ROUNDING);
  });

  it('supports are no part of the thing', () => {
    const { mesh } = loaded(
      threeMf(
        boxObject(1) + boxObject(2, 'support'),
        '<item objectid="1"/><item objectid="2" transform="1 0 0 0 1 0 0 0 1 50 0 0"/>',
      ),
    );
    expect(mesh.faults.triangles).toBe(12);
  });

  it('without a build all objects that are no component', () => {
    const resources = `${boxObject(1)}<object id="2"><components><component objectid="1"/></components></object>`;
    expect(loaded(threeMf(resources, '')).mesh.faults.triangles).toBe(12);
  });
});

it('a large one is read in many steps, between which the server answers', () => {
  const bytes = threeMf(boxObject(1).repeat(1000), '<item objectid="1"/>');
  let steps = 0;
  const work = inSteps(() => readMeshSteps(bytes));
  // Ends: the file does.
  while (!work.step()) steps += 1;
  expect(work.all()).toMatchObject({ status: 'loaded' });
  expect(steps).toBeGreaterThan(meshXml(box).length / 100);
});

it('one whose files are called otherwise where they begin goes by its directory', () => {
  const bytes = threeMf(boxObject(1), '<item objectid="1"/>');
  const text = new TextDecoder('latin1').decode(bytes);
  const name = '3D/boat.model';
  expect(text.indexOf(name)).toBeLessThan(text.lastIndexOf(name));
  const renamed = bytes.slice();
  renamed.set(strToU8('3D/hull.model'), text.indexOf(name));
  expect(loaded(renamed)).toEqual(loaded(bytes));
});

describe('3MF files that are none', () => {
  const zipOf = (text: string) => pack({ '_rels/.rels': RELATIONS, '3D/boat.model': text });

  it.each([
    ['a zip of something else', pack({ 'notes.txt': 'hull' }), 'it does not say which model to start from'],
    ['a model that is not there', pack({ '_rels/.rels': RELATIONS }), 'it lacks its part “3D/boat.model”'],
    [
      'XML cut short',
      zipOf(model(boxObject(1), '<item objectid="1"/>').slice(0, 700)),
      'is damaged, or no 3MF file inside',
    ],
    [
      'an object that is not there',
      threeMf(boxObject(1), '<item objectid="7"/>'),
      'places an object “7” that it does not have',
    ],
    [
      'a figure that is none',
      zipOf(model(boxObject(1).replace('x="30"', 'x="3O"'), '<item objectid="1"/>')),
      'a vertex has no proper “x”',
    ],
    [
      'a corner that is not there',
      zipOf(model(boxObject(1).replace('v1="7"', 'v1="99"').replace('v3="7"', 'v3="99"'), '<item objectid="1"/>')),
      'a triangle has a corner that is not there',
    ],
    [
      'a unit of its own',
      threeMf(boxObject(1), '<item objectid="1"/>', ' unit="cubit"'),
      'a unit that nobody knows, “cubit”',
    ],
    [
      'a transform of eleven figures',
      threeMf(boxObject(1), '<item objectid="1" transform="1 0 0 0 1 0 0 0 1 0 0"/>'),
      'a item is placed by figures that make no sense',
    ],
    ['no triangles', threeMf('<object id="1"><mesh/></object>', '<item objectid="1"/>'), 'has no triangles in it'],
    [
      'an object that holds itself',
      threeMf('<object id="1"><components><component objectid="1"/></components></object>', '<item objectid="1"/>'),
      'hold each other without end',
    ],
    [
      'a zip cut short',
      threeMf(boxObject(1), '<item objectid="1"/>').subarray(0, 300),
      'is damaged, or no 3MF file inside',
    ],
  ])('%s', (_, bytes, expected) => {
    expect(words(bytes)).toContain(expected);
  });

  it('objects that multiply as they hold each other', () => {
    const tenfold = (id: number) =>
      `<object id="${id}"><components>${`<component objectid="${id - 1}"/>`.repeat(10)}</components></object>`;
    const resources = `<object id="0"><mesh/></object>${Array.from({ length: 12 }, (_, i) => tenfold(i + 1)).join('')}`;
    expect(words(threeMf(resources, '<item objectid="12"/>'))).toContain('hold each other without end');
  });

  /** The size of the model that the directory at the end of the package tells, 24 bytes after 0x02014b50. */
  function saysSize(size: number): Uint8Array {
    const bytes = zipSync({ '_rels/.rels': strToU8(RELATIONS), '3D/boat.model': strToU8(' '.repeat(1_000_000)) });
    const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    const at = bytes.findIndex(
      (_, i) =>
        i + 46 < bytes.length && view.getUint32(i, true) === 0x02014b50 && view.getUint32(i + 24, true) === 1_000_000,
    );
    view.setUint32(at + 24, size, true);
    return bytes;
  }

  it('a package that unpacks to more than is read', () => {
    expect(words(saysSize(200 * 1024 * 1024))).toContain('mesh-too-large: unpacks to more than 192 MB');
  });

  it('a package that lies about what it unpacks to', () => {
    expect(words(saysSize(100))).toContain('is damaged, or no 3MF file inside');
  });
});
