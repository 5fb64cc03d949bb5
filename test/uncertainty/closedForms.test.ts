import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { emptyCache } from '../../server/core/bodies/assemble.ts';
import { finish } from '../../server/core/steps/steps.ts';
import { dayOf } from '../../server/core/trials/pool/day.ts';
import { floatTrial, shownBy } from '../../server/core/trials/pool/predict.ts';
import { answerSteps } from '../../server/core/trials/pool/sensitivities.ts';
import { inputsOf } from '../../server/core/uncertainty/inputs.ts';
import type { Uncertainty } from '../../server/core/uncertainty/spread.ts';
import { emptyVariations } from '../../server/core/uncertainty/variations.ts';
import { withInputs } from '../../server/core/uncertainty/withInputs.ts';
import { heard } from '../helpers/analysed.ts';
import { arbitrarySub, subText } from '../helpers/boats.ts';
import { boatText, textLines } from '../helpers/boatText.ts';
import { probe } from '../helpers/probe.ts';

/** What an input changes when it is more by its uncertainty. */
function changeBy(uncertainty: Uncertainty | undefined, words: string): number {
  const share = uncertainty?.shares.find(({ input }) => input.words === words);
  if (!share) throw new Error(`${words} has no share`);
  return share.change;
}

/*
 * The probe is a box barge of 400 x 100 mm that draws 50 mm at 2000 g, its waterplane 0.04 m2; water of 1000 kg/m3. GM = KB
 * + BM - KG = 25 + 100²/(12·50) - 24 mm. Uncertainties so small that the slope is all: nothing curves.
 */
const SMALL = probe(
  ['mass: 800 g', 'mass: 800 g ± 0.1 g'],
  [
    boatText`
      station: 150 to 250 mm
          height: 30 mm`,
    boatText`
      station: 200 mm ± 0.01 mm
          offset: 0 ± 0.01 mm
          height: 30 mm ± 0.01 mm`,
  ],
  [
    boatText`
      mass: 600 g
          station: 120 to 280 mm
          height: 20 mm`,
    boatText`
      mass: 600 g ± 0.01 g
          station: 200 mm ± 0.001 mm
          offset: 0 ± 0.001 mm
          height: 20 mm ± 0.001 mm`,
  ],
  ['station: 0 to 400 mm', 'station: 0 to 400 mm ± 0.001 mm'],
  ['offset: -50 to 50 mm', 'offset: -50 to 50 mm ± 0.001 mm'],
  ['height: 0 to 70 mm', 'height: 0 to 70 mm ± 0.001 mm'],
  ['mass: 600 g', 'mass: 600 g ± 0.01 g'],
  ['station: 90 to 310 mm', 'station: 90 to 310 mm ± 0.001 mm'],
  ['offset: -45 to 45 mm', 'offset: -45 to 45 mm ± 0.001 mm'],
  ['height: 5 to 55 mm', 'height: 5 to 55 mm ± 0.001 mm'],
);
const GM = 25 + 100 ** 2 / 600 - (600 * 35 + 800 * 30 + 600 * 20) / 2000;

describe('a box barge by hand', { timeout: 60_000 }, () => {
  const { surfaced, submerged } = heard(SMALL).uncertainties!.conditions;

  it('sinks by its mass over density and waterplane', () => {
    // 0.1 g / (1 g/ml · 400 cm2) = 0.0025 mm.
    expect(changeBy(surfaced!.draft!, 'mass of “battery”') * 1e3).toBeCloseTo(0.1 / 40, 8);
    expect(changeBy(surfaced!.reserveBuoyancy!, 'mass of “battery”') * 1e3).toBeCloseTo(-0.1, 6);
  });

  it('heels by moment over displacement and GM', () => {
    expect(changeBy(surfaced!.heel!, 'offset of “battery”')).toBeCloseTo((800 * 0.01) / (2000 * GM), 9);
  });

  it('trims by moment over displacement and longitudinal GM', () => {
    const along = 25 + 400 ** 2 / 600 - (600 * 35 + 800 * 30 + 600 * 20) / 2000;
    expect(changeBy(surfaced!.trim!, 'station of “battery”')).toBeCloseTo((800 * 0.01) / (2000 * along), 9);
  });

  it('loses GM as a weight is higher, and as the water is lighter by what BM and KB become', () => {
    expect(changeBy(surfaced!.gm!, 'height of “battery”') * 1e3).toBeCloseTo((-800 * 0.01) / 2000, 7);
    // d(KB + BM)/dT·dT with KB = T/2, BM = B²/(12 T), T = m/(ρ·L·B): 0.5 kg/m3 more is 0.05 % less draft.
    const draft = -50 * 0.0005;
    const known = (1 / 2 - 100 ** 2 / (12 * 50 ** 2)) * draft;
    expect(changeBy(surfaced!.gm!, 'density of the water') * 1e3).toBeCloseTo(known, 5);
  });

  it('hangs as fuller a tank as it is lighter', () => {
    expect(changeBy(submerged!.fill!, 'mass of “battery”')).toBeCloseTo(-0.1 / 990, 8);
  });

  it('tilts under water by moment over displacement and BG', () => {
    const bg = 35 - (600 * 35 + 800 * 30 + 600 * 20 + 800 * 30) / 2800;
    expect(changeBy(submerged!.trim!, 'station of “battery”')).toBeCloseTo((800 * 0.01) / (2800 * bg), 7);
    expect(changeBy(submerged!.bg!, 'height of “battery”') * 1e3).toBeCloseTo((-800 * 0.01) / 2800, 7);
  });

  it('adds up by squares where nothing curves (GUM 5.1.2)', () => {
    for (const uncertainty of [surfaced!.draft!, surfaced!.gm!, submerged!.fill!, submerged!.trim!]) {
      const squares = uncertainty.shares.reduce((sum, { change }) => sum + change ** 2, 0);
      expect(uncertainty.sigma).toBeCloseTo(Math.sqrt(squares), 7);
      expect(uncertainty.rough).toBe(null);
    }
  });

  it('a tank larger by its uncertainty is less full, and the one that would do is as large as before', () => {
    const { tanks } = heard(SMALL).uncertainties!;
    // Each end ± 0.001 mm of 220: the length is off by √2 of that, and the fill falls as it grows.
    const known = (-(800 / 990) * 0.001 * Math.SQRT2) / 220;
    expect(changeBy(submerged!.fill!, 'length of “main tank”')).toBeCloseTo(known, 9);
    expect(tanks[0]!.shares.some(({ input }) => input.words === 'length of “main tank”')).toBe(false);
  });
});

describe('whatever the boat', { timeout: 60_000 }, () => {
  it('shares add up to 1, the largest first', () => {
    fc.assert(
      fc.property(arbitrarySub({ offset: 3 }), sub => {
        const { conditions, tanks } = heard(subText(sub)).uncertainties!;
        const all: readonly Uncertainty[] = [
          ...Object.values(conditions).flatMap(figures => Object.values(figures ?? {}).flatMap(one => one ?? [])),
          ...tanks,
        ];
        for (const { shares, sigma } of all) {
          expect(sigma).toBeGreaterThan(0);
          expect(shares.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 6);
          expect(shares.every(({ share }, i) => i === 0 || share <= shares[i - 1]!.share)).toBe(true);
        }
      }),
      { numRuns: 12 },
    );
  });

  it('sensitivities are what the full model does at a small change, wherever it runs straight', () => {
    const seen = { straight: 0, bent: 0 };
    fc.assert(
      fc.property(arbitrarySub({ offset: 3 }), sub => {
        const read = boatText`
          trials:
            - condition: surfaced
              marks: [{ station: ${0.1 * sub.length} mm, height: 40 mm }, { station: ${0.9 * sub.length} mm, height: 40 mm }]
              freeboard: [{ station: ${0.5 * sub.length} mm, height: 20 mm }]
              trim: 0°
              heel: 0°
        `;
        holdSlopes(subText(sub) + read, 5, seen);
      }),
      { numRuns: 6 },
    );
    expect(seen.straight).toBeGreaterThan(seen.bent);
  });

  it.each([
    [
      'freeboard to the top of what is itself uncertain',
      'condition: surfaced, freeboard: [{ station: 200 mm, height: 20 mm }]',
    ],
    ['the water with so much of the boat proud of the surface', 'condition: submerged, water: 790 ml, proud: 2 mm'],
  ])('so are those of %s', (_, trial) => {
    const seen = { straight: 0, bent: 0 };
    const uncertain = probe(
      ['height: 0 to 70 mm', 'height: 0 to 70 mm ± 0.2 mm'],
      ['height: 20 mm', 'height: 20 mm ± 0.5 mm'],
    );
    holdSlopes(uncertain + textLines(['trials:', `  - { ${trial} }`]), 1, seen);
    expect(seen.straight).toBeGreaterThan(seen.bent);
  });
});

/*
 * A float of 20 ml in the barge's draft of 50 mm, alone in what it displaces: 20 x 10 mm, 100 mm long, its middle in the
 * surface, where it has 0.002 m2 of waterplane; or wholly under it. Worked by hand.
 */
describe('what is so open that its uncertainty is no small step', () => {
  const slopeOf = (float: string, words: string, sigma: number): number => {
    const text = probe(['bays:', [`  - { name: float, mass: 0.1 g, ${float} }`, 'bays:'].join('\n')]);
    const { source, trials } = heard(
      text + textLines(['trials:', '  - { condition: surfaced, marks: [{ station: 200 mm, height: 1 mm }] }']),
    );
    const input = inputsOf(source, emptyVariations()).find(one => one.words === words)!;
    const day = dayOf(source, [{ ...input, sigma, isBroad: true }], trials[0]!);
    const caches = { cache: emptyCache(), variations: emptyVariations() };
    const { slopes } = finish(answerSteps(day, floatTrial(source.boat, trials[0]!, emptyCache())!, caches));
    return slopes[0]![0]!;
  };

  it('a height: by half of it either way the float is wholly out, or wholly in', () => {
    const float = 'box: 20 x 10 mm, station: 150 to 250 mm, height: 50 mm';
    expect(slopeOf(float, 'height of “float”', 0.04)).toBeCloseTo(20e-6 / 0.042, 6);
  });

  it('a volume: by a small part of it, for it stays one', () => {
    const float = 'volume: 20 ml, station: 200 mm, height: 20 mm';
    expect(slopeOf(float, 'volume of “float”', 60e-6)).toBeCloseTo(-60e-6 / 0.04, 6);
  });
});

/** Holds the slopes of each reading of the first trial against the full model on both sides of what the file says. */
function holdSlopes(text: string, readings: number, seen: Record<'straight' | 'bent', number>): void {
  const { source, trials } = heard(text);
  const trial = trials[0]!;
  // Uncertainties a hundred times smaller: nothing that counts curves over them.
  const fine = inputsOf(source, emptyVariations()).map(input => ({ ...input, sigma: input.sigma / FINER }));
  const day = dayOf(source, fine, trial);
  const asFiled = floatTrial(source.boat, trial, emptyCache());
  if (!asFiled) return;
  const { slopes } = finish(answerSteps(day, asFiled, { cache: emptyCache(), variations: emptyVariations() }));
  expect(slopes).toHaveLength(readings);
  for (const [i, input] of day.inputs.entries()) {
    const readAt = (by: number) => {
      const boat = withInputs(source, new Map([[input, input.value + by]]));
      const lies = floatTrial(boat, trial, emptyCache());
      return lies && trial.readings.map(reading => shownBy(lies, reading, boat)!);
    };
    const slopeOver = (by: number) => {
      const [more, less] = [readAt(by), readAt(-by)];
      return more && less && more.map((one, r) => ((one - less[r]!) * input.sigma) / (2 * by));
    };
    // By the whole uncertainty and by a small part of it: what touches the surface there bends in between.
    const [known, far, near] = [1, FINER, 0.1].map(part => slopeOver(part * input.sigma));
    if (!known || !far || !near) continue;
    for (const [r, row] of slopes.entries()) {
      const size = Math.max(...row.map(Math.abs));
      const bend = Math.max(...[far, near].map(other => Math.abs(other[r]! - known[r]!)));
      seen[bend < 0.005 * size ? 'straight' : 'bent']++;
      if (bend < 0.005 * size) expect(Math.abs(row[i]! - known[r]!)).toBeLessThan(0.03 * size);
    }
  }
}

/** How many times finer than written the uncertainties are of which slopes are taken. */
const FINER = 100;
