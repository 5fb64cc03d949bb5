import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { createDescriber } from '../../schema/describe.ts';
import { analyse } from '../../server/core/analysis/analyse.ts';
import type { Analysis } from '../../server/core/analysis/analysis.ts';
import type { LoadingCondition } from '../../server/core/conditions/loadingCondition.ts';
import { waterAt } from '../../server/core/conditions/readings.ts';
import { trimSheet } from '../../server/core/drawing/trimSheet.ts';
import type { Figure } from '../../server/core/figures/figure.ts';
import { figuredIn, mainText, offText, plainText } from '../../server/core/figures/figured.ts';
import { LENGTH } from '../../server/core/figures/kind.ts';
import { type Scheme, STANDARD } from '../../server/core/figures/scheme.ts';
import { jsonReport } from '../../server/core/report/jsonReport.ts';
import { textReport } from '../../server/core/report/textReport.ts';
import { limitsHover, waterlineHover } from '../../server/editor/answers/conditionHover.ts';
import { corrected, outOfLimits } from '../helpers/corrected.ts';
import { printed } from '../helpers/printed.ts';
import { PROBE, probe } from '../helpers/probe.ts';
import { parseXml, withClass } from '../helpers/svg.ts';

const describer = createDescriber();
const by = (scheme: Scheme, text: string): Analysis =>
  analyse(text, describer, undefined, () => null, scheme).settled.all();
const sample = (name: string): string => readFileSync(`samples/${name}.boat.yaml`, 'utf8');

/** A text, each run of blanks as one, so that columns do not matter. */
const plain = (text: string): string => text.replaceAll('\u00a0', ' ').replace(/ +/g, ' ');

/** Everything that shows figures, by its name. */
const shown = (analysis: Analysis) => ({
  report: plain(textReport(analysis)),
  hover: plain(limitsHover(analysis)),
  print: plain(
    printed(analysis, { paper: 'a4', fileName: 'a.boat.yaml', appendix: true })
      .replace(/<svg.*?<\/svg>/gs, '')
      .replace(/<[^>]*>/g, ' '),
  ),
});

/** Characters after a heading in which its figure must stand. */
const ROW = 40;

/** The number and unit that a text begins with: what stands before ± may have lost its unit to what stands after. */
const digitsOf = (text: string): string => /^[\d.]+/.exec(text)?.[0] ?? text;

type Told = Readonly<Record<string, Readonly<Record<string, unknown>>>>;

/** A condition in the report for machines; those of the builder's own stand together. */
const inJson = (json: object, id: string): Record<string, unknown> =>
  (json as Told)[id] ?? (json as { readonly conditions: Told }).conditions[id]!;

const BOATS = {
  probe: PROBE,
  'probe out of trim': probe(['150 to 250', '160 to 260']),
  petrel: sample('petrel'),
  curlew: sample('curlew'),
  'probe held under': probe(['90 to 310 mm', '90 to 260 mm'], ['fill: 40 to 85 %', 'reserve: 10 to 50 g']),
};

/** Of figures of a kind that read the same, as BG with its tank water free and locked, one row is enough. */
const kindOf = ({ heading }: Figure): string | undefined => heading?.split(', ')[0];

const seen = new Set<string>();

describe('every figure stands in report, print, hover and JSON with the same digits', { timeout: 60_000 }, () => {
  it.each(Object.entries(BOATS))('%s', (_, text) => {
    const analysis = by(STANDARD, text);
    const { report, hover, print } = shown(analysis);
    const json = jsonReport(analysis);
    for (const inCondition of analysis.conditions) {
      const all = figuredIn(analysis.boat, inCondition, analysis.scheme.figures);
      for (const figured of all) {
        const { figure, condition, value, units, limit, off } = figured;
        if (figure.heading !== null) {
          for (const where of [report, print]) {
            const alike = all.filter(
              other => kindOf(other.figure) === kindOf(figure) && mainText(other) === mainText(figured),
            );
            const rows = alike.flatMap(other => where.split(other.figure.heading!).slice(1));
            expect(
              rows.some(row => row.slice(0, ROW).includes(digitsOf(mainText(figured)))),
              `${figure.id} ${value}`,
            ).toBe(true);
          }
        }
        if (limit && off !== null) expect(hover, figure.id).toContain(digitsOf(offText(figured)));
        if (figure.isForMachines !== false) {
          const told = Number(inJson(json, condition.id)[figure.id]) / figure.kind.factor;
          const aim = off === null || figure.difference ? 0 : value - off;
          expect(figure.kind.show(told - aim, units)).toBe(plainText(figured));
          const uncertainty = analysis.uncertainties?.conditions[condition.id]?.[figure.id];
          // The value shown and what its uncertainty is figured of are one number.
          if (uncertainty) expect(figure.kind.show(uncertainty.value, units)).toBe(figure.kind.show(value, units));
        }
        seen.add(figure.id);
      }
    }
  });

  it('and no figure was passed over', () => {
    expect([...seen].sort()).toEqual([...new Set(STANDARD.figures.map(({ id }) => id))].sort());
  });
});

/** Height of the water at the quarter of the length above the baseline, which shall be 60 mm at least. */
const MADE_UP: Figure = {
  id: 'quarterDraft',
  where: 'afloat',
  kind: LENGTH,
  of: (floating, { length }) => waterAt(length / 4)(floating),
  readOff: 'rest',
  words: 'draft at the quarter',
  heading: 'Draft at the quarter',
  limit: () => ({ binds: 'at least', least: 0.06 }),
  finding: 'surfaced-draft',
  isTrimmedTo: true,
};

describe('a figure more in the table', { timeout: 60_000 }, () => {
  const scheme: Scheme = { ...STANDARD, figures: [...STANDARD.figures, MADE_UP] };
  const analysis = by(scheme, PROBE);
  const { report, hover, print } = shown(analysis);

  it('stands in report and print with its uncertainty and its limit', () => {
    // The probe floats 50 mm deep on an even keel.
    expect(report).toMatch(/Draft at the quarter 50 ± [\d.]+ mm out limit 60 mm at least/);
    expect(print).toMatch(/Draft at the quarter\s+50 ± [\d.]+ mm; limit 60 mm at least\s+✗ out/);
  });
  it('stands in the hover over the limits', () => {
    expect(hover).toMatch(/\| Draft at the quarter \| 50 ± [\d.]+ mm \(limit 60 mm at least\) \| \|/);
  });
  it('stands in JSON, with its uncertainty and what makes it', () => {
    const json = jsonReport(analysis);
    expect(json.surfaced.quarterDraft).toBeCloseTo(50, 6);
    expect(json.uncertainty.surfaced!.quarterDraft!.sigma).toBeGreaterThan(0);
  });
  it('raises its finding', () => {
    expect(analysis.findings.map(({ message }) => message)).toContain(
      'Surfaced, the draft at the quarter is 50 mm, limit 60 mm at least.',
    );
  });
  it('changes no other figure', () => {
    const { surfaced, submerged } = jsonReport(by(STANDARD, PROBE));
    expect(jsonReport(analysis)).toMatchObject({ surfaced, submerged });
  });
});

/** The battery left ashore, tanks half full. */
const AWASH: LoadingCondition = {
  id: 'awash',
  title: 'Awash',
  aboard: source => {
    const payload = source.payload.filter(({ entry }) => entry.name !== 'battery');
    return { ...source, payload, boat: { ...source.boat, payload: payload.map(({ entry }) => entry) } };
  },
  loading: { kind: 'fill', fill: 0.5 },
  asked: () => ({ trim: 0.01, gm: 0.05 }),
};

describe('a loading condition more', { timeout: 60_000 }, () => {
  const analysis = by({ ...STANDARD, others: [AWASH] }, PROBE);
  const { report, hover, print } = shown(analysis);
  // 2000 g less the battery's 800 g, and half of 990 ml of water, over the barge's 40 g a millimetre.
  const DRAFT = (2000 - 800 + 990 / 2) / 40;
  const GM = DRAFT / 2 + 1e4 / (12 * DRAFT) - (600 * 35 + 600 * 20 + 495 * 30) / (1200 + 495);

  it('has its figures in report and print, against its own limits', () => {
    for (const where of [report, print]) expect(where).toMatch(/\bAwash\b/);
    const block = report.slice(report.indexOf('\nAwash\n'));
    expect(block).toMatch(/Draft 42\.4 ± [\d.]+ mm/);
    expect(block).toMatch(/Trim level ± [\d.]+° ok\?? limit 0\.57°/);
    expect(block).toMatch(/Metacentric height [\d.]+ ± [\d.]+ mm out limit 50 mm at least/);
  });
  it('has a column in the hover over the limits', () => {
    expect(hover).toMatch(/\| Limit \| Surfaced \| Submerged \| Awash \|/);
    expect(hover).toMatch(/\| Metacentric height \|.*\| [\d.]+ ± [\d.]+ mm \(limit 50 mm at least\) \|/);
  });
  it('stands in JSON with its uncertainties: the battery that is ashore has no part in them', () => {
    const json = jsonReport(analysis);
    const awash = inJson(json, 'awash');
    expect(awash.draft).toBeCloseTo(DRAFT, 5);
    expect(awash.gm).toBeCloseTo(GM, 4);
    expect(json.righting.awash!.points.length).toBeGreaterThan(50);
    const { draft } = inJson(json.uncertainty, 'awash') as typeof json.uncertainty.surfaced & object;
    const contributors = draft!.contributors.map(({ input }) => input);
    expect(contributors.length).toBeGreaterThan(1);
    expect(contributors.filter(words => words.includes('battery'))).toEqual([]);
  });
  it('has its drawings, without what is ashore, and its line among the righting levers', () => {
    const { pictures } = trimSheet(analysis);
    const drawn = (id: string) => pictures.find(picture => picture.id === id)!;
    for (const view of ['side', 'section', 'plan']) expect(drawn(`awash-${view}`).svg).toContain('Awash');
    const parts = (id: string) =>
      withClass(parseXml(drawn(id).svg), 'entry').map(({ attributes }) => attributes['data-path']);
    expect(parts('surfaced-side')).toContain('["payload",0]');
    expect(parts('awash-side')).not.toContain('["payload",0]');
    expect(parts('awash-side')).toContain('["payload",1]');
    expect(Number(parseXml(drawn('awash-side').svg).attributes['data-trim'])).toBeCloseTo(0, 9);
    expect(drawn('righting-lever').svg).toMatch(/Awash it comes back from/);
  });
  it('is told over the painted waterline', () => {
    expect(plain(waterlineHover(analysis) ?? '')).toMatch(/Awash, the boat floats/);
  });
  it('is judged', () => {
    expect(analysis.findings.map(({ message }) => message)).toContainEqual(
      expect.stringMatching(/^Awash, the boat is tender: metacentric height [\d.]+ mm, limit 50 mm\./),
    );
  });
  it('leaves the built-in ones as they are', () => {
    const { surfaced, submerged } = jsonReport(by(STANDARD, PROBE));
    expect(jsonReport(analysis)).toMatchObject({ surfaced, submerged });
  });
});

/** With half the water in the tanks the boat shall trim by no more than this, rad. */
const MOST_TRIM = 1e-4;

/** The tanks half full, everything aboard but the battery. */
const LIGHT: LoadingCondition = {
  ...AWASH,
  id: 'light',
  title: 'Light',
  asked: () => ({ trim: MOST_TRIM }),
};

describe('corrections of a boat that is asked for a loading condition more', { timeout: 60_000 }, () => {
  // 120 g·mm aft: the submerged boat may have 148. Light, 1695 g over a metacentre 320 mm up, that is 0.00022 rad.
  const text = probe(['120 to 280 mm', '120.2 to 280.2 mm']);
  const scheme: Scheme = { ...STANDARD, others: [LIGHT] };
  const before = by(scheme, text);
  const trimIn = ({ boat, conditions }: Pick<Analysis, 'boat' | 'conditions'>): number =>
    figuredIn(boat, conditions.find(({ condition }) => condition.id === LIGHT.id)!, STANDARD.figures).find(
      ({ figure }) => figure.id === 'trim',
    )!.value;

  it('is out of trim there', () => {
    expect(Math.abs(trimIn(before))).toBeGreaterThan(MOST_TRIM);
  });

  it('set it right too, and say so', () => {
    const all = before.corrections.all();
    const whole = all.filter(({ condition, left }) => condition === 'both' && left.length === 0);
    expect(whole.length).toBeGreaterThan(0);
    for (const correction of whole) {
      expect(correction.title).toMatch(/: all (conditions )?within limits$/);
      const after = by(scheme, corrected(before, correction));
      expect(outOfLimits(after)).toEqual([]);
      // What was told beforehand is what the file then says.
      const told = correction.others.find(({ condition }) => condition.id === LIGHT.id)!;
      expect(figuredIn(after.boat, told, STANDARD.figures).map(({ value }) => value.toFixed(9))).toEqual(
        figuredIn(after.boat, after.conditions.at(-1)!, STANDARD.figures).map(({ value }) => value.toFixed(9)),
      );
    }
  });
});
