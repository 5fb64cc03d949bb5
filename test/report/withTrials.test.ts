import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Figure } from '../../server/core/figures/figure.ts';
import { FIGURES } from '../../server/core/figures/table.ts';
import { jsonReport } from '../../server/core/report/jsonReport.ts';
import { textReport } from '../../server/core/report/textReport.ts';
import { splice } from '../../server/core/text/editing/edit.ts';
import { plusMinus } from '../../server/core/wording/withUncertainty.ts';
import { analysed, heard, service } from '../helpers/analysed.ts';
import { printed } from '../helpers/printed.ts';
import { PROBE } from '../helpers/probe.ts';

const text = readFileSync(new URL('../../samples/dunlin.boat.yaml', import.meta.url), 'utf8');
const dunlin = heard(text);
const report = textReport(dunlin);
const json = jsonReport(dunlin);
const print = printed(dunlin, { paper: 'a4', fileName: 'a.boat.yaml', appendix: true })
  .replace(/<[^>]*>/g, '')
  .replaceAll('\u00a0', ' ');
const hoverOf = (analysis: typeof dunlin, words: string): string => {
  const contents = service.hover(analysis, analysis.syntax.text.indexOf(words) + 1)?.contents;
  return contents && typeof contents === 'object' && 'value' in contents ? contents.value : '';
};
/** Rows of the list of what is aboard, its head first. */
const htmlList = (page: string): readonly string[] =>
  /<table class="list">[\s\S]*?<\/table>/.exec(page)![0].match(/<tr>[\s\S]*?<\/tr>/g)!;
const hover = hoverOf(dunlin, 'limits:');
const CONDITIONS = ['surfaced', 'submerged'] as const;

it('the report of a boat that has been to the pool', async () => {
  await expect(report).toMatchFileSnapshot('golden/dunlin.txt');
});

describe('with the trials', () => {
  /** As tables say it: off what it is held against. */
  const shown = (figure: Figure, value: number) =>
    figure.kind.show(value - (figure.aim?.(dunlin.boat) ?? 0), dunlin.boat.units);
  const limited = CONDITIONS.flatMap(condition =>
    FIGURES.filter(({ id }) => ['trim', 'heel', 'gm', 'fill', 'bgEffective'].includes(id)).flatMap(figure =>
      (figure.where === 'submerged') === (condition === 'submerged') ? [[condition, figure.id, figure] as const] : [],
    ),
  );
  it.each(limited)(
    '%s %s is one number in report, JSON, hover and print, and in its uncertainty',
    (condition, id, figure) => {
      const { units } = dunlin.boat;
      const value = Number(json[condition][id]) / figure.kind.factor;
      const uncertainty = dunlin.uncertainties!.conditions[condition]![id]!;
      expect(uncertainty.value).toBeCloseTo(value, 6);
      const words = plusMinus(shown(figure, value), figure.kind.size(uncertainty.sigma, units));
      for (const place of [report, hover, print]) expect(place).toContain(words);
    },
  );
  it.each(limited)('%s %s has the figure by the file beside it where they are apart', (condition, id, figure) => {
    const { units } = dunlin.boat;
    const [value, filed] = [json[condition], json[condition].byFile as (typeof json)['surfaced']].map(
      there => Number(there[id]) / figure.kind.factor,
    );
    const { sigma } = dunlin.uncertainties!.conditions[condition]![id]!;
    const beside = new RegExp(
      `${plusMinus(shown(figure, value!), figure.kind.size(sigma, units))} [^|\\n✓✗]*by the file ${shown(figure, filed!)}`,
    );
    const isApart = Math.abs(value! - filed!) > sigma / 2;
    for (const place of [report, hover, print]) expect(beside.test(place), `${beside}`).toBe(isApart);
  });
  it('every heading says so', () => {
    for (const heading of ['Surfaced', 'Submerged', 'Tanks', 'On the way down']) {
      expect(report).toContain(`${heading}, with the trials\n`);
      expect(print).toContain(`${heading}, with the trials`);
    }
    expect(hover).toContain('| Limit | Surfaced, with the trials | Submerged, with the trials |');
    expect(service.summary(dunlin).text).toMatch(/^With the trials · Surfaced: .*by the file/);
    expect(json.withTrials).toBe(true);
  });
  it('the print lists what is aboard by the file: nothing that is only supposed, every place as it was measured', () => {
    const filed = dunlin.filed.boat.payload;
    expect(dunlin.boat.payload.length).toBeGreaterThan(filed.length);
    const all = htmlList(printed(dunlin, { paper: 'a4', fileName: 'probe.boat.yaml', appendix: true }));
    // The likeliest boat is said in one line below: its mass is what the form for the pool expects.
    const [listed, likeliest] = [all.slice(0, -1), all.at(-1)];
    expect(likeliest).toContain('likeliest, by the trials');
    expect(listed).toEqual(
      htmlList(
        printed(analysed(text.replace(/^trials:[\s\S]*/m, '')), {
          paper: 'a4',
          fileName: 'probe.boat.yaml',
          appendix: true,
        }),
      ),
    );
    const { shells, compartments, tanks } = dunlin.filed.boat;
    // And what all of it weighs.
    expect(listed).toHaveLength(shells.length + compartments.length + tanks.length + filed.length + 1);
  });
  it('machines are told the explanations with their odds and facts, and the edits of the offers', () => {
    const { explanations, offers } = json.learned;
    const odds = explanations.map(each => each.odds);
    expect(odds).toEqual([...odds].sort((a, b) => b - a));
    expect(odds.reduce((sum, each) => sum + each, 0)).toBeCloseTo(1, 6);
    const [cause] = explanations[0]!.causes;
    expect(cause).toMatchObject({ kind: 'unlisted', inside: null });
    const insert = offers.find(({ edits }) => edits!.some(edit => edit.text.includes('learned: true')))!;
    const { lineStarts } = dunlin.syntax;
    const offset = ({ line, character }: { line: number; character: number }) => lineStarts[line]! + character;
    const taught = splice(
      text,
      insert.edits!.map(edit => ({ start: offset(edit.range.start), end: offset(edit.range.end), text: edit.text })),
    );
    expect(taught).toContain('name: unlisted weight');
    expect(analysed(taught).file.findings).toEqual([]);
  });
  it('a correction moves what was measured by marks of the tape, whatever the trials make of its place', () => {
    const moves = dunlin.corrections
      .all()
      .flatMap(({ changes }) =>
        changes.flatMap(change => (change.kind === 'replace' && 'path' in change.place ? [change] : [])),
      );
    expect(moves.length).toBeGreaterThan(0);
    for (const { place, text: written } of moves) {
      const path = 'path' in place ? place.path : [];
      const { station } = dunlin.filed.boat.payload[Number(path[1])]!.written!;
      const filed = dunlin.filed.boat.payload[Number(path[1])]!;
      const first =
        Number.parseFloat(written) - 1000 * (station.isRange ? filed.from[0] : (filed.from[0] + filed.to[0]) / 2);
      expect(first).toBeCloseTo(Math.round(first), 6);
      expect(Math.round(first)).not.toBe(0);
    }
  });
});

it('without trials nothing speaks of them', () => {
  const probe = heard(PROBE);
  const all = [
    textReport(probe),
    service.printedSheet(probe, { paper: 'a4', fileName: null, appendix: true }).all(),
    hoverOf(probe, 'limits:'),
    service.summary(probe).text,
    service
      .codeLenses(probe, '')
      .map(({ command }) => command!.title)
      .join(),
  ].join('\n');
  expect(all).not.toMatch(/with the trials|by the file \d/i);
  const { surfaced, submerged, withTrials, learned } = jsonReport(probe);
  expect([surfaced.byFile, submerged.byFile, withTrials]).toEqual([null, null, false]);
  expect(learned).toEqual({ explanations: [], offers: [] });
});
