import { deflateSync, strToU8 } from 'fflate';
import { describe, expect, it } from 'vitest';
import { boxForm } from '../../server/core/geometry/form/box.ts';
import { readMeshFile, readMeshSteps } from '../../server/core/meshFiles/readMeshFile.ts';
import { inSteps } from '../../server/core/steps/steps.ts';
import { meshXml, model } from '../helpers/threeMf.ts';
import { type Part, zip } from '../helpers/zip.ts';

const xml = strToU8(model(`<object id="1">${meshXml(boxForm([0, 0, 0], [30, 20, 10]))}</object>`, ''));
const stored: Part = { name: '3D/boat.model', data: xml };
const deflated: Part = { ...stored, data: deflateSync(xml), method: 8, size: xml.length };
const picture: Part = { name: 'picture.png', data: strToU8('none') };

function words(bytes: Uint8Array): string {
  const file = readMeshFile(bytes);
  return file.status === 'faulty' ? `${file.code}: ${file.words}` : `${file.mesh.faults.triangles} triangles`;
}

/** Empty blocks: five bytes each that come to nothing. */
const emptyBlocks = (count: number): Uint8Array =>
  Uint8Array.from({ length: 5 * count }, (_, i) => (i % 5 < 3 ? 0 : 255));
const followedBy = (data: Uint8Array, more: number): Uint8Array => {
  const longer = new Uint8Array(data.length + more);
  longer.set(data);
  return longer;
};

describe('a package', () => {
  it.each([
    ['stored', zip([picture, stored])],
    ['deflated', zip([picture, deflated])],
    ['with the sizes behind the data', zip([{ ...deflated, flags: 8 }, picture])],
    ['with numbers of 64 bits', zip([picture, deflated], { is64: true })],
    ['with a comment', zip([deflated], { comment: 'made for a test' })],
    ['with bytes to spare', followedBy(zip([deflated]), 1000)],
    ['in capitals', zip([{ ...deflated, name: '3D/BOAT.MODEL' }])],
    ['that promises a larger part than it has', zip([{ ...deflated, size: 2 * xml.length }])],
    ['with another part of no use that is locked', zip([deflated, { ...picture, flags: 1 }])],
    ['with as many files as are read', zip([deflated, ...Array.from({ length: 999 }, () => picture)])],
  ])('%s is read', (_, bytes) => {
    expect(words(bytes)).toBe('12 triangles');
  });

  it.each([
    [
      'with more files than are read',
      zip([deflated, ...Array.from({ length: 1000 }, () => picture)]),
      'mesh-too-large: has more than 1,000 files packed in it, the most that are read: a 3MF file has a handful.',
    ],
    [
      'that says it has more than any',
      zip([deflated], { is64: true, count: 4_294_967_295 }),
      'has more than 1,000 files packed in it',
    ],
    ['that says it has more than it has', zip([deflated], { count: 3 }), 'the list of the files in it is cut short'],
    ['without its end', zip([deflated]).subarray(0, -30), 'it is cut short, without the list of the files in it'],
    ['with a name twice', zip([deflated, deflated]), 'it has two parts of one name, “3D/boat.model”'],
    [
      'of parts that are the same bytes',
      zip([deflated, ...['a.model', 'b.model', 'c.model'].map(name => ({ ...deflated, name, sameAs: 0 }))]),
      'its parts are longer than all of it',
    ],
    ['that says its part has no size', zip([{ ...deflated, size: 0 }]), 'its part “3D/boat.model” is larger than it'],
    ['of parts too large together', zip([{ ...deflated, size: 0xf0000000 }]), 'unpacks to more than 192 MB'],
    ['that is locked', zip([{ ...deflated, flags: 1 }]), 'its part “3D/boat.model” is locked by a password'],
    ['packed otherwise', zip([{ ...deflated, method: 12 }]), 'is packed in a way that is not read here'],
    ['of bytes that are nothing packed', zip([{ ...stored, method: 8 }]), '“3D/boat.model” cannot be unpacked'],
    [
      'cut short inside',
      zip([{ ...deflated, data: deflated.data.subarray(0, 90) }]),
      '“3D/boat.model” cannot be unpacked',
    ],
    ['of blocks without anything', zip([{ ...deflated, data: emptyBlocks(50_000) }]), 'is packed without sense'],
    [
      'with much behind its last block',
      zip([{ ...deflated, data: followedBy(deflated.data, 300_000), size: 2 * xml.length }]),
      'is packed without sense',
    ],
    [
      'with a long name',
      zip([{ ...deflated, name: `${'x'.repeat(60_000)}.model`, flags: 1 }]),
      `its part “${'x'.repeat(37)}…” is locked`,
    ],
  ])('%s is refused', (_, bytes, expected) => {
    expect(words(bytes)).toContain(expected);
  });

  it('is unpacked in many steps', () => {
    const size = 30_000_000;
    const blanks: Part = { name: 'blanks.model', data: deflateSync(new Uint8Array(size)), method: 8, size };
    const relations = strToU8('<R><Relationship Type="/3dmodel" Target="3D/boat.model"/></R>');
    const work = inSteps(() => readMeshSteps(zip([{ name: '_rels/.rels', data: relations }, deflated, blanks])));
    let steps = 0;
    // Ends: the file does.
    while (!work.step()) steps += 1;
    expect(work.all()).toMatchObject({ status: 'loaded' });
    expect(steps).toBeGreaterThan(5);
  });
});
