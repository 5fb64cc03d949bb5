import { strToU8, zipSync } from 'fflate';
import { expect, test } from 'vitest';
import { readMeshFile } from '../../server/core/meshFiles/readMeshFile.ts';

/** Each of these took minutes by a pattern that looked at every rest of the file anew; the test's own time limit tells. */
test.each([
  ['“endsolid” and blanks', new TextEncoder().encode(`solid facet\n${`endsolid${' '.repeat(40)}`.repeat(40_000)}x`)],
  ['blanks', new TextEncoder().encode(`solid facet endsolid${'\n '.repeat(1_000_000)}x`)],
  ['“vertex”', new TextEncoder().encode(`solid facet\n${'vertex '.repeat(300_000)}`)],
  ['relations that do not end', zipSync({ '_rels/.rels': strToU8('<Relationship '.repeat(150_000)) })],
  ['a model of tags', zipSync({ 'a.model': strToU8(`<model>${'<a/>'.repeat(3_000_000)}</model>`) })],
  ['brackets', zipSync({ '_rels/.rels': strToU8(`<${'a'.repeat(1_000_000)}`) })],
])('a file of %s is refused soon', { timeout: 60_000 }, (_, bytes) => {
  expect(readMeshFile(bytes).status).toBe('faulty');
});
