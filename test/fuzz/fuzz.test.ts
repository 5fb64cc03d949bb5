import { expect, test } from 'vitest';
import { fuzz } from './fuzz.ts';

/** The same few at every run, in some ten seconds; `npm run fuzz -- --edits COUNT` goes on. */
const EDITS = 24;
const SEED = 20261129;

test('samples edited at random: every answer comes, no figure is none, what is restored is as it was', () => {
  const { faults, edits, restored } = fuzz(EDITS, SEED);
  expect(faults).toEqual([]);
  expect([edits, restored]).toEqual([EDITS, EDITS / 8]);
});
