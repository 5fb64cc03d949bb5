import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { applyChanges, splice } from '../../server/core/text/editing/edit.ts';
import { runCommandLine } from '../../server/terminal/commandLine.ts';
import { heard } from '../helpers/analysed.ts';
import { boatText } from '../helpers/boatText.ts';
import { memoryWorld } from '../helpers/memoryWorld.ts';
import { PROBE, probe } from '../helpers/probe.ts';

const DUNLIN = readFileSync(new URL('../../samples/dunlin.boat.yaml', import.meta.url), 'utf8');

const dunlin = heard(DUNLIN);

function learn(text: string, ...options: readonly string[]) {
  const { world, written, said } = memoryWorld({ a: text });
  const code = runCommandLine(['learn', 'a', ...options], world);
  return { code, ...said(), written };
}

describe('trimwright learn', () => {
  it('prints the readings against the file, and what explains them', () => {
    const { code, out, written } = learn(DUNLIN);
    const [first] = dunlin.offers.all();
    expect(code).toBe(0);
    expect(out).toContain('2026-05-09, submerged, with “sheet lead at the bow” (16 g)');
    expect(out).toContain(`1. ${first!.title}`);
    expect(written).toEqual({});
  });
  it('--write puts the first of them into the file, as the quick fix does', () => {
    const { code, err, written } = learn(DUNLIN, '--write');
    const { syntax, offers } = dunlin;
    expect([code, err]).toEqual([0, 'a: written.\n']);
    expect(written.a).toBe(splice(DUNLIN, applyChanges(syntax, offers.all()[0]!.changes)!));
  });
  it('--json gives both to machines', () => {
    const told = JSON.parse(learn(DUNLIN, '--json').out) as {
      trials: { readings: { of: string; read: number }[] }[];
      explanations: { odds: number; causes: { kind: string; mass?: { value: number; uncertainty: number } }[] }[];
      offers: { title: string; edits: { text: string }[] }[];
    };
    const [first] = told.explanations;
    const [most] = dunlin.learned!.verdict!.told;
    expect(first).toMatchObject({ odds: most!.odds, causes: most!.causes.map(({ kind }) => ({ kind })) });
    // The true boat has 26 g there.
    const { value, uncertainty } = first!.causes[0]!.mass!;
    expect(Math.abs(value - 26)).toBeLessThan(2 * uncertainty);
    expect(told.offers.flatMap(({ edits }) => edits.map(({ text }) => text)).join()).toContain('slip: true');
    expect(told.trials.map(({ readings }) => readings.length)).toEqual([4, 3, 2, 4, 2]);
    expect(told.trials[0]!.readings[0]).toMatchObject({ of: 'mark', station: 60, read: 74, struckOut: false });
    expect(told.offers.map(({ title }) => title)).toEqual(dunlin.offers.all().map(({ title }) => title));
  });
  it('says of a trial that the boat of the file could not do that it teaches nothing, and why', () => {
    const sunk = boatText`
      ${probe(['mass: 800 g', 'mass: 1750 g'])}trials:
        - { condition: surfaced, marks: [{ station: 60 mm, height: 50 mm }] }
    `;
    const { out } = learn(sunk);
    expect(out).toContain('  trial 1, surfaced, by the file it could not have lain so\n    it teaches nothing yet: ');
    expect(out).toContain(
      'Nothing can be learned from trial 1: by the file the boat could not have shown what was read.',
    );
    const { trials } = JSON.parse(learn(sunk, '--json').out) as { trials: { heard: boolean }[] };
    expect(trials.map(({ heard: isHeard }) => isHeard)).toEqual([false]);
  });
  it.each([
    [PROBE, 'The file has no trials.'],
    [
      boatText`
      ${PROBE}trials:
        - { condition: bench, scales: [{ reads: 2 kg ± 50 g }], slips: [] }
    `,
      'mass on the scale',
    ],
    [probe(['mass: 800 g', 'mass: 800 mm']), 'The file has errors: fix them first (trimwright check).'],
  ])('says so where there is nothing to learn', (text, words) => {
    const { out, written } = learn(text, '--write');
    expect(out).toContain(words);
    expect(written).toEqual({});
  });
});
