import { describe, expect, it } from 'vitest';
import { analysed } from '../helpers/analysed.ts';
import { boatText } from '../helpers/boatText.ts';
import { probe } from '../helpers/probe.ts';

/*
 * The probe with other weights: a box of 400 x 100 x 70 mm, 600 g at 35 mm, with a battery and floor lead of 600 g at the
 * given heights. With 1200 g of battery it weighs 2400 g and floats 60 mm deep: the metacentre stands 30 + 100²/12/60 =
 * 43.9 mm above the keel.
 */
const boat = (battery: number, height: number, lead: number) =>
  analysed(
    probe(
      ['mass: 800 g', `mass: ${battery} g`],
      [
        boatText`
          height: 30 mm
              in: hold`,
        boatText`
          height: ${height} mm
              in: hold`,
      ],
      [
        boatText`
          height: 20 mm
              in: hold`,
        boatText`
          height: ${lead} mm
              in: hold`,
      ],
    ),
  );
const told = (analysis: ReturnType<typeof boat>) => analysis.findings.filter(({ code }) => code === 'small-range');

/**
 * Righting lever of the box (mm) by strips: what of the rectangle is under a line at the heel (rad), as much as at `draft`
 * upright; how far its middle lies from the centre of mass at `kg`, across. The level of the line is found by halving.
 */
function leverByHand(heel: number, draft: number, kg: number): number {
  const [half, depth] = [50, 70];
  const strips = 4000;
  const under = (level: number) => {
    let [area, moment] = [0, 0];
    for (let i = 0; i < strips; i++) {
      const y = -half + ((i + 0.5) / strips) * 2 * half;
      const top = Math.min(depth, Math.max(0, level + y * Math.tan(heel)));
      const piece = (top * 2 * half) / strips;
      area += piece;
      moment += piece * (y * Math.cos(heel) + (top / 2 - kg) * Math.sin(heel));
    }
    return { area, moment };
  };
  let [low, high] = [-100, 200];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (under(middle).area < draft * 2 * half) low = middle;
    else high = middle;
  }
  const { area, moment } = under(low);
  return moment / area;
}

describe('a boat that comes back from little', () => {
  it('is told from how much, and on which side', () => {
    const analysis = boat(1200, 45, 40);
    const [finding] = told(analysis);
    expect(finding!.message).toMatch(
      /^On the surface the boat comes back only from 23\.7° to (port|starboard), wanted 40°: /,
    );
    expect(finding!.severity).toBe('warning');
    // Centre of mass: (600·35 + 1200·45 + 600·40) / 2400 = 41.25 mm.
    const lever = (degrees: number) => leverByHand((degrees / 180) * Math.PI, 60, 41.25);
    expect(lever(23.2)).toBeGreaterThan(0);
    expect(lever(24.2)).toBeLessThan(0);
  });
  it.each([
    ['that comes back from 120°', boat(900, 30, 30)],
    ['that does not rest upright, and is told so', boat(800, 50, 40)],
  ])('one %s is not', (_, analysis) => {
    expect(told(analysis)).toEqual([]);
    expect(analysis.stability.all().range).not.toBeNull();
  });
});
