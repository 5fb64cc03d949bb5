import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { refusalWords } from '../../server/core/corrections/kinds/refusal.ts';
import { balancesOf } from '../../server/core/corrections/search/balances.ts';
import { trimSheet } from '../../server/core/drawing/trimSheet.ts';
import { jsonReport } from '../../server/core/report/jsonReport.ts';
import { heard } from '../helpers/analysed.ts';
import { strayNumbers } from '../helpers/finite.ts';
import { probe } from '../helpers/probe.ts';

const PETREL = readFileSync('samples/petrel.boat.yaml', 'utf8');
const petrel = (from: string, to: string): string => {
  const text = PETREL.replace(from, to);
  expect(text).toContain(to);
  return text;
};

/** Ends of a row that are open. */
const OPEN_ENDS = new Set(['least', 'most']);

describe('boats that ask for what cannot be', () => {
  it.each([
    ['painted waterline at the keel', () => petrel('waterline: 89 mm', 'waterline: 0 mm'), null],
    ['painted waterline above the sail', () => petrel('waterline: 89 mm', 'waterline: 500 mm'), null],
    ['painted waterline a hair above the keel', () => petrel('waterline: 89 mm', 'waterline: 0.01 mm'), 'told'],
    ['a box, its waterline at the keel', () => probe(['waterline: 50 mm', 'waterline: 0 mm']), null],
    ['no metacentric height asked', () => petrel('gm: 3 mm', 'gm: 0 mm'), 'told'],
    ['less than none', () => petrel('gm: 3 mm, bg: 4 mm', 'gm: -2 mm, bg: -4 mm'), 'told'],
    ['a draft to a hair', () => petrel('draft: 1.5 mm', 'draft: 0.01 mm'), 'told'],
    ['a reserve to a hair', () => petrel('fill: 40 to 85 %', 'reserve: 5 to 5.001 g'), 'told'],
    ['no height of B over G asked', () => petrel('bg: 4 mm', 'bg: 0 mm'), 'told'],
  ])('%s: report, balances and pictures hold numbers', (_, text, reach) => {
    const analysis = heard(text());
    const { boatToTrim } = analysis;
    const report = jsonReport(analysis);
    expect(strayNumbers(report)).toEqual([]);
    const drawn = trimSheet(analysis, { correction: analysis.corrections.all()[0] ?? null }).pictures;
    expect(drawn.filter(({ svg }) => /NaN|Infinity/.test(svg)).map(({ id }) => id)).toEqual([]);
    expect(strayNumbers(balancesOf(boatToTrim!, 'both', 1)(null), OPEN_ENDS)).toEqual([]);
    for (const each of Object.values(report.reach!)) {
      expect(each === null ? null : 'told').toBe(reach);
      expect(each?.polygon.length ?? 0).toBeLessThan(2000);
    }
  });

  it('a surface that no water cuts the hull at is in the way', () => {
    const analysis = heard(probe(['waterline: 50 mm', 'waterline: 0 mm']));
    expect(refusalWords(analysis.boatToTrim!)).toContain(
      'the painted waterline, which lies where the water would cut no part of the hull',
    );
  });
});
