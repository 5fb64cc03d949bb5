import { describe, expect, test } from 'vitest';
import { refusalWords } from '../../server/core/corrections/kinds/refusal.ts';
import { cellsAdvice } from '../../server/core/corrections/remedies/cellsAdvice.ts';
import { correctText } from '../../server/core/report/correctText.ts';
import { plainPaint } from '../../server/core/report/rows.ts';
import { finish } from '../../server/core/steps/steps.ts';
import { heard } from '../helpers/analysed.ts';
import { boatText, textLines } from '../helpers/boatText.ts';
import { firstOfBoth, outOfLimits } from '../helpers/corrected.ts';
import { probe } from '../helpers/probe.ts';

const withoutBay = (text: string, name: string) => text.replace(new RegExp(`^ {2}- \\{ name: ${name}.*\\n`, 'm'), '');
const pinned = (text: string) =>
  text.replace(
    '- name: battery',
    boatText`
  - fixed: true
      name: battery`,
  );

describe('a refusal', () => {
  /*
   * The probe with its 800 g battery 30 mm too far aft, held there, and room for lead in the stern alone: 24 000 g·mm are
   * missing forward. Submerged 2800·6.07·tan 0.5° = 148 g·mm may be, surfaced 2000·263.17·tan 0.5° = 4593 g·mm.
   */
  test('says which limits are in the way, the worst first, and by how much', () => {
    const { boatToTrim } = heard(pinned(withoutBay(probe(['150 to 250 mm', '180 to 280 mm']), 'bow bay')));
    const words = refusalWords(boatToTrim!)!.replace(/[\u202f ]/g, ' ');
    const found = /: submerged trim by ([\d ]+) g·mm forward, surfaced trim by ([\d ]+) g·mm forward\.$/.exec(words);
    const [below, afloat] = found!.slice(1).map(digits => Number(digits.replaceAll(' ', '')));
    expect(Math.abs(below! - (24_000 - 148))).toBeLessThan(30);
    expect(Math.abs(afloat! - (24_000 - 4593))).toBeLessThan(100);
  });

  test('speaks of the tank where that is too small', () => {
    // 990 ml at 90 to 310 mm; at 120 to 280 mm 720 ml, of which 85 % are 612 ml: 800 - 612 = 188 g too little.
    const text = probe(['station: 90 to 310 mm', 'station: 120 to 280 mm']);
    const { boatToTrim } = heard(pinned(withoutBay(withoutBay(text, 'bow bay'), 'stern bay')));
    expect(refusalWords(boatToTrim!)).toMatch(/neutral fill by 188 g of weight in water too little, or a larger tank/);
  });

  test('is none where nothing is in the way', () => {
    expect(refusalWords(heard(probe(['150 to 250 mm', '155 to 255 mm'])).boatToTrim!)).toBeNull();
  });

  test('names the limits for a boat without bays too', () => {
    const text = pinned(withoutBay(withoutBay(probe(['150 to 250 mm', '180 to 280 mm']), 'bow bay'), 'stern bay'));
    const words = correctText(heard(text.replace(textLines(['bays:']), '')), false, plainPaint);
    expect(words).toMatch(/^The file names no bays, .* In the way: submerged trim by /);
  });
});

/*
 * The water of a tank as long as the probe's runs along it: 90 mm broad and 220 mm long, its free surface takes
 * 90·220³/12 mm⁴ of 2800 cm³ off B above G, 28.5 mm along the boat; in n cells n² times less.
 */
describe('a boat that the water in its tank upsets', () => {
  const VENTED = ['kind: bladder', 'kind: vented'] as const;
  const inCells = (cells: number) =>
    [
      'kind: bladder',
      boatText`
        kind: vented
              cells: ${cells}`,
    ] as const;
  const adviceFor = (...changes: readonly (readonly [string, string])[]) =>
    finish(cellsAdvice(heard(probe(...changes)).boatToTrim!));

  test('is told in how many cells it would keep its limits, and that is true', () => {
    expect(adviceFor(VENTED, ['bg: 3 mm', 'bg: 0.1 mm'])).toBe(
      'With “main tank” in 2 watertight cells, one behind the other, it would keep every limit as it is.',
    );
    expect(outOfLimits(heard(probe(inCells(2), ['bg: 3 mm', 'bg: 0.1 mm'])))).toEqual([]);
  });

  test('with pieces where it takes those, and that is true too', () => {
    const off = ['150 to 250', '155 to 255'] as const;
    expect(adviceFor(VENTED, off)).toMatch(
      /^With “main tank” in 3 watertight cells, .*, and \d+ g lead in “bow bay”.*, it would/,
    );
    expect(firstOfBoth(heard(probe(inCells(3), off)))).toBeDefined();
    expect(firstOfBoth(heard(probe(inCells(2), off)))).toBeUndefined();
  });

  test.each([
    ['whose tank has no free surface', []],
    ['that is steady', [['kind: bladder', 'kind: piston']] as const],
    ['that no tank would steady', [VENTED, ['height: 30 mm', 'height: 45 mm']] as const],
  ])('nothing is told of a boat %s', (_, changes) => {
    expect(adviceFor(...changes)).toBeNull();
  });
});

test('how likely it is then in trim is not told of a boat that does not hang yet', () => {
  const [first] = heard(probe(['mass: 800 g', 'mass: 300 g'])).corrections.all();
  expect(first!.note).toContain('How likely it then is within all limits cannot be told');
});
