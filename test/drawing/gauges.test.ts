import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gaugePlace } from '../../server/core/drawing/gauges/gaugeBar.ts';
import { glanceAt } from '../../server/core/drawing/gauges/gaugeStrip.ts';
import { figuredIn } from '../../server/core/figures/figured.ts';
import { type Limit, marginOf } from '../../server/core/figures/limit.ts';
import { TRANSIT_FIGURES } from '../../server/core/figures/transitTable.ts';
import { heard } from '../helpers/analysed.ts';
import { parseXml, withClass } from '../helpers/svg.ts';

const text = (name: string) => readFileSync(new URL(`../../samples/${name}.boat.yaml`, import.meta.url), 'utf8');
const petrel = heard(text('petrel'));
const [best] = petrel.corrections.all();
const glance = glanceAt(petrel, best!);

const limits = fc.oneof(
  fc.record({ binds: fc.constant('within' as const), most: fc.double({ min: 1e-4, max: 1, noNaN: true }) }),
  fc.record({ binds: fc.constant('at least' as const), least: fc.double({ min: 1e-3, max: 1, noNaN: true }) }),
  fc.record({
    binds: fc.constant('between' as const),
    least: fc.double({ min: 0, max: 0.4, noNaN: true }),
    most: fc.double({ min: 0.5, max: 1, noNaN: true }),
  }),
);

describe('where a figure stands on its gauge', () => {
  it('is in the band when it keeps the limit, and further out the further it is off', () => {
    const off = fc.double({ min: -50, max: 50, noNaN: true });
    fc.assert(
      fc.property(limits, off, off, (limit: Limit, a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        expect(gaugePlace(limit, low)).toBeLessThanOrEqual(gaugePlace(limit, high));
        const place = gaugePlace(limit, a);
        const margin = marginOf(limit, a);
        if (margin > 1e-9) expect(Math.abs(place)).toBeLessThanOrEqual(1);
        if (margin < -1e-9) expect(Math.abs(place)).toBeGreaterThan(1);
      }),
    );
  });
  it('tells 24° from 1.5° of a limit of 1°: each doubling is as far again', () => {
    const limit: Limit = { binds: 'within', most: 1 };
    const [one, two, four, eight] = [1, 2, 4, 8].map(off => gaugePlace(limit, off)) as [number, number, number, number];
    expect(two - one).toBeCloseTo(four - two, 12);
    expect(eight - four).toBeCloseTo(four - two, 12);
    expect(gaugePlace(limit, 24) - gaugePlace(limit, 1.5)).toBeCloseTo(4 * (two - one), 12);
  });
});

describe('the strip of gauges', () => {
  it('has every limit of every condition once, and those of the way down', () => {
    const wanted = petrel.conditions.flatMap(inCondition =>
      figuredIn(petrel.boat, inCondition, petrel.scheme.figures).filter(({ margin }) => margin !== null),
    );
    const onTheWay = TRANSIT_FIGURES.filter(({ limit, isJudgedInRow }) => limit && isJudgedInRow !== false);
    expect(glance.gauges).toHaveLength(wanted.length + onTheWay.length);
    expect(new Set(glance.gauges.map(({ name }) => name)).size).toBe(glance.gauges.length);
  });
  it('tells in or out by word and by shape, the proposal by another', () => {
    for (const { standing, svg, proposed, verdict } of glance.gauges) {
      const drawn = parseXml(svg);
      const [needle] = withClass(drawn, 'gauge-needle');
      expect(needle!.name === 'circle').toBe(standing !== 'out');
      expect(verdict).toBe({ in: '✓ ok', open: '○ open', out: '✗ out' }[standing]);
      expect(proposed).not.toBeNull();
      expect(withClass(drawn, 'gauge-then')).toHaveLength(1);
    }
    const isOpen = glance.gauges.some(({ standing }) => standing === 'open');
    expect(glance.legend !== '').toBe(isOpen);
    expect(glanceAt(petrel, null).gauges.every(({ proposed }) => proposed === null)).toBe(true);
  });
  it('leads to what is said of a figure that is out, and to the limit of one that is in', () => {
    const pathOf = (name: string) => glance.gauges.find(gauge => gauge.name === name)!.path;
    const finding = petrel.findings.find(({ code }) => code === 'submerged-trim')!;
    expect(pathOf('submerged trim')).toBe(JSON.stringify(finding.place.on === 'text' ? null : finding.place.path));
    expect(pathOf('metacentric height')).toBe('["limits","gm"]');
    // No limit of its own in the file: what is nearest to it.
    expect(pathOf('heel on the way down')).toBe('["limits","heel"]');
  });
  it('says where each figure would be', () => {
    const { surfaced, submerged } = best!;
    if (surfaced.status !== 'afloat' || submerged.status !== 'neutral')
      throw new Error('expected to float and to hang');
    expect(glance.gauges.find(({ name }) => name === 'neutral fill')!.proposed).toBe(
      `${Math.round(submerged.fill * 100)} %`,
    );
  });
});

describe('the verdict', () => {
  const verdictOf = (file: string) => glanceAt(heard(file), null).verdict;
  it.each([
    ['petrel', 'out', /^Not yet: 6 of 10 out; the worst is the submerged trim, 12\.2° bow down\.$/],
    ['sprat', 'open', /^In trim as far as can be told: \d of 10 surely within their limits; the .* may be out\.$/],
    ['dunlin', 'out', /^Not yet, by file and trials: /],
  ])('of %s', (name, state, words) => {
    expect(verdictOf(text(name))).toEqual({ state, words: expect.stringMatching(words) });
  });
  it.each([
    ['nothing', '', 'unknown', /^Nothing floats yet: /],
    [
      'a boat that sinks',
      text('petrel').replace('mass: 690 g', 'mass: 2690 g'),
      'out',
      /^Not yet: 8 of 8 out; surfaced sinks, [\d.]+ k?g too heavy, submerged [\d.]+ k?g too heavy\.$/,
    ],
    [
      'a boat with a part that cannot be read',
      text('petrel').replace('mass: 142 g', 'mass: heavy'),
      'unknown',
      /^Not known yet without “radio and servos”: so far \d+ of 8 out; .*\. The file has an error\.$/,
    ],
  ])('of %s', (_, file, state, words) => {
    expect(verdictOf(file)).toEqual({ state, words: expect.stringMatching(words) });
  });
  it('of a boat that does not stay level names what makes it so, not where it runs to', () => {
    const toppling = heard(text('petrel').replace('height: 3 to 9 mm', 'height: 93 to 99 mm'));
    const { words } = glanceAt(toppling, null).verdict;
    expect(words).toMatch(/^Not yet: \d+ of \d+ out; /);
    expect(words).not.toMatch(/worst is the submerged (trim|heel)/);
  });
});
