import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Analysis } from '../../server/core/analysis/analysis.ts';
import { jsonReport } from '../../server/core/report/jsonReport.ts';
import { learnedJson } from '../../server/core/report/learnedJson.ts';
import { applyChanges, splice } from '../../server/core/text/editing/edit.ts';
import { heard, marked, service } from '../helpers/analysed.ts';
import { boatText } from '../helpers/boatText.ts';
import { probe } from '../helpers/probe.ts';

const dunlinText = readFileSync(new URL('../../samples/dunlin.boat.yaml', import.meta.url), 'utf8');
const dunlin = heard(dunlinText);
const file = { uri: 'file:///dunlin.boat.yaml', version: null };
const actionsAt = (analysis: Analysis, words: string) => {
  const at = analysis.syntax.text.indexOf(words);
  return service.codeActions(analysis, [at, at], file);
};
type Action = ReturnType<typeof actionsAt>[number];
const writes = (edit: Action['edit'], words: string): boolean =>
  edit?.changes?.[file.uri]?.some(({ newText }) => newText.includes(words)) ?? false;
const codes = (analysis: Analysis) => analysis.findings.map(({ code }) => code);

/** The offer's change: a slip struck out, or an entry inserted. */
type Teaching = 'add-key' | 'append';

/** The file after the offers of the trials that change it so. */
function taught(analysis: Analysis, ...kinds: readonly Teaching[]): Analysis {
  return kinds.reduce((before, kind) => {
    const offer = offersOf(before).find(({ changes }) => changes.every(change => change.kind === kind));
    if (!offer) throw new Error(`no ${kind} is offered`);
    return heard(splice(before.syntax.text, applyChanges(before.syntax, offer.changes)!));
  }, analysis);
}
const verdictOf = (analysis: Analysis) => analysis.learned!.verdict!;
const offersOf = (analysis: Analysis) => verdictOf(analysis).offers;

describe('Dunlin, with a weight near its stern that nobody wrote down', () => {
  it('differs from its file in the readings that feel it, told on their own characters', () => {
    const differing = dunlin.findings.filter(({ code }) => code === 'trial-differs');
    expect(differing.map(finding => marked(dunlin, finding))).toEqual(
      expect.arrayContaining(['74 mm ± 1 mm', '73 mm ± 1 mm', '13° ± 1°', '60 % ± 2 %']),
    );
    expect(differing[0]!.message).toMatch(
      /^In the trial of 2026-05-02 the water 60 mm aft of the bow tip was read as 74 mm, by the file it is 78\.\d mm: 4\.\d mm less, /,
    );
  });
  it('has one slip, two figures swapped: 69 mm written as 96 mm', () => {
    const { slips } = verdictOf(dunlin);
    expect(slips.map(({ reading }) => reading.value)).toEqual([0.096]);
    // What the true boat showed there was 68.9 mm.
    expect(Math.abs(slips[0]!.expected - 0.0689)).toBeLessThan(2.5 * slips[0]!.sigma);
    const [finding] = dunlin.findings.filter(({ code }) => code === 'trial-slip');
    expect(marked(dunlin, finding!)).toBe('96 mm ± 1 mm');
  });
  it('is told as something unlisted, and has the figures of the true boat: 26 g with 6 ml at station 596 mm', () => {
    const { told } = verdictOf(dunlin);
    const { surfaced, submerged } = dunlin.uncertainties!.conditions;
    const unlisted = told.filter(({ causes }) => causes.length === 1 && causes[0]!.kind === 'unlisted');
    expect(unlisted.reduce((sum, { odds }) => sum + odds, 0)).toBeGreaterThan(0.5);
    const truth = heard(
      dunlinText.replace(
        /^payload:.*$/m,
        `$&
  - { name: hidden, mass: 26 g, volume: 6 ml, station: 596 mm, height: 40 mm }`,
      ),
    );
    if (truth.surfaced.status !== 'afloat' || truth.submerged.status !== 'neutral')
      throw new Error('Dunlin must float');
    const before = dunlin.filedUncertainties!.conditions;
    for (const [uncertainty, filed, value] of [
      [surfaced!.trim!, before.surfaced!.trim!, truth.surfaced.attitude.trim],
      [surfaced!.draft!, before.surfaced!.draft!, (truth.surfaced.draftBow + truth.surfaced.draftStern) / 2],
      [submerged!.fill!, before.submerged!.fill!, truth.submerged.fill],
      [submerged!.trim!, before.submerged!.trim!, truth.submerged.trim],
    ] as const) {
      expect(Math.abs(uncertainty.value - value)).toBeLessThan(2.5 * uncertainty.sigma);
      expect(Math.abs(uncertainty.value - value)).toBeLessThan(Math.abs(filed.value - value));
    }
  });
  it('is judged and corrected as the pool has it, bow up under water', () => {
    const { submerged } = dunlin;
    expect(submerged).toMatchObject({ status: 'neutral' });
    if (submerged.status === 'neutral') expect(submerged.trim).toBeGreaterThan(0.17);
    const [finding] = dunlin.findings.filter(({ code }) => code === 'submerged-trim');
    expect(finding!.message).toContain('bow up');
    const [first] = dunlin.corrections.all();
    expect(first!.submerged).toMatchObject({ status: 'neutral' });
    if (first!.submerged.status === 'neutral') expect(Math.abs(first!.submerged.trim)).toBeLessThan(0.035);
  });
});

/** The probe of 2 kg without 500 g of its battery in the file, read as the whole boat lies. */
describe('a battery that the file has forgotten, a third of its boat', () => {
  it('is told by its weight and its place', () => {
    const forgotten = heard(boatText`
      ${probe(['mass: 800 g', 'mass: 300 g'])}trials:
        - { condition: submerged, fill: 80 %, trim: 1° bow up }
        - { condition: surfaced, marks: [{ station: 60 mm, height: 50 mm }, { station: 340 mm, height: 50 mm }] }
    `);
    expect(verdictOf(forgotten).told[0]!.causes).toMatchObject([{ kind: 'unlisted', inside: 'hold' }]);
    const told = learnedJson(forgotten) as {
      explanations: { causes: { mass: { value: number; uncertainty: number } }[] }[];
    };
    const { value, uncertainty } = told.explanations[0]!.causes[0]!.mass;
    expect(Math.abs(value - 500)).toBeLessThan(uncertainty);
    expect(uncertainty).toBeLessThan(60);
  });
});

describe('after what the trials teach is written down', () => {
  const after = taught(dunlin, 'add-key', 'append');
  it('the trials agree with the file, and nothing more is offered of it', () => {
    expect(after.file.findings).toEqual([]);
    expect(codes(after)).not.toContain('trial-differs');
    expect(codes(after)).not.toContain('trial-slip');
    expect(after.filed.boat.payload.at(-1)).toMatchObject({ name: 'unlisted weight', isLearned: true });
    const [first, ...others] = verdictOf(after).told;
    expect(first!.odds).toBeCloseTo(verdictOf(dunlin).told[0]!.odds, 1);
    expect(offersOf(after).length).toBeLessThanOrEqual(others.length);
  });
  it('every other byte of the file is as it was', () => {
    const was = dunlinText.split('\n');
    const now = after.syntax.text.split('\n');
    const changed = now.filter(line => !was.includes(line));
    expect(now.length).toBe(was.length + 1);
    expect(changed.length).toBe(2);
    expect(changed[0]).toMatch(/^ {2}- \{ name: unlisted weight, mass: [\d.]+ g ± [\d.]+ g, /);
    expect(changed[1]).toContain('height: 96 mm ± 1 mm, slip: true');
  });
});

describe('what was on board', () => {
  it('is kept as payload by one edit that says of the earlier trials that they were without it', {
    timeout: 60_000,
  }, () => {
    const analysis = dunlin;
    const action = actionsAt(analysis, 'fill: 55 %').find(({ edit }) => writes(edit, 'without'))!;
    expect(action.title).toBe('Keep what was on board in the trial of 2026-05-09: “sheet lead at the bow” as payload');
    const edits = action.edit!.changes![file.uri]!;
    const starts = analysis.syntax.lineStarts;
    const offset = ({ line, character }: { line: number; character: number }) => starts[line]! + character;
    const text = splice(
      dunlinText,
      edits.map(({ range, newText }) => ({ start: offset(range.start), end: offset(range.end), text: newText })),
    );
    const after = heard(text);
    expect(after.file.findings).toEqual([]);
    expect(after.filed.boat.payload.at(-1)).toMatchObject({
      name: 'sheet lead at the bow',
      mass: 0.016,
      material: 'lead',
    });
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
      each.learned!.comparisons.map(({ readings }) => readings.map(({ predicted }) => predicted!.toFixed(9)));
    expect(shown(after)).toEqual(shown(analysis));
  });
  it('goes with the marks into a new trial', () => {
    const action = actionsAt(dunlin, 'fill: 55 %').find(({ edit }) => writes(edit, 'overwrite what you read'))!;
    expect(action.edit!.changes![file.uri]![0]!.newText).toContain('trim: -2° ± 0.5°');
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
      'As read it hung neutral with the tank 60 % full. A tank of 242 ml in all would be neutral at 70 %',
    );
    expect(hover('96 mm ± 1 mm')).toMatch(/By all other readings it should have been 6\d\.\d mm: likely a slip\./);
    expect(hover('2.3° ± 0.2°')).toContain('Metacentric height');
  });
  it('the report tells the history, and so does the one for machines', { timeout: 60_000 }, () => {
    const report = service.report(dunlin);
    expect(report).toMatch(/Trials\n {2}2026-05-02, surfaced\n {4}the water 60 mm aft of the bow tip {3}74 mm/);
    expect(report).toContain('fits nothing: a slip?');
    expect(report).toMatch(/What the trials say\n {2}Most likely \(\d in 10\): something of \d+ ± \d+ g /);
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
