import { strToU8, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { readMeshFile } from '../../server/core/meshFiles/readMeshFile.ts';
import { service } from '../helpers/analysed.ts';
import { strayNumbers } from '../helpers/finite.ts';

const boat = `
boat: Stranger
hull:
  length: 900 mm
  waterline: 56 mm
  compartments:
    - { name: dry, mass: 400 g, round: 76 mm, station: 200 to 680 mm, height: 46 mm }
payload:
  - name: thing
    mass: 100 g
    mesh: { file: thing.stl, unit: mm }
`;

const stl = (...triangles: readonly string[]): Uint8Array =>
  new TextEncoder().encode(
    `solid s\n${triangles.map(corners => `facet normal 0 0 0\nouter loop\n${corners}\nendloop\nendfacet`).join('\n')}\nendsolid s\n`,
  );

const corners = (...points: readonly string[]): string => points.map(point => `vertex ${point}`).join('\n');

const tetrahedron = (size: string): Uint8Array =>
  stl(
    corners('0 0 0', `0 ${size} 0`, `${size} 0 0`),
    corners('0 0 0', `${size} 0 0`, `0 0 ${size}`),
    corners('0 0 0', `0 0 ${size}`, `0 ${size} 0`),
    corners(`${size} 0 0`, `0 ${size} 0`, `0 0 ${size}`),
  );

const threeMf = (transform: string): Uint8Array =>
  zipSync({
    'model.model': strToU8(
      `<model unit="millimeter"><resources><object id="1"><mesh><vertices>
<vertex x="0" y="0" z="0"/><vertex x="90" y="0" z="0"/><vertex x="0" y="90" z="0"/><vertex x="0" y="0" z="90"/>
</vertices><triangles><triangle v1="0" v2="2" v3="1"/><triangle v1="0" v2="1" v3="3"/><triangle v1="0" v2="3" v3="2"/>
<triangle v1="1" v2="2" v3="3"/></triangles></mesh></object></resources><build><item objectid="1" transform="${transform}"/></build></model>`,
    ),
  });

describe('a mesh without sense is left out, and the rest of the boat is figured', () => {
  it.each([
    ['one flat triangle', stl(corners('0 0 0', '9 0 0', '0 9 0')), 'mesh-open'],
    ['one triangle without any area', stl(corners('0 0 0', '1 1 1', '2 2 2')), 'form-size'],
    ['corners at 1e300', tetrahedron('1e300'), 'mesh-unreadable'],
    ['corners 1e-300 apart', tetrahedron('1e-300'), 'mesh-unreadable'],
    ['corners a nanometre apart', tetrahedron('1e-6'), 'form-size'],
    ['corners a kilometre away', tetrahedron('1e6'), 'form-size'],
    [
      'corners less apart than their rounding',
      stl(corners('1e8 1e8 1e8', '100000001 1e8 1e8', '1e8 100000001 1e8')),
      'mesh-unreadable',
    ],
    ['a 3MF file placed by 1e308', threeMf('1 0 0 0 1 0 0 0 1 1e308 1e308 1e308'), 'mesh-unreadable'],
    ['a 3MF file made flat by its transform', threeMf('1 0 0 0 1 0 0 0 0 0 0 0'), 'form-size'],
    ['a 3MF file made endless by its transform', threeMf('1e308 0 0 0 1e308 0 0 0 1e308 0 0 0'), 'mesh-unreadable'],
  ])('%s', (_, bytes, code) => {
    const file = readMeshFile(bytes);
    const analysis = service.analyse(boat, undefined, () => file);
    expect(analysis.file.findings.map(finding => finding.code)).toContain(code);
    expect(analysis.boat.payload).toEqual([]);
    expect(analysis.surfaced.status).toBe('afloat');
    expect(strayNumbers([analysis.boat, analysis.surfaced, analysis.submerged, analysis.transit.all()])).toEqual([]);
  });
});
