import { strToU8, zipSync } from 'fflate';
import { expect, test } from 'vitest';
import { readMeshFile } from '../../server/core/meshFiles/readMeshFile.ts';

const MESH = `<mesh><vertices><vertex x="0" y="0" z="0"/><vertex x="90" y="0" z="0"/><vertex x="0" y="90" z="0"/>
<vertex x="0" y="0" z="90"/></vertices><triangles><triangle v1="0" v2="2" v3="1"/><triangle v1="0" v2="1" v3="3"/>
<triangle v1="0" v2="3" v3="2"/><triangle v1="1" v2="2" v3="3"/></triangles></mesh>`;
const model = (object: string, item: string, attributes = 'unit="millimeter"'): Uint8Array =>
  zipSync({
    'model.model': strToU8(
      `<model ${attributes}><resources><object ${object}>${MESH}</object></resources><build><item ${item}/></build></model>`,
    ),
  });

/** Names that every object of the machine has. */
const INBORN = ['__proto__', 'constructor', 'toString', 'hasOwnProperty'];

test.each(INBORN)('a unit, a tag, an object and a file called %s are what they are called, and no more', name => {
  expect(readMeshFile(model('id="1"', 'objectid="1"', `unit="${name}"`))).toMatchObject({
    status: 'faulty',
    words: expect.stringContaining(`a unit that nobody knows, “${name}”`),
  });
  expect(readMeshFile(model(`id="${name}"`, `objectid="${name}"`))).toMatchObject({
    status: 'loaded',
    unit: { name: 'millimetres' },
  });
  expect(readMeshFile(model('id="1"', `objectid="1" path="/${name}"`))).toMatchObject({
    status: 'faulty',
    words: expect.stringContaining(`it lacks its part “${name}”`),
  });
  const tagged = zipSync({
    'model.model': strToU8(
      `<model><${name} id="1"/><resources><object id="1">${MESH}</object></resources><build><item objectid="1"/></build></model>`,
    ),
  });
  expect(readMeshFile(tagged).status).toBe('loaded');
});
