import { describe, expect, test } from 'vitest';
import { chanceOfAll, limitsKept } from '../../server/core/corrections/balance/sureness.ts';
import { another, chanceOf } from '../../server/core/corrections/kinds/another.ts';
import { openIn } from '../../server/core/corrections/search/balances.ts';
import { correctionReport } from '../../server/core/report/correctionReport.ts';
import { plainPaint } from '../../server/core/report/rows.ts';
import type { Uncertainties } from '../../server/core/uncertainty/uncertainties.ts';
import { analysed, heard } from '../helpers/analysed.ts';
import { boatText, textLines } from '../helpers/boatText.ts';
import { probe } from '../helpers/probe.ts';

const BATTERY = ['station: 150 to 250 mm', 'station: 155 to 255 mm'] as const;

/** Every figure known thirty times as well. */
const shrunk = (uncertainties: Uncertainties): Uncertainties => ({
  ...uncertainties,
  conditions: Object.fromEntries(
    Object.entries(uncertainties.conditions).map(([id, figures]) => [
      id,
      Object.fromEntries(
        Object.entries(figures!).map(([figure, known]) => [figure, { ...known!, sigma: known!.sigma / 30 }]),
      ),
    ]),
  ),
});

describe('another 10 g of lead', () => {
  const analysis = heard(probe(BATTERY));
  const boatToTrim = analysis.boatToTrim!;
  const inserted = analysis.corrections.all().find(({ kind }) => kind === 'insert')!;

  test('does as much as the best place that anybody finds for it by hand', () => {
    const [piece] = inserted.pieces;
    const length = (piece!.mass + 0.01) / piece!.slot.massPerLength;
    const open = openIn(boatToTrim);
    const chances = Array.from({ length: 19 }, (_, i) => {
      const from = 0.02 + 0.003 * i;
      const entry = `  - { name: more, material: lead, mass: ${1e3 * piece!.mass + 10} g, box: 12 x 6 mm, station: ${from * 1e3} to ${(from + length) * 1e3} mm, height: 5 mm, in: hold }`;
      const laid = analysed(analysis.syntax.text.replace(textLines(['bays:']), textLines([entry, 'bays:'])));
      return chanceOfAll(limitsKept(laid, 'both', open));
    });
    expect(another(inserted, boatToTrim)!.mass).toBe(0.01);
    expect(another(inserted, boatToTrim)!.chance).toBeGreaterThan(0.99 * Math.max(...chances));
  });

  test.each([
    ['whole pieces of the stock', [['strip: 12 x 6 mm', 'pieces: [4 g, 12 g]']] as const, 0.012],
    [
      'half an ounce',
      [
        [
          'boat: Probe',
          boatText`
            boat: Probe
            units: { length: mm, mass: oz }`,
        ],
      ] as const,
      0.014175,
    ],
  ])('is %s where that is what there is', (_, changes, mass) => {
    const other = heard(probe(BATTERY, ...changes));
    const first = other.corrections.all()[0]!;
    expect(another(first, other.boatToTrim!)!.mass).toBeCloseTo(mass, 6);
  });

  test('is told of where there is a chance to speak of, and of nothing that takes pieces out', () => {
    // The same boat, all of it known thirty times as well.
    const sure = { ...analysis, boatToTrim: { ...boatToTrim, uncertainties: shrunk(boatToTrim.uncertainties!) } };
    expect(chanceOf(inserted, sure.boatToTrim)).toBeGreaterThan(0.5);
    expect(correctionReport(sure, inserted, plainPaint)).toMatch(
      /\nAnother 10 g of lead, best in “(bow|stern) bay”, would make that \d+ in 100\.\n/,
    );
    expect(correctionReport(analysis, inserted, plainPaint)).not.toContain('Another');
    expect(another({ ...inserted, kind: 'nearest' }, boatToTrim)).toBeNull();
  });
});
