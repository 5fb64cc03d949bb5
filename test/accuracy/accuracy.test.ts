import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { allSections } from './allSections.ts';
import { evaluate } from './check.ts';
import { accuracyTable } from './table.ts';

const sections = evaluate(await allSections());

describe.each(sections.map(section => [section.title, section] as const))('%s', (_, { checks, outcomes }) => {
  it.each(checks.map((check, i) => [check.what, check, outcomes[i]!] as const))('%s', (_what, check, outcome) => {
    const { expected, unit, source, known } = check;
    expect(outcome.passes, `got ${outcome.got}, expected ${expected} ${unit} (${source}, ${known})`).toBe(true);
  });
});

describe('the table', () => {
  it('holds at least the checks asked for', () => {
    expect(sections.flatMap(section => section.checks).length).toBeGreaterThanOrEqual(80);
  });
  it('in ACCURACY.md is the one that `npm run accuracy` writes today', () => {
    const measure = readFileSync('test/builder/MEASURE.md', 'utf8');
    expect(readFileSync('test/ACCURACY.md', 'utf8')).toBe(accuracyTable(sections, measure));
  });
});
