import { expect, test } from 'vitest';
import { fuzzEdits, fuzzPlaces } from './fuzz.ts';
import type { Log } from './log.ts';
import { fuzzMeshes } from './meshes.ts';
import { fuzzWire } from './wire.ts';

/** The same few at every run; `npm run fuzz` goes on. */
const SEED = 3;

test.each<[what: string, run: (log: Log) => void | Promise<void>, tried: Readonly<Record<string, number>>]>([
  ['samples edited', log => fuzzEdits(6, SEED, log), { restored: 1, answers: 6, actions: 1 }],
  ['prefixes and single deletions', log => fuzzPlaces(2900, 9999, log), { place: 6 }],
  ['mesh files', log => fuzzMeshes(3, SEED, log), { 'mesh file': 3 }],
  ['by the protocol', log => fuzzWire(6, SEED, log), { 'restored by the protocol': 1 }],
])('%s: every answer comes, no figure is none, what is restored is as it was', async (_, run, tried) => {
  const faults: unknown[] = [];
  const counts = new Map<string, number>();
  await run({
    fault: fault => void faults.push(fault),
    tried: what => void counts.set(what, (counts.get(what) ?? 0) + 1),
  });
  expect(faults).toEqual([]);
  expect(Object.fromEntries(counts)).toMatchObject(tried);
});
