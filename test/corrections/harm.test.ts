import { describe, expect, test } from 'vitest';
import { SUBMERGED, SURFACED } from '../../server/core/conditions/loadingCondition.ts';
import { chanceOfHarm } from '../../server/core/corrections/balance/harm.ts';
import { chanceOfAll, type LimitKept } from '../../server/core/corrections/balance/sureness.ts';
import { withUnwritten } from '../../server/core/corrections/balance/unwritten.ts';
import { heard, service } from '../helpers/analysed.ts';
import { boatText } from '../helpers/boatText.ts';
import { probe } from '../helpers/probe.ts';

const FIGURES = {
  'surfaced trim': { condition: SURFACED, figure: 'trim' },
  'surfaced heel': { condition: SURFACED, figure: 'heel' },
  'submerged trim': { condition: SUBMERGED, figure: 'trim' },
  'submerged heel': { condition: SUBMERGED, figure: 'heel' },
} as const;

/** A figure with a limit of 1. */
const kept = (name: keyof typeof FIGURES, off: number, open: number): LimitKept => ({
  ...FIGURES[name],
  off,
  limit: 1,
  isLeast: false,
  open,
  explained: [],
});

describe('the chance to do harm', () => {
  test.each([
    [
      'a figure that nobody doubts, brought into its limit',
      [kept('surfaced trim', 4, 0)],
      [kept('surfaced trim', 0, 0)],
      0,
    ],
    ['the same taken out of it', [kept('surfaced trim', 0, 0)], [kept('surfaced trim', 4, 0)], 1],
    ['nothing done, whatever is open', [kept('surfaced heel', 1, 9)], [kept('surfaced heel', 1, 9)], 0],
    ['a boat that did not hang, whatever it then does', [], [kept('submerged trim', 3, 0)], 0],
  ])('of %s', (_, before, after, known) => {
    expect(chanceOfHarm(before, after)).toBeCloseTo(known, 12);
  });

  test('of a shift by far less than is open is that of erring the other way', () => {
    // 20 limits are open and 2 are shifted: it is worse where the boat lay on the other side, by symmetry about the middle
    // of the two half of all, less where it is out by so little more that nobody sees it.
    const harm = chanceOfHarm([kept('submerged heel', 2, 20)], [kept('submerged heel', 0, 20)]);
    expect(harm).toBeGreaterThan(0.15);
    expect(harm).toBeLessThan(0.5);
  });

  test('counts an error once: what it does on the surface it does below', () => {
    // A weight forward of where the file has it trims both; the correction brings both about as far.
    const both = (figure: number) => [kept('surfaced trim', figure, 1), kept('submerged trim', figure, 1)];
    const one = (figure: number) => [kept('surfaced trim', figure, 1)];
    expect(chanceOfHarm(both(3), both(0))).toBeCloseTo(chanceOfHarm(one(3), one(0)), 1);
  });
});

describe('over what the trials may mean', () => {
  /** Two explanations: a figure that is where it is shown, and one by so much more. */
  const mixed = (off: number, odds: number, more: number): LimitKept => ({
    ...kept('surfaced trim', off, 1),
    explained: [
      { rank: 0, odds: 1 - odds, more: 0, open: 0 },
      { rank: 1, odds, more, open: 0 },
    ],
  });

  test('harm is what each explanation says, by its odds', () => {
    // By the first the correction brings 3 limits to nothing; by the second it takes nothing out to minus 3.
    expect(chanceOfHarm([mixed(3, 0.2, -3)], [mixed(0, 0.2, -3)])).toBeCloseTo(0.2, 9);
    expect(chanceOfHarm([mixed(3, 0.2, 3)], [mixed(0, 0.2, 3)])).toBeCloseTo(0, 9);
  });

  test('so is the chance to be within the limits: a far rival costs its odds and no more', () => {
    const alone = chanceOfAll([kept('surfaced trim', 0, 0)]);
    expect(chanceOfAll([mixed(0, 0.2, 50)])).toBeCloseTo(0.8 * alone, 9);
    expect(chanceOfAll([mixed(0, 0.2, 0)])).toBeCloseTo(alone, 9);
  });
});

describe('a boat of which little is known', { timeout: 60_000 }, () => {
  /* The probe's battery 0.3 mm too far aft, which is 1.6 of what submerged trim allows, and known to 5 mm only. */
  const text = probe(['150 to 250 mm', '150.3 to 250.3 mm ± 5 mm']);

  test('had better be floated before anything is done; once it was, the readings lead', () => {
    const before = heard(text).corrections.all();
    expect(before.length).toBeGreaterThan(0);
    expect(before[0]!.floatFirst).toBe(true);
    expect(before[0]!.note).toMatch(/weigh it whole on two scales, or float it as it is first/);
    const tried = service.analyse(
      `${text}${boatText`
        trials:
          - condition: submerged
            trim: 2.1°
      `}`,
    );
    for (const { floatFirst, note } of tried.corrections.all()) {
      expect(floatFirst).toBe(false);
      expect(note).not.toMatch(/float it as it is/);
    }
  });

  test('known to a fraction of what it is out by, it is not', () => {
    const well = heard(probe(['150 to 250 mm', '170 to 270 mm ± 0.01 mm']));
    expect(well.corrections.all()[0]).toMatchObject({ floatFirst: false });
  });

  test('out by no more than what nobody wrote down may come to, it had better be weighed first', () => {
    const near = probe(['150 to 250 mm', '160 to 260 mm ± 0.01 mm']);
    expect(heard(near).corrections.all()[0]).toMatchObject({ floatFirst: true });
    const weighed = heard(
      `${near}${boatText`
      trials:
        - condition: bench
          scales: [{ station: 100 mm, reads: 960 g ± 0.1 g }, { station: 300 mm, reads: 1040 g ± 0.1 g }]
    `}`,
    );
    expect(weighed.corrections.all()[0]).toMatchObject({ floatFirst: false });
  });
});

describe('what nobody wrote down', () => {
  test('is a weight and its moments beside what is open already', () => {
    const open = { surfaced: Object.fromEntries(['draft', 'trim', 'heel', 'gm'].map(figure => [figure, load(0.003)])) };
    const { surfaced } = withUnwritten(open, 2, 0.5);
    // 1.4 % of 2 kg; 0.4 % and 0.04 % of 2 kg at 500 mm.
    expect(surfaced!.draft!.sigma).toBeCloseTo(Math.hypot(0.003, 0.028), 12);
    expect(surfaced!.trim!.sigma).toBeCloseTo(Math.hypot(0.003, 0.004), 12);
    expect(surfaced!.heel!.sigma).toBeCloseTo(Math.hypot(0.003, 0.0004), 12);
    expect(surfaced!.gm!.sigma).toBe(0.003);
  });
});

const load = (sigma: number) => ({ sigma, explained: [] });
