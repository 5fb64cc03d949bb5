import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Analysis } from '../../server/core/analysis/analysis.ts';
import { jsonReport } from '../../server/core/report/jsonReport.ts';
import { applyChanges, splice } from '../../server/core/text/editing/edit.ts';
import type { Offer } from '../../server/core/trials/offers.ts';
import { analysed, marked, service } from '../helpers/analysed.ts';
import { inserts } from '../helpers/kinds.ts';

const dunlinText = readFileSync(new URL('../../samples/dunlin.boat.yaml', import.meta.url), 'utf8');
const dunlin = analysed(dunlinText);
const file = { uri: 'file:///dunlin.boat.yaml', version: null };
const actionsAt = (analysis: Analysis, words: string) => {
  const at = analysis.syntax.text.indexOf(words);
  return service.codeActions(analysis, [at, at], file);
};
/** What is offered for no finding's sake: first to keep what was on board, then to add a trial. */
const rewritesAt = (analysis: Analysis, words: string) =>
  actionsAt(analysis, words).filter(({ kind }) => kind === 'refactor.rewrite');
const codes = (analysis: Analysis) => analysis.findings.map(({ code }) => code);

/** What the trials teach: an unlisted weight to insert, or figures to change. */
const offerOf = (analysis: Analysis, what: 'insert' | 'change'): Offer | undefined =>
  analysis
    .learned()
    .offers()
    .find(offer => inserts(offer) === (what === 'insert'));

/** The file after an offer of the trials. */
function taught(analysis: Analysis, what: 'insert' | 'change'): Analysis {
  const offer = offerOf(analysis, what);
  if (!offer) throw new Error(`there is nothing to ${what}`);
  return analysed(splice(analysis.syntax.text, applyChanges(analysis.syntax, offer.changes)!));
}

describe('Dunlin, with a weight near her stern that nobody wrote down', () => {
  it('differs from her file in the readings that feel it, told on their own characters', () => {
    const differing = dunlin.findings.filter(({ code }) => code === 'trial-differs');
    expect(differing.map(finding => marked(dunlin, finding))).toEqual(
      expect.arrayContaining(['74 mm ± 1 mm', '73 mm ± 1 mm', '13° ± 1°', '60 % ± 2 %']),
    );
    expect(differing[0]!.message).toMatch(
      /^In the trial of 2026-05-02 the water 60 mm aft of the bow tip was read as 74 mm; by the file it should have been 78\.\d mm\. It is 4\.\d mm less, /,
    );
  });
  it('has one slip, two figures swapped: 69 mm written as 96 mm', () => {
    const slips = dunlin.learned().slips();
    expect(slips.map(({ reading }) => reading.value)).toEqual([0.096]);
    // What the true boat showed there was 68.9 mm.
    expect(Math.abs(slips[0]!.expected - 0.0689)).toBeLessThan(2.5 * slips[0]!.sigma);
    const [finding] = dunlin.findings.filter(({ code }) => code === 'trial-slip');
    expect(marked(dunlin, finding!)).toBe('96 mm ± 1 mm');
  });
  it('finds where it is: 26 g with 6 ml, 20 g in the water, at station 596 mm', () => {
    const { boat } = taught(dunlin, 'insert');
    const weight = boat.payload.at(-1)!;
    expect(weight.name).toBe('unlisted weight');
    expect((weight.mass - boat.water.density * weight.volume) * 1000).toBeGreaterThan(15);
    expect((weight.mass - boat.water.density * weight.volume) * 1000).toBeLessThan(25);
    expect(Math.abs(weight.centroid[0] - 0.596)).toBeLessThan(0.06);
  });
});

describe('after a reconciliation', () => {
  const after = taught(dunlin, 'insert');
  it('the trials agree but for the slip, and are not used again', () => {
    expect(after.ofFile).toEqual([]);
    expect(codes(after)).not.toContain('trial-differs');
    expect(after.trials.map(({ explained }) => explained)).toEqual(Array(5).fill('unlisted weight'));
    expect(after.learned().offers()).toEqual([]);
  });
  it('keeps the slip where it is', () => {
    const slips = after.findings.filter(({ code }) => code === 'trial-slip');
    expect(slips.map(finding => marked(after, finding))).toEqual(['96 mm ± 1 mm']);
  });
  it('every other byte of the file is as it was', () => {
    const was = dunlinText.split('\n');
    const kept = after.syntax.text.split('\n').filter(line => was.includes(line));
    const changed = after.syntax.text.split('\n').filter(line => !was.includes(line));
    expect(kept.length).toBe(was.length);
    expect(changed.length).toBe(6);
    expect(changed.filter(line => /^ {4}explained: unlisted weight$/.test(line)).length).toBe(5);
    expect(changed[0]).toMatch(
      /^ {2}- \{ name: unlisted weight, mass: [\d.]+ g ± [\d.]+ g, volume: [\d.]+ ml ± [\d.]+ ml, station: \d+ mm ± \d+ mm, /,
    );
  });
});

describe('a boat that is known as boats usually are', () => {
  // Curlew without any tolerance, and with 45 g at station 700 mm that are not in her file, read to the millimetre and the per cent.
  const curlew = readFileSync(new URL('../../samples/curlew.boat.yaml', import.meta.url), 'utf8').replace(
    / ± [\d.]+ ?[^\s,}\]]+/g,
    '',
  );
  const analysis = analysed(`${curlew}
trials:
  - { condition: surfaced, marks: [{ station: 60 mm, height: 90 mm }, { station: 850 mm, height: 91 mm }], heel: 0.3° }
  - { condition: submerged, fill: 59 %, trim: 7°, heel: 0.1° }
`);
  it('has the uncertainties of every figure shrunk by the trials', { timeout: 60_000 }, () => {
    const [before, now] = [analysis.uncertainties()!, taught(analysis, 'insert').uncertainties()!];
    for (const figure of ['draft', 'trim', 'heel'] as const) {
      expect(now.conditions.surfaced![figure]!.sigma, figure).toBeLessThan(
        0.8 * before.conditions.surfaced![figure]!.sigma,
      );
    }
    for (const figure of ['fill', 'trim', 'heel'] as const) {
      expect(now.conditions.submerged![figure]!.sigma, figure).toBeLessThan(
        0.5 * before.conditions.submerged![figure]!.sigma,
      );
    }
  });
});

describe('figures that were off', () => {
  // The battery was filed 30 g light and with a tolerance that admits it; nothing is hidden.
  const text = dunlinText
    .replace('mass: 212 g ± 0.5 g', 'mass: 182 g ± 15 g')
    .replace(/trials:[\s\S]*$/, '')
    .concat(`trials:
  - condition: surfaced
    marks: [{ station: 60 mm, height: MARK0 }, { station: 660 mm, height: MARK1 }]
    trim: TRIM
`);
  const real = analysed(dunlinText);
  const { surfaced } = real;
  if (surfaced.status !== 'afloat') throw new Error('Dunlin must float');
  const mark = (station: number) =>
    (surfaced.draftBow + ((surfaced.draftStern - surfaced.draftBow) * station) / 720) * 1000;
  const analysis = analysed(
    text
      .replace('MARK0', `${mark(60).toFixed(1)} mm ± 0.5 mm`)
      .replace('MARK1', `${mark(660).toFixed(1)} mm ± 0.5 mm`)
      .replace('TRIM', `${((surfaced.attitude.trim * 180) / Math.PI).toFixed(2)}° ± 0.2°`),
  );
  it('are offered changed, each old to new, in the unit and way they are written', () => {
    const offer = offerOf(analysis, 'change')!;
    expect([offer.title, ...offer.details].join('\n')).toMatch(/mass of “battery”: 182 g to 2\d\d(\.\d)? g/);
    expect(offer.title.length).toBeLessThanOrEqual(90);
    const after = taught(analysis, 'change');
    expect(after.syntax.text).toMatch(/name: battery, mass: 2\d\d(\.\d)? g ± 15 g, station: 192 to 272 mm ± 0\.5 mm,/);
    expect(codes(after)).not.toContain('trial-differs');
    expect(after.trials[0]!.explained).toBe('changed figures');
    expect(after.uncertainties()!.conditions.surfaced!.draft!.sigma).toBeLessThan(
      analysis.uncertainties()!.conditions.surfaced!.draft!.sigma,
    );
  });
});

describe('what was on board', () => {
  it('is kept as payload by one edit that says of the earlier trials that they were without it', {
    timeout: 60_000,
  }, () => {
    const analysis = dunlin;
    const [keep] = rewritesAt(analysis, 'fill: 55 %');
    expect(keep!.title).toBe('Keep what was on board in the trial of 2026-05-09: “sheet lead at the bow” as payload');
    const edits = keep!.edit!.changes![file.uri]!;
    const starts = analysis.syntax.lineStarts;
    const offset = ({ line, character }: { line: number; character: number }) => starts[line]! + character;
    const text = splice(
      dunlinText,
      edits.map(({ range, newText }) => ({ start: offset(range.start), end: offset(range.end), text: newText })),
    );
    const after = analysed(text);
    expect(after.ofFile).toEqual([]);
    expect(after.boat.payload.at(-1)).toMatchObject({ name: 'sheet lead at the bow', mass: 0.016, material: 'lead' });
    expect(after.trials.map(({ without }) => without)).toEqual([
      ['sheet lead at the bow'],
      ['sheet lead at the bow'],
      ['sheet lead at the bow'],
      [],
      [],
    ]);
    expect(after.trials.map(({ aboard }) => aboard.length)).toEqual([0, 0, 0, 0, 0]);
    // Nothing of what was predicted has changed by it.
    const shown = (each: Analysis) =>
      each.learned().comparisons.map(({ readings }) => readings.map(({ predicted }) => predicted!.toFixed(9)));
    expect(shown(after)).toEqual(shown(analysis));
  });
  it('goes with the marks into a new trial', () => {
    const [, next] = rewritesAt(dunlin, 'fill: 55 %');
    expect(next!.edit!.changes![file.uri]![0]!.newText).toContain('trim: -2° ± 0.5°');
  });
});

describe('hovers and reports', () => {
  const hover = (words: string) => {
    const contents = service.hover(dunlin, dunlinText.indexOf(words) + 1)?.contents;
    return contents && typeof contents === 'object' && 'value' in contents ? contents.value : '';
  };
  it('a reading says what was predicted, and how far apart they are in plain words', () => {
    expect(hover('74 mm ± 1 mm')).toMatch(
      /\| Read \| 74 mm \| 1 mm \|\n\| By the file \| 78\.\d mm \| 0\.\d+ mm \|\n\nRead 4\.\d mm less, 3\.\d times what both leave open: they do not agree/,
    );
    expect(hover('60 % ± 2 %')).toContain(
      'As read she hung neutral with the tank 60 % full. A tank of 242 ml in all would be neutral at 70 %',
    );
    expect(hover('96 mm ± 1 mm')).toMatch(/By all other readings it should have been 6\d\.\d mm: likely a slip\./);
    expect(hover('2.3° ± 0.2°')).toContain('Metacentric height');
  });
  it('the report tells the history, and so does the one for machines', { timeout: 60_000 }, () => {
    const report = service.report(dunlin);
    expect(report).toMatch(/Trials\n {2}2026-05-02, surfaced\n {4}the water 60 mm aft of the bow tip {3}74 mm/);
    expect(report).toContain('fits nothing: a slip?');
    expect(report).toMatch(/What the trials teach, the better explanation first\n {2}1\. Insert “unlisted weight”/);
    const { trials } = jsonReport(dunlin);
    expect(trials.map(({ condition }) => condition)).toEqual([
      'surfaced',
      'submerged',
      'inclining',
      'surfaced',
      'submerged',
    ]);
    expect(trials[1]!.readings.find(({ of }) => of === 'fill')).toMatchObject({ read: 0.6, uncertainty: 0.02 });
    expect(trials[3]!.readings[2]!.slip!.expected).toBeLessThan(72);
    expect(trials[2]!.inclining!.gm.value).toBeGreaterThan(8);
  });
});
