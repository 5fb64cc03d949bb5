import fc from 'fast-check';
import { expect, test } from 'vitest';
import { shellSchema } from '../../schema/hull.ts';
import { checkSteps, checkValue } from '../../server/core/boat/readEntry.ts';

const schema = shellSchema({ length: 'mm', mass: 'g' });
const options = { path: ['hull', 'shells', 0], what: 'a shell', keysAt: () => [] };

const written = fc.nat(900).map(station => ({
  station,
  outline: [
    [0, 2],
    [18, 20],
    [22, 40],
  ],
}));
const planned = fc.nat(900).map(station => ({ station: `${station} mm`, keel: 2, deck: 40, half: 22 }));
const wrong = fc.constantFrom<unknown>({ station: 'aft' }, { station: 1, outline: [[1]] }, null, 7);
const mostly = <T>(well: T, ill: T) => fc.nat(9).map(drawn => (drawn > 0 ? well : ill));
/** Written well, mostly; a table may be too short or too long, and a row or another key be wrong. */
const entry = fc.record(
  {
    name: fc.constant('outer hull'),
    mass: mostly('600 g', '600 gz'),
    wall: mostly<unknown>(2, 'thin'),
    sections: fc.oneof(
      fc.array(fc.oneof(written, planned), { minLength: 2, maxLength: 103, size: 'max' }),
      fc.array(fc.oneof({ weight: 20, arbitrary: written }, { weight: 1, arbitrary: wrong }), { maxLength: 40 }),
    ),
  },
  { requiredKeys: ['name', 'sections'] },
);

test('a table of offsets that is checked in stretches is read as it is at once, with the same findings', () => {
  let [well, ill, most] = [0, 0, 0];
  fc.assert(
    fc.property(entry, raw => {
      const work = checkSteps(schema, raw, options);
      let steps = 1;
      let step = work.next();
      for (; !step.done; step = work.next()) steps += 1;
      const atOnce = checkValue(schema, raw, options);
      expect(step.value).toEqual(atOnce);
      most = Math.max(most, steps);
      if (atOnce.findings.length > 0) ill += 1;
      else well += 1;
    }),
    { numRuns: 300 },
  );
  expect(well).toBeGreaterThan(20);
  expect(ill).toBeGreaterThan(20);
  expect(most).toBeGreaterThan(10);
});
