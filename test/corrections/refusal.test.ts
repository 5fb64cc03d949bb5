import { describe, expect, test } from 'vitest';
import { refusalWords } from '../../server/core/corrections/kinds/refusal.ts';
import { analysed } from '../helpers/analysed.ts';
import { probe } from '../helpers/probe.ts';

const withoutBay = (text: string, name: string) => text.replace(new RegExp(`^ {2}- \\{ name: ${name}.*\\n`, 'm'), '');
const pinned = (text: string) => text.replace('- name: battery', '- fixed: true\n    name: battery');

describe('a refusal', () => {
  /*
   * The probe with its 800 g battery 30 mm too far aft, held there, and room for lead in the stern alone: 24 000 g·mm are
   * missing forward. Submerged 2800·6.07·tan 0.5° = 148 g·mm may be, surfaced 2000·263.17·tan 0.5° = 4593 g·mm.
   */
  test('says which limits are in the way, the worst first, and by how much', () => {
    const { boatToTrim } = analysed(pinned(withoutBay(probe(['150 to 250 mm', '180 to 280 mm']), 'bow bay')));
    const words = refusalWords(boatToTrim!)!.replace(/[\u202f ]/g, ' ');
    const found = /: submerged trim by ([\d ]+) g·mm forward, surfaced trim by ([\d ]+) g·mm forward\.$/.exec(words);
    const [below, afloat] = found!.slice(1).map(digits => Number(digits.replaceAll(' ', '')));
    expect(Math.abs(below! - (24_000 - 148))).toBeLessThan(30);
    expect(Math.abs(afloat! - (24_000 - 4593))).toBeLessThan(100);
  });

  test('speaks of the tank where that is too small', () => {
    // 990 ml at 90 to 310 mm; at 120 to 280 mm 720 ml, of which 85 % are 612 ml: 800 - 612 = 188 g too little.
    const text = probe(['station: 90 to 310 mm', 'station: 120 to 280 mm']);
    const { boatToTrim } = analysed(pinned(withoutBay(withoutBay(text, 'bow bay'), 'stern bay')));
    expect(refusalWords(boatToTrim!)).toMatch(/neutral fill by 188 g of weight in water too little, or a larger tank/);
  });

  test('is none where nothing is in the way', () => {
    expect(refusalWords(analysed(probe(['150 to 250 mm', '155 to 255 mm'])).boatToTrim!)).toBeNull();
  });
});
