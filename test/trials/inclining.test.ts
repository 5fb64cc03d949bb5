import { describe, expect, it } from 'vitest';
import { incline, metacentricHeight } from '../../server/core/trials/pool/inclining.ts';
import { heard } from '../helpers/analysed.ts';
import { boatText } from '../helpers/boatText.ts';
import { PROBE } from '../helpers/probe.ts';

const DEGREE = Math.PI / 180;
const sure = (value: number, sigma = 1e-9) => ({ value, sigma });

describe('metacentric height from shifts', () => {
  it('a published experiment: four shifts of 3 t by 12 m in a ship of 8000 t, GM 0.427 m', () => {
    // India MMD Class 4, Naval Architecture, August 2022, question 7(b), worked (seen): a pendulum of 5.5 m goes by 64,
    // 52, 57 and 59 mm; GM 0.427 m.
    const shifts = [64, 52, 57, 59].map(gone => ({
      moment: sure(36e3),
      heel: sure(Math.atan(gone / 5500), 1e-4),
    }));
    const gm = metacentricHeight(shifts, sure(8e6));
    expect(gm!.value).toBeCloseTo(0.427, 3);
    // By hand: 36 · 5.5 / (8000 · 0.058).
    expect(gm!.value).toBeCloseTo(0.426724, 5);
  });
  it('at the size of a model: 50 g by 100 mm in 6.2 kg, 2.5° (formula; the instance is ours)', () => {
    const gm = metacentricHeight([{ moment: sure(0.005), heel: sure(2.5 * DEGREE) }], sure(6.2));
    expect(gm!.value * 1000).toBeCloseTo(18.470779, 6);
  });
  it('is the slope of the line of moment against tangent, shifts to both sides (plot of ASTM F1321; ours)', () => {
    const tangents = [0, 0.0435919791, -0.0435919791, 0.0871839582, -0.0871839582];
    const shifts = [0, 0.005, -0.005, 0.01, -0.01].map((moment, i) => ({
      moment: sure(moment),
      heel: sure(Math.atan(tangents[i]!), 1e-3),
    }));
    expect(metacentricHeight(shifts, sure(6.2))!.value).toBeCloseTo(0.0185, 9);
  });
  it('carries the uncertainty of angle, arm, weight and displacement (first order, by hand)', () => {
    // One shift: the shares are sec²·u/tan of the heel, those of the moment and of the displacement, added in squares.
    const heel = 4 * DEGREE;
    const u = 0.2 * DEGREE;
    const gm = metacentricHeight([{ moment: sure(2e-3, 5e-5), heel: sure(heel, u) }], sure(3, 0.03))!;
    const share = Math.hypot(u / (Math.cos(heel) ** 2 * Math.tan(heel)), 5e-5 / 2e-3, 0.01);
    expect(gm.sigma / gm.value).toBeCloseTo(share, 10);
  });
  it('tells nothing without a shift, or of a boat that falls towards the weight’s other side', () => {
    expect(metacentricHeight([], sure(3))).toBeNull();
    expect(metacentricHeight([{ moment: sure(0), heel: sure(0.1) }], sure(3))).toBeNull();
    expect(metacentricHeight([{ moment: sure(1e-3), heel: sure(-0.1) }], sure(3))).toBeNull();
  });
});

it('finds the height of G that the barge was not filed with', () => {
  // By the file G is at 28.5 mm and GM 13.167 mm; the trial says GM 15 mm, so G is 1.833 mm lower.
  const gm = 0.015;
  const tangent = (0.05 * 0.04) / (2 * gm);
  const heel = Math.atan(tangent) / DEGREE;
  const { filed, trials, kept } = heard(
    boatText`
      ${PROBE}trials:
        - { condition: inclining, mass: 50 g, moved: 40 mm, heel: ${heel}° ± 0.1° }
    `,
  );
  const found = incline(filed.boat, trials[0]!, kept.cache, 0.002)!;
  expect(found.gm.value).toBeCloseTo(gm, 9);
  expect(found.gmOfFile).toBeCloseTo(0.025 + 0.01 / 0.6 - 0.0285, 9);
  expect(found.heightOfG.value).toBeCloseTo(0.025 + 0.01 / 0.6 - gm, 9);
});
