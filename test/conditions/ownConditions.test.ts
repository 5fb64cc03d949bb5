import { describe, expect, it } from 'vitest';
import type { Analysis } from '../../server/core/analysis/analysis.ts';
import { trimSheet } from '../../server/core/drawing/trimSheet.ts';
import { conditionOf } from '../../server/core/findings/finding.ts';
import { jsonReport } from '../../server/core/report/jsonReport.ts';
import { analysed, marked, mended, service } from '../helpers/analysed.ts';
import { boatText } from '../helpers/boatText.ts';
import { corrected, outOfLimits } from '../helpers/corrected.ts';
import { PROBE, probe } from '../helpers/probe.ts';
import { parseXml, withClass } from '../helpers/svg.ts';

/** The probe with conditions, each a line of YAML. */
const withConditions = (conditions: readonly string[], text = PROBE): string => boatText`
  ${text}conditions:
  ${conditions.map(condition => `  - ${condition}`).join('\n')}
`;
const of = (...conditions: readonly string[]): Analysis => analysed(withConditions(conditions));
const told = (analysis: Analysis) => analysis.file.findings;

/** Figures of the report for machines, mm, degrees and parts, by name of the condition. */
const figures = (analysis: Analysis, name: string) => jsonReport(analysis).conditions[name]!;

describe('a condition of the file is figured as it is loaded', () => {
  // The barge displaces 40 g a millimetre and 2800 g in all; 2000 g of it, and 990 ml of tank (test/helpers/probe.ts).
  it.each([
    ['the tanks filled so far', '{ name: a, fill: 50 % }', 'draft', (2000 + 495) / 40],
    ['something left ashore', '{ name: a, without: [battery] }', 'draft', 1200 / 40],
    ['a tank by its name', '{ name: a, tanks: [{ tank: main tank, fill: 30 % }] }', 'draft', (2000 + 297) / 40],
    ['its own water', '{ name: a, water: { density: 1020 kg/m3 } }', 'draft', 2000 / (1.02 * 40)],
    [
      'something else aboard',
      '{ name: a, without: [battery], aboard: [{ name: cell, mass: 500 g, station: 200 mm, height: 20 mm, in: hold }] }',
      'draft',
      1700 / 40,
    ],
    [
      'what displaces as well',
      '{ name: a, aboard: [{ name: keel, mass: 100 g, volume: 20 ml, station: 200 mm, height: 0 mm }] }',
      'draft',
      2080 / 40,
    ],
    [
      'submerged with another battery, in denser water',
      '{ name: a, condition: submerged, without: [battery], aboard: [{ name: cell, mass: 700 g, station: 200 mm, height: 20 mm, in: hold }], water: { density: 1020 kg/m3 } }',
      'fill',
      (2800 * 1.02 - 1900) / (990 * 1.02),
    ],
  ])('%s', (_, condition, figure, value) => {
    const analysis = of(condition);
    expect(told(analysis)).toEqual([]);
    expect(figures(analysis, 'a')[figure]).toBeCloseTo(value, 4);
  });
  it('each tank keeps its own fill where none is given', () => {
    const text = probe([
      'kind: bladder',
      `fill: 10 %
      kind: bladder`,
    ]);
    const analysis = analysed(withConditions(['{ name: as filed }', '{ name: dry, fill: 0 % }'], text));
    expect(figures(analysis, 'as filed').draft).toBeCloseTo((2000 + 99) / 40, 4);
    expect(figures(analysis, 'dry').draft).toBeCloseTo(2000 / 40, 4);
  });
  it('leaves surfaced and submerged as they are', () => {
    const { surfaced, submerged } = jsonReport(analysed(PROBE));
    expect(jsonReport(of('{ name: awash, fill: 50 %, limits: { trim: 1° } }'))).toMatchObject({ surfaced, submerged });
  });
});

describe('what is asked of the boat then', () => {
  const draft = (limits: string) =>
    of(`{ name: awash, fill: 50 %${limits} }`).findings.filter(finding => conditionOf(finding) === 'awash');
  it('is judged, where the condition stands', () => {
    const analysis = of('{ name: awash, fill: 50 %, limits: { draft: 2 mm } }');
    const [finding, ...more] = analysis.findings.filter(each => conditionOf(each) === 'awash');
    expect([finding!.severity, more, marked(analysis, finding!)]).toEqual(['warning', [], 'awash']);
    expect(finding!.message).toMatch(/^Awash, the boat floats 12\.4 mm deep at half length/);
  });
  it('is nothing where nothing is given: it is shown and no more', () => {
    expect(draft('')).toEqual([]);
    expect(draft(', limits: { draft: 13 mm }')).toEqual([]);
    const analysis = of(
      '{ name: sunk, aboard: [{ name: anvil, mass: 1 kg, station: 200 mm, height: 5 mm, in: hold }] }',
    );
    const sinks = analysis.findings.filter(finding => conditionOf(finding) === 'sunk');
    expect(sinks.map(({ code, severity }) => [code, severity])).toEqual([['sinks', 'information']]);
    expect(sinks[0]!.message).toMatch(/^Sunk, the boat sinks: it weighs 200 g more/);
  });
  it('is an error where it cannot be had', () => {
    const analysis = of(
      '{ name: light, condition: submerged, without: [battery], limits: { trim: 1° } }',
      '{ name: heavy, condition: submerged, aboard: [{ name: anvil, mass: 1 kg, station: 200 mm, height: 5 mm, in: hold }], limits: { trim: 1° } }',
      '{ name: sunk, fill: 90 %, limits: { gm: 3 mm } }',
    );
    expect(
      ['light', 'heavy', 'sunk'].flatMap(id =>
        analysis.findings
          .filter(finding => conditionOf(finding) === id)
          .map(({ code, severity, message }) => [code, severity, message.split(' ')[0]]),
      ),
    ).toEqual([
      ['submerged-light', 'error', 'Light,'],
      ['submerged-heavy', 'error', 'Heavy,'],
      ['sinks', 'error', 'Sunk,'],
    ]);
  });
});

describe('what cannot be is told on its own characters, and not figured', () => {
  it.each([
    ['{ name: a, without: [batery] }', 'condition-impossible', 'batery', 'Did you mean “battery”?'],
    [
      '{ name: a, tanks: [{ tank: man tank, fill: 3 % }] }',
      'condition-impossible',
      'man tank',
      'Did you mean “main tank”?',
    ],
    ['{ name: a, fill: 3 %, tanks: [{ tank: main tank, fill: 3 % }] }', 'condition-impossible', '3 %', 'given twice'],
    ['{ name: Surfaced }', 'duplicate-name', 'Surfaced', 'such as “Surfaced 2”'],
    [
      '{ name: a, aboard: [{ name: battery, mass: 1 g, station: 9 mm, height: 9 mm, in: hold }] }',
      'duplicate-name',
      'battery',
      'aboard already',
    ],
  ])('%s', (condition, code, at, words) => {
    const analysis = of(condition);
    const [finding, ...more] = told(analysis);
    expect([finding!.code, finding!.severity, marked(analysis, finding!), more]).toEqual([code, 'error', at, []]);
    expect(finding!.message).toContain(words);
    expect(analysis.others).toEqual([]);
    // The rest of the file is figured as ever.
    expect(analysis.file.isWhole).toBe(true);
    expect(told(analysed(mended(analysis, finding!)))).toEqual([]);
  });
  it('two of one name: the second', () => {
    const analysis = of('{ name: awash, fill: 50 % }', '{ name: Awash, fill: 40 % }');
    expect(told(analysis).map(({ code }) => code)).toEqual(['duplicate-name']);
    expect(analysis.others.map(({ condition }) => condition.id)).toEqual(['awash']);
  });
  it('a fill of a boat that has no tank', () => {
    const text = PROBE.replace(/ {2}tanks:[\s\S]*?(?=payload:)/, '');
    const analysis = analysed(withConditions(['{ name: a, fill: 3 % }'], text));
    expect(told(analysis).map(finding => [finding.code, marked(analysis, finding)])).toEqual([
      ['condition-impossible', '3 %'],
    ]);
  });
  it.each([
    ['{ name: a, condition: submerged, fill: 30 %, limits: { trim: 1° } }', 'fill'],
    ['{ name: a, condition: submerged, limits: { trim: 1°, gm: 3 mm } }', 'gm'],
    ['{ name: a, limits: { trim: 1°, bg: 3 mm } }', 'bg'],
    ['{ name: a, fill: 30 % ± 2 %, limits: { trim: 1° } }', '30 % ± 2 %'],
  ])('what says nothing is told, and the rest heeded: %s', (condition, at) => {
    const analysis = of(condition);
    const [finding, ...more] = told(analysis);
    expect([finding!.code, finding!.severity, marked(analysis, finding!), more]).toEqual([
      'condition-unused',
      'warning',
      at,
      [],
    ]);
    expect(Object.keys(analysis.others[0]!.condition.asked(analysis.boat.limits))).toEqual(['trim']);
  });
});

describe('uncertainties', () => {
  it('are those of what is aboard, of the fill that is set, and of its own water', () => {
    const analysis = of(
      '{ name: salt, without: [battery], aboard: [{ name: cell, mass: 500 g ± 5 g, station: 200 mm, height: 20 mm, in: hold }], tanks: [{ tank: main tank, fill: 30 % }], water: { kind: sea, temperature: 14 °C ± 1 °C } }',
    ).settled.all();
    const { draft } = analysis.uncertainties!.conditions.salt!;
    const sections = draft!.shares
      .filter(({ share }) => share > 1e-9)
      .map(({ input }) => input.path.slice(0, 3).join(' '));
    expect(sections).toEqual(expect.arrayContaining(['conditions 0 aboard', 'conditions 0 water']));
    expect(sections.filter(path => path.startsWith('water') || path === 'payload 0 mass')).toEqual([]);
    expect(draft!.shares.map(({ input }) => input.noun)).not.toContain('fill');
  });
});

describe('the next version of a file', () => {
  const before = of('{ name: awash, fill: 50 %, limits: { draft: 20 mm } }');
  const next = (was: string, is: string) => service.analyse(before.syntax.text.replace(was, is), before);
  it('keeps what was floated while nothing in the conditions changes', () => {
    expect(next('boat: Probe', 'boat: Probe 2').filed.conditions).toBe(before.filed.conditions);
  });
  it.each([
    ['a fill', 'fill: 50 %', 'fill: 60 %', 'draft', (2000 + 594) / 40],
    ['a limit', 'draft: 20 mm', 'draft: 2 mm', 'draft', (2000 + 495) / 40],
    ['what is aboard', 'limits: { draft', 'without: [floor lead], limits: { draft', 'draft', (1400 + 495) / 40],
  ])('heeds %s', (_, was, is, figure, value) => {
    const after = next(was, is);
    const fresh = analysed(after.syntax.text);
    expect(figures(after, 'awash')[figure]).toBeCloseTo(value, 4);
    expect(after.findings).toEqual(fresh.findings);
  });
  it('one that is taken out is gone', () => {
    const after = service.analyse(PROBE, before);
    expect([after.others, jsonReport(after).conditions]).toEqual([[], {}]);
  });
});

describe('corrections hold in all conditions at once', () => {
  // 120 g·mm aft: the submerged boat may have 148. Lighter, over a metacentre 320 mm up, that is 0.013°.
  const out = probe(['120 to 280 mm', '120.2 to 280.2 mm']);
  const text = withConditions(['{ name: light, without: [battery], fill: 50 %, limits: { trim: 0.006° } }'], out);
  it('of a boat that is out of one of them only', () => {
    const before = analysed(text).settled.all();
    expect(outOfLimits(before).map(conditionOf)).toEqual(['light']);
    const whole = before.corrections.all().filter(({ condition, left }) => condition === 'both' && left.length === 0);
    expect(whole.length).toBeGreaterThan(0);
    for (const correction of whole) {
      expect(correction.title).toMatch(/: all (conditions )?within limits$/);
      expect(outOfLimits(analysed(corrected(before, correction)))).toEqual([]);
    }
  });
  it('of a boat without a tank as well', () => {
    const dry = text.replace(/ {2}tanks:[\s\S]*?(?=payload:)/, '').replace('fill: 50 %, ', '');
    const before = analysed(dry).settled.all();
    expect(outOfLimits(before).map(conditionOf)).toEqual(['light']);
    const whole = before.corrections.all().filter(({ left }) => left.length === 0);
    expect(whole.length).toBeGreaterThan(0);
    for (const correction of whole) expect(outOfLimits(analysed(corrected(before, correction)))).toEqual([]);
  });
  it('each in its own water', () => {
    const salt = withConditions(
      ['{ name: salt, water: sea, limits: { trim: 1° } }'],
      probe(['120 to 280', '150 to 310']),
    );
    const before = analysed(salt).settled.all();
    const [first] = before.corrections.all().filter(({ condition, left }) => condition === 'both' && left.length === 0);
    const after = analysed(corrected(before, first!));
    const state = (conditions: Analysis['others']) => conditions[0]!.bodies.density;
    expect(state(first!.others)).toBe(state(after.others));
    expect(state(first!.others)).toBeGreaterThan(1020);
  });
});

it('is drawn with what is aboard then: in the line of the file that has it', () => {
  const analysis = of(
    '{ name: long range, without: [battery], aboard: [{ name: cell, mass: 500 g, station: 150 to 220 mm, height: 20 mm, in: hold }] }',
  );
  const picture = trimSheet(analysis).pictures.find(({ id }) => id === 'long range-side')!;
  const svg = parseXml(picture.svg);
  expect(svg.attributes.id).toBe('long-range-side');
  const paths = withClass(svg, 'entry').map(({ attributes }) => attributes['data-path']);
  expect(paths).toContain('["conditions",0,"aboard",0]');
  expect(paths).toContain('["payload",1]');
  expect(paths).not.toContain('["payload",0]');
});
