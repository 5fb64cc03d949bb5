import { describe, expect, it } from 'vitest';
import { coveringSigma } from '../../server/core/trials/estimation/coverage.ts';
import { seeded } from '../helpers/seeded.ts';

describe('the uncertainty of what is a mixture about a value that is shown', () => {
  it('is that of a normal distribution about its mean, and the root of the mean square beside it', () => {
    expect(coveringSigma([{ odds: 1, value: 3, sigma: 2 }], 3)).toBeCloseTo(2, 3);
    expect(coveringSigma([{ odds: 1, value: 3, sigma: 2 }], 3.1)).toBeCloseTo(Math.hypot(2, 0.1), 2);
    const rivals = [
      { odds: 0.6, value: 0, sigma: 1 },
      { odds: 0.4, value: 5, sigma: 1 },
    ];
    expect(coveringSigma(rivals, 0)).toBeCloseTo(Math.sqrt(1 + 0.4 * 25), 9);
  });
  it('takes no note of what is hardly likely, however far away', () => {
    const at = (far: number) =>
      coveringSigma(
        [
          { odds: 0.98, value: 0, sigma: 1 },
          { odds: 0.02, value: far, sigma: 1 },
        ],
        0,
      );
    expect(at(1e6)).toBeLessThan(1.2);
    expect(at(1e6)).toBeCloseTo(at(1e3), 5);
  });
  it('holds as much of it within one and two as of a normal distribution, or is the root of the mean square', () => {
    const random = seeded(7);
    for (let n = 0; n < 20; n++) {
      const parts = Array.from({ length: 1 + Math.floor(4 * random.even()) }, () => ({
        odds: random.even(),
        value: 3 * random.normal(),
        sigma: 0.2 + 2 * random.even(),
      }));
      const all = parts.reduce((sum, { odds }) => sum + odds, 0);
      const drawn = Array.from({ length: 20_000 }, () => {
        const at = random.even() * all;
        const part = parts.find((_, i) => at <= parts.slice(0, i + 1).reduce((sum, { odds }) => sum + odds, 0))!;
        return part.value + part.sigma * random.normal();
      });
      const sigma = coveringSigma(parts, 0);
      const share = (reach: number) => drawn.filter(value => Math.abs(value) <= reach).length / drawn.length;
      const rms = Math.sqrt(drawn.reduce((sum, value) => sum + value ** 2, 0) / drawn.length);
      expect(sigma).toBeLessThan(1.03 * rms);
      const isRms = sigma > 0.97 * rms;
      if (!isRms) expect(Math.min(share(sigma) / 0.6827, share(2 * sigma) / 0.9545)).toBeCloseTo(1, 1);
    }
  });
});
