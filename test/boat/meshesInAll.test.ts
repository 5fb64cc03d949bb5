import { expect, it } from 'vitest';
import { boxForm } from '../../server/core/geometry/form/box.ts';
import type { MeshFile } from '../../server/core/meshFiles/meshFile.ts';
import { readMeshFile } from '../../server/core/meshFiles/readMeshFile.ts';
import { fileFindings, service } from '../helpers/analysed.ts';
import { boatText } from '../helpers/boatText.ts';
import { binaryStl } from '../helpers/stl.ts';

const block = readMeshFile(binaryStl(boxForm([0, -5, 0], [10, 5, 10]))) as MeshFile & { status: 'loaded' };
/** A block that says it has so many triangles: nothing else looks at that. */
const heavy = (triangles: number): MeshFile => ({
  ...block,
  mesh: { ...block.mesh, faults: { ...block.mesh.faults, triangles } },
});
const files: Readonly<Record<string, MeshFile>> = { 'fine.stl': heavy(100_000), 'coarse.stl': heavy(12) };
const codes = (text: string): readonly string[] =>
  fileFindings(service.analyse(text, undefined, name => files[name] ?? null)).map(({ code }) => code);

const boat = (parts: string): string => boatText`
  boat: Tern
  hull: { length: 400 mm, waterline: 30 mm, compartments: [{ name: hull, mass: 300 g, box: 60 x 40 mm, station: 0 to 400 mm, height: 20 mm }] }
  payload: [${parts}]
`;
const part = (name: string, file: string, more = ''): string =>
  `{ name: ${name}, mass: 5 g, in: hull, mesh: { file: ${file}, at: [100 mm, 0 mm, 10 mm] }${more} }`;

it.each([
  ['a row of ten', part('cells', 'fine.stl', ', count: 10, spacing: 12 mm'), false],
  ['a row of eleven', part('cells', 'fine.stl', ', count: 11, spacing: 12 mm'), true],
  ['six pairs', part('cells', 'fine.stl', ', count: 6, spacing: 12 mm, sides: both'), true],
  [
    'one more beside a row of ten',
    `${part('cells', 'fine.stl', ', count: 10, spacing: 12 mm')}, ${part('ball', 'coarse.stl')}`,
    true,
  ],
  ['many of few triangles', part('cells', 'coarse.stl', ', count: 40, spacing: 12 mm'), false],
])('%s of 100,000 triangles: more than a million together are not held', (_, parts, isTooMuch) => {
  expect(codes(boat(parts)).includes('mesh-too-large')).toBe(isTooMuch);
});

it('is told on the name, with how to mend it', () => {
  const text = boat(part('cells', 'fine.stl', ', count: 11, spacing: 12 mm'));
  const found = fileFindings(service.analyse(text, undefined, name => files[name] ?? null));
  expect(found.find(({ code }) => code === 'mesh-too-large')!.message).toBe(
    '“fine.stl” is too much beside the others: the meshes of this boat, each as often as it has them, come to more than 1,000,000 triangles, the most that are held. Export them again more coarsely, or name fewer.',
  );
});
