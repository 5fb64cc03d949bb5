import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Analysis } from '../../server/core/analysis/analysis.ts';
import { standingsOf } from '../../server/core/judges/standings.ts';
import { textReport } from '../../server/core/report/textReport.ts';
import { heard, marked, service } from '../helpers/analysed.ts';
import { boatText } from '../helpers/boatText.ts';
import { probe } from '../helpers/probe.ts';

/** The probe with everything known to a hair but the battery's place athwart. */
const known = (offset: string, ...more: readonly (readonly [string, string])[]): string =>
  probe(
    [
      boatText`
        mass: 600 g
              station: 0 to 400 mm`,
      boatText`
        mass: 600 g ± 0.1 g
              station: 0 to 400 mm ± 0.01 mm`,
    ],
    ['offset: -50 to 50 mm', 'offset: -50 to 50 mm ± 0.01 mm'],
    ['height: 0 to 70 mm', 'height: 0 to 70 mm ± 0.01 mm'],
    ['station: 90 to 310 mm', 'station: 90 to 310 mm ± 0.01 mm'],
    ['offset: -45 to 45 mm', 'offset: -45 to 45 mm ± 0.01 mm'],
    ['height: 5 to 55 mm', 'height: 5 to 55 mm ± 0.01 mm'],
    ['mass: 800 g', 'mass: 800 g ± 0.1 g'],
    [
      boatText`
        station: 150 to 250 mm
            height: 30 mm`,
      boatText`
        station: 150 to 250 mm ± 0.01 mm
            offset: ${offset}
            height: 30 mm ± 0.01 mm`,
    ],
    [
      boatText`
        mass: 600 g
            station: 120 to 280 mm
            height: 20 mm`,
      boatText`
        mass: 600 g ± 0.1 g
            station: 120 to 280 mm ± 0.01 mm
            offset: 0 ± 0.01 mm
            height: 20 mm ± 0.01 mm`,
    ],
    ...more,
  );

const standing = ({ boat, conditions, scheme, uncertainties }: Analysis, condition: string, name: string) =>
  standingsOf(boat, conditions, scheme.figures, uncertainties).find(
    ({ figured }) => figured.condition.id === condition && figured.figure.words === name,
  )!;

/** What cannot be told of the boat under water: it stands at the tank. */
const submergedUncertainties = (analysis: Analysis) =>
  analysis.said.openQuestions.filter(
    finding => finding.code === 'cannot-tell' && marked(analysis, finding) === 'main tank',
  );

/*
 * Under water the battery, 800 of 2800 g, d aside heels the probe by atan(800·d / (2800·6.071 mm)): B lies 6.071 mm above G.
 * With ± 0.1 mm that is ± 0.27°, ± 0.28° with the hairs of all else; the limit is 1°. A coverage of two uncertainties: GUM 6.3.3.
 */
describe('a limit is judged with the uncertainty', () => {
  it.each([
    ['0 ± 0.1 mm', 'inside'],
    ['0.15 ± 0.1 mm', 'inside'],
    ['0.25 ± 0.1 mm', 'cannot-tell'],
    ['0.45 ± 0.1 mm', 'cannot-tell'],
    ['0.7 ± 0.1 mm', 'outside'],
  ])('a battery %s aside: %s', (offset, verdict) => {
    const analysis = heard(known(offset));
    const { uncertainty, verdict: got } = standing(analysis, 'submerged', 'heel');
    expect(got).toBe(verdict);
    const slope = 800 / (2800 * 6.0714);
    const d = Number.parseFloat(offset);
    expect(uncertainty.sigma).toBeCloseTo((0.1 * slope) / (1 + (slope * d) ** 2), 3);
  });

  it('inside, but not beyond doubt, is an information at the tank; outside stays a warning', () => {
    const inside = heard(known('0.25 ± 0.1 mm'));
    const [untold] = submergedUncertainties(inside);
    expect(untold).toMatchObject({ severity: 'information' });
    expect(untold!.message).toBe(
      'Submerged, the file knows the heel to ± 0.28° (limit 1°): the first dive tells more than any ruler.',
    );
    expect(marked(inside, untold!)).toBe('main tank');
    const outside = heard(known('0.45 ± 0.1 mm'));
    expect(outside.findings.map(({ code }) => code)).toContain('submerged-heel');
    expect(submergedUncertainties(outside)).toEqual([]);
  });
});

it('says where an uncertainty is no more than a rough idea: the boat may not come to rest like this at all', () => {
  // Lead and battery higher: B is left 2.0 mm above G, with an uncertainty of 0.9 mm; three of them and it turns over.
  const analysis = heard(probe(['    height: 30 mm', '    height: 44 mm']));
  const { bg, trim } = analysis.uncertainties!.conditions.submerged!;
  expect(bg!.value / bg!.sigma).toBeLessThan(3);
  expect(trim!.rough).toBe('may-not-rest');
  const message = submergedUncertainties(analysis)[0]!.message;
  expect(message).toContain('Within these uncertainties it may not come to rest like this at all');
  expect(textReport(analysis)).toMatch(/Trim +level ± [\d.]+°, roughly/);
});

describe('what to weigh next', () => {
  it('is the value that makes the most of the uncertainty in the figure nearest to its limit, told there', () => {
    const analysis = heard(known('0.25 ± 0.1 mm'));
    const [next] = analysis.said.openQuestions.filter(({ code }) => code === 'weigh-next');
    expect(marked(analysis, next!)).toBe('0.25 ± 0.1 mm');
    expect(next!.message).toMatch(
      /^Measure this more finely next: with the offset of “battery”, 0\.25 ± 0\.1 mm, known to ± 0\.0\d+ mm the submerged heel would be known to ± 0\.\d+° instead of ± 0\.28°\. Then write the finer tolerance\.$/,
    );
  });

  it('says how to write a tolerance where there is none, in the file’s own units', () => {
    const petrel = readFileSync(new URL('../../samples/petrel.boat.yaml', import.meta.url), 'utf8');
    const [next] = heard(petrel).said.openQuestions.filter(({ code }) => code === 'weigh-next');
    expect(next!.message).toMatch(/^Measure this next: with the (station|offset|height) of “\w/);
    expect(next!.message).toMatch(
      /known to ± 0\.\d+ mm the .* would be known to ± [\d.]+ mm instead of ± [\d.]+ mm\. Then write that “±” after the figure\.$/,
    );
  });

  it('is nothing where every limit can be told, nor while the file is faulty or parts are missing', () => {
    const wide = ['trim: 0.5°, heel: 1°', 'trim: 20°, heel: 20°'] as const;
    expect(heard(known('0 ± 0.1 mm', wide)).said.openQuestions).toEqual([]);
    expect(heard(probe(['mass: 800 g', 'mass: heavy'])).said.openQuestions).toEqual([]);
    expect(heard(probe(['mass: 800 g', 'mass: heavy'])).uncertainties).toBe(null);
  });

  it('comes to the editor with the other findings, and the boat is not ticked off', () => {
    const analysis = heard(known('0.25 ± 0.1 mm'));
    const codes = service.diagnostics(analysis, null).map(({ code }) => code);
    expect(codes).toEqual(expect.arrayContaining(['cannot-tell', 'weigh-next']));
    expect(service.summary(analysis).state).toBe('open');
    expect(service.summary(heard(known('0 ± 0.1 mm', ['trim: 0.5°, heel: 1°', 'trim: 20°, heel: 20°']))).state).toBe(
      'inTrim',
    );
  });
});

describe('uncertainties are kept while nothing that they follow from changes', () => {
  it('through a change of a limit, not of a tolerance', () => {
    const text = known('0.25 ± 0.1 mm');
    const before = heard(text);
    const uncertainties = before.uncertainties;
    const changed = (other: string) => service.analyse(other, before).settled.all().uncertainties;
    expect(changed(text.replace('heel: 1°', 'heel: 2°'))).toBe(uncertainties);
    const finer = changed(text.replace('0.25 ± 0.1 mm', '0.25 ± 0.01 mm'))!;
    expect(finer.conditions.submerged!.heel!.sigma).toBeLessThan(uncertainties!.conditions.submerged!.heel!.sigma / 3);
    const water = changed(text.replace('1000 kg/m3', '1000 kg/m3 ± 9 kg/m3'))!;
    expect(water.conditions.surfaced!.draft!.sigma).toBeGreaterThan(
      5 * uncertainties!.conditions.surfaced!.draft!.sigma,
    );
  });
});
