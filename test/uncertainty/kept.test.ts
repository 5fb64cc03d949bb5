import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import type { Analysis } from '../../server/core/analysis/analysis.ts';
import { service } from '../helpers/analysed.ts';
import { probe } from '../helpers/probe.ts';

/** Uncertainties as plain figures. */
const said = (analysis: Analysis) => {
  const { surfaced, submerged } = analysis.uncertainties?.conditions ?? {};
  return Object.entries({ ...surfaced, ...submerged }).map(([figure, uncertainty]) => ({
    figure,
    sigma: Number(uncertainty!.sigma.toPrecision(9)),
    shares: uncertainty!.shares.slice(0, 8).map(({ input, share }) => `${input.words} ${share.toFixed(6)}`),
  }));
};

const EDITS: readonly (readonly [was: string, is: string])[] = [
  ['mass: 342 g ± 2 g', 'mass: 350 g ± 2 g'],
  ['mass: 350 g ± 2 g', 'mass: 350 g ± 5 g'],
  ['station: 228 to 338 mm', 'station: 230 to 338 mm ± 1 mm'],
  // An entry more before others: places in the lists move on.
  [
    '  - { name: servos',
    `  - { name: bolt, material: brass, ball: 9 mm, station: 400 mm, height: 20 mm }
  - { name: servos`,
  ],
  // The density of brass is two entries' now, of lead the stock's.
  ['lead: { strip: 12 x 6 mm }', 'lead: { density: 11200 kg/m3 ± 50 kg/m3, strip: 12 x 6 mm }'],
  ['11200 kg/m3 ± 50 kg/m3', '11200 kg/m3 ± 200 kg/m3'],
  ['temperature: 16 °C', 'temperature: 16 °C ± 4 °C'],
  ['mass: 186 g', 'mass: heavy'],
  ['mass: heavy', 'mass: 187 g'],
  ['heel: 1°', 'heel: 2°'],
];

it('uncertainties kept from one keystroke to the next are those of a fresh reading', { timeout: 60_000 }, () => {
  let text = readFileSync('samples/curlew.boat.yaml', 'utf8');
  let kept = service.analyse(text);
  kept.uncertainties;
  for (const [was, is] of EDITS) {
    expect(text).toContain(was);
    text = text.replace(was, is);
    kept = service.analyse(text, kept);
    expect({ is, said: said(kept) }).toEqual({ is, said: said(service.analyse(text)) });
  }
});

it('what was said of a condition under each name that was typed is not kept for good', () => {
  const named = (name: string): string =>
    probe([
      'bays:',
      ['conditions:', `  - { name: ${name}, condition: surfaced, without: [battery] }`, 'bays:'].join('\n'),
    ]);
  let analysis = service.analyse(named('a'));
  const { variations } = analysis.kept;
  for (let i = 0; i < 24; i++) {
    analysis = service.analyse(named(`awash ${i}`), analysis);
    expect(analysis.settled.all().uncertainties?.conditions[`awash ${i}`]).toBeDefined();
  }
  expect(analysis.kept.variations).toBe(variations);
  expect(variations.lain.size).toBeLessThanOrEqual(16);
});
