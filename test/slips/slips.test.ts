import { describe, expect, it } from 'vitest';
import { service } from '../helpers/analysed.ts';
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
