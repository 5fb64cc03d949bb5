import { describe, expect, it } from 'vitest';
import { supposedWeight } from '../../server/core/trials/pool/suppose.ts';
import type { Explanation } from '../../server/core/trials/pool/weigh.ts';

const FRESH = 1000;

/** An explanation by one load: 40 g, its moments those of a place at 100, -5 and 60 mm. */
const explained = (cause: NonNullable<Explanation['load']>['cause'], mass = 0.04): Explanation =>
  ({
    items: [],
    load: { cause },
    known: { w: { mean: [mass, 0.1 * mass, -0.005 * mass, 0.06 * mass] } },
    facts: { mean: [0.05, 3e-6, 0.2, 0.01, 0.03] },
  }) as unknown as Explanation;

describe('what an explanation has aboard that the file has not', () => {
  it('water held above the surface: as heavy as the water in its place, so that under water it weighs nothing', () => {
    const weight = supposedWeight(explained({ kind: 'held', shell: 'casing' }), FRESH)!;
    expect(weight.mass - FRESH * weight.volume).toBeCloseTo(0, 12);
    expect([weight.station, weight.offset, weight.height]).toEqual(
      [0.1, -0.005, 0.06].map(at => expect.closeTo(at, 12)),
    );
  });

  it('a weight in a compartment displaces nothing', () => {
    const weight = supposedWeight(explained({ kind: 'unlisted', inside: 'tube' }), FRESH)!;
    expect(weight).toMatchObject({ mass: 0.04, station: expect.closeTo(0.1, 12) });
    expect(FRESH * weight.volume).toBeLessThan(1e-4 * weight.mass);
  });

  it('a weight in the water as its facts have it', () => {
    const weight = supposedWeight(explained({ kind: 'unlisted', inside: null }), FRESH)!;
    expect(weight).toMatchObject({ mass: 0.05, volume: 3e-6 });
  });

  it('no weight where it would be none, or not one', () => {
    expect(supposedWeight(explained({ kind: 'held', shell: 'casing' }, -0.01), FRESH)).toBeNull();
    expect(supposedWeight({ ...explained({ kind: 'held', shell: 'casing' }), load: null }, FRESH)).toBeNull();
  });
});
