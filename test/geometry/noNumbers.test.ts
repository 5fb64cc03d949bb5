import { describe, expect, it } from 'vitest';
import type { Cuttable, Immersion } from '../../server/core/geometry/cut/immersion.ts';
import { fillTo } from '../../server/core/geometry/cut/levelCut.ts';
import type { Vec3 } from '../../server/core/geometry/form/vector.ts';
import { sectionsForm } from '../helpers/atOnce.ts';

/** Figures are checked where they are read; the core ends all the same where one that is no number gets through. */
describe('figures that are no numbers', () => {
  it.each([
    ['whose volume is none', Number.NaN, 1, [0, 1]],
    ['whose cuts are none', 1, Number.NaN, [0, 1]],
    ['whose extent is none', 1, 1, [Number.NaN, Number.NaN]],
    ['of endless extent', 1, 1, [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]],
  ] as const)('a level is looked for in a body %s, and the search ends', (_, volume, wet, extent) => {
    let cuts = 0;
    const body: Cuttable = {
      volume,
      moment: [0, 0, 0],
      box: { middle: [0, 0, 0], half: [1, 1, 1] },
      extent: () => extent,
      cut(_n: Vec3, _h: number, sums: Immersion) {
        cuts++;
        sums.volume += wet;
        sums.area += wet;
      },
    };
    for (const guess of [undefined, Number.NaN, 0.5]) fillTo(body, [0, 0, 1], 0.5, { guess });
    expect(cuts).toBeGreaterThan(0);
    expect(cuts).toBeLessThan(1000);
  });

  it('outlines are joined by their girth, and that ends', () => {
    const outline = (breadth: number, points: number) =>
      Array.from({ length: points }, (_, i) => [breadth, i / points] as const);
    const sections = [
      { station: 0, outline: outline(Number.NaN, 3) },
      { station: 1, outline: outline(1, 5) },
    ];
    expect(sectionsForm(sections, { endsClosed: true }).faces.length).toBeGreaterThan(0);
  });
});
