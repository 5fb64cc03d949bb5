import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Boat } from '../../server/core/boat/boat.ts';
import { FIGURES } from '../../server/core/figures/table.ts';
import type { Uncertainty } from '../../server/core/uncertainty/spread.ts';
import { analysed } from '../helpers/analysed.ts';
import { boatText } from '../helpers/boatText.ts';
import { probe } from '../helpers/probe.ts';
import { type Draw, deviation, monteCarlo } from '../helpers/uncertain.ts';

const sample = (name: string): string => readFileSync(`samples/${name}.boat.yaml`, 'utf8');

/** The probe with tolerances tight enough that its uncertainties are small against what holds it. */
const TIGHT = [
  ['station: 0 to 400 mm', 'station: 0 to 400 mm ± 0.3 mm'],
  ['offset: -50 to 50 mm', 'offset: -50 to 50 mm ± 0.1 mm'],
  ['height: 0 to 70 mm', 'height: 0 to 70 mm ± 0.1 mm'],
  ['offset: -45 to 45 mm', 'offset: -45 to 45 mm ± 0.2 mm'],
  [
    boatText`
      station: 150 to 250 mm
          height: 30 mm`,
    boatText`
      station: 150 to 250 mm ± 0.4 mm
          offset: 0 ± 0.3 mm
          height: 30 mm ± 0.5 mm`,
  ],
  [
    boatText`
      station: 120 to 280 mm
          height: 20 mm`,
    boatText`
      station: 120 to 280 mm ± 0.4 mm
          offset: 0 ± 0.3 mm
          height: 20 mm ± 0.5 mm`,
  ],
] as const;

const BOATS: readonly (readonly [says: string, text: string])[] = [
  ['a box barge, well measured', probe(...TIGHT)],
  // B lies 2.9 mm above G: half a millimetre of a weight's place is degrees.
  ['the same, touchy', probe(...TIGHT, ['height: 20 mm ± 0.5 mm', 'height: 35 mm ± 0.5 mm'])],
  [
    'a touchy boat with a slack tank in cells',
    probe(...TIGHT, [
      'kind: bladder',
      boatText`
        kind: sealed
              cells: 6`,
    ]),
  ],
  ['curlew, by the usual uncertainties', sample('curlew')],
  ['petrel, by the usual uncertainties', sample('petrel')],
];

const RUNS = 900;
/** A standard deviation out of 900 draws is off by more than four of its own standard errors once in 10 000 times. */
const ERRORS = 4;

describe('uncertainties against a Monte Carlo run of the full model', { timeout: 120_000 }, () => {
  it.each(BOATS)('%s', (_, text) => {
    const analysis = analysed(text);
    const { inputs, conditions } = analysis.uncertainties!;
    const { surfaced, submerged } = conditions;
    const draws = monteCarlo(analysis, inputs, RUNS, 20_260_513);
    const of = (condition: 'surfaced' | 'submerged', figure: string): readonly number[] =>
      draws.flatMap(draw => {
        const drawn = draw[condition];
        return drawn ? [figureOf(drawn, figure, analysis.boat)] : [];
      });
    const misses: unknown[] = [];
    let told = 0;
    for (const [condition, uncertainties] of [
      ['surfaced', surfaced],
      ['submerged', submerged],
    ] as const) {
      for (const [figure, uncertainty] of Object.entries(uncertainties!) as [string, Uncertainty][]) {
        const drawn = of(condition, figure);
        // A draw that does not rest is none of the figure's.
        if (uncertainty.rough !== null || drawn.length < 0.98 * RUNS) continue;
        told++;
        const { sigma, error } = deviation(drawn);
        if (Math.abs(uncertainty.sigma - sigma) > ERRORS * error)
          misses.push({ condition, figure, sigma, error, got: uncertainty.sigma });
      }
    }
    expect(misses).toEqual([]);
    expect(told).toBeGreaterThanOrEqual(11);
  });
});

/** The figure as the table reads it off the boat that was drawn. */
function figureOf(drawn: NonNullable<Draw['surfaced'] | Draw['submerged']>, id: string, boat: Boat): number {
  const where = drawn.status === 'afloat' ? 'afloat' : 'submerged';
  const figure = FIGURES.find(one => one.id === id && one.where === where)!;
  return figure.of(drawn.floating, boat)!;
}
