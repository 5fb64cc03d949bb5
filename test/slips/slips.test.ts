import { describe, expect, it } from 'vitest';
import { soundMends } from '../../server/core/analysis/soundMends.ts';
import { service } from '../helpers/analysed.ts';
import { boatText } from '../helpers/boatText.ts';
import { BOATS } from './boats.ts';
import { slipsOf } from './slipKinds.ts';
import { tryMends } from './tryMends.ts';

/** One slip in so many is tried here; all of them by `npm run slips`. */
const ONE_IN = 37;

describe('slips of the pen in small boats', () => {
  it.each(Object.entries(BOATS))('%s itself is without one', (_name, text) => {
    expect(service.analyse(text).findings).toEqual([]);
  });

  it.each(Object.entries(BOATS))(
    '%s: one finding each; its mends clear it, keep every figure and bring no error',
    (name, text) => {
      const slips = slipsOf(text).filter((_, i) => i % ONE_IN === 0);
      const { failures, mends } = tryMends(name, text, slips);
      expect(
        failures.map(({ slip, what, said }) => `${slip.kind}: ${slip.was} => ${slip.is}: ${what}: ${said}`),
      ).toEqual([]);
      expect(mends).toBeGreaterThan(slips.length / 3);
    },
  );
});

it('a key that is wrongly written is not offered to be taken out where that brings an error', () => {
  const pair = (offset: string) => boatText`
    boat: T
    hull:
      length: 700 mm
      compartments:
        - { name: dry, mass: 322 g, round: 64 mm, station: 170 to 520 mm, height: 46 mm }
      tanks:
        - { name: saddle, sides: both, box: 6 x 44 mm, station: 180 to 520 mm, ${offset}: 35.5 mm, height: 44 mm, kind: vented }
  `;
  expect(service.analyse(pair('offset')).file.findings).toEqual([]);
  const analysis = service.analyse(pair('offst'));
  const [finding] = analysis.file.findings;
  expect(finding!.mends).toHaveLength(2);
  expect(soundMends(analysis, finding!)).toEqual([finding!.mends![0]]);
});

it.each(['lenght: 700 mm', 'lengt : 700 mm'])('nor where a key that is needed is meant: %s', length => {
  const analysis = service.analyse(boatText`
    boat: T
    hull:
      ${length}
      waterline: 56 mm
    payload: []
  `);
  const [finding] = analysis.file.findings;
  expect(soundMends(analysis, finding!).map(({ title }) => title)).toEqual(['Change to “length”']);
});

it.each([
  ['80 mm ± -1 mm', ['Change to “1 mm”']],
  ['80 mm ± -30000 mm', []],
])('a reading of %s is not mended into another slip', (height, titles) => {
  const analysis = service.analyse(boatText`
    boat: T
    hull:
      length: 700 mm
      waterline: 56 mm
    trials:
      - condition: surfaced
        marks: [{ station: 60 mm, height: ${height} }]
  `);
  const [finding] = analysis.file.findings;
  expect(soundMends(analysis, finding!).map(({ title }) => title)).toEqual(titles);
});
