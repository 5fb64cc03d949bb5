import { describe, expect, it } from 'vitest';
import type { Analysis } from '../../server/core/analysis/analysis.ts';
import { waitingWords } from '../../server/core/analysis/waitingWords.ts';
import type { SubmergedNeutral } from '../../server/core/conditions/submerged.ts';
import { conditionOf } from '../../server/core/findings/finding.ts';
import { analysed, marked } from '../helpers/analysed.ts';
import { boatText } from '../helpers/boatText.ts';
import { PROBE, probe } from '../helpers/probe.ts';

const degrees = Math.PI / 180;

/** The probe is touchy by nature, which has a test of its own below. */
const submergedOf = (analysis: Analysis) =>
  analysis.findings.filter(finding => conditionOf(finding) === 'submerged' && finding.code !== 'submerged-touchy');

function neutral({ submerged }: Analysis): SubmergedNeutral {
  if (submerged.status !== 'neutral') throw new Error(`expected to hang neutral, got ${submerged.status}`);
  return submerged;
}

/*
 * The probe under water: 2800 g, B 35 mm up; G = (600·35 + 800·30 + 600·20 + 800·30)/2800 = 28.929 mm, so B lies
 * 6.071 mm above G. A weight of 800 g moved by d brings G 800·d/2800 off, and tan θ = that over BG: nothing else holds it.
 */
const BG = 35 - 81_000 / 2800;
const tilt = (offset: number, bg = BG) => Math.atan(offset / bg) / degrees;

interface Case {
  readonly boat: string;
  readonly text: string;
  readonly code: string;
  readonly severity?: 'error' | 'information';
  readonly says: string;
  readonly figure: (analysis: Analysis) => number;
  readonly known: number;
}

const battery = (station: string, offset = '0 mm', height = '30 mm'): readonly [string, string] => [
  boatText`
    station: 150 to 250 mm
        height: 30 mm`,
  boatText`
    station: ${station}
        offset: ${offset}
        height: ${height}`,
];
const kind = (lines: string): readonly [string, string] => ['kind: bladder', lines];

/** Second moments of the tank's free surface, 220 x 90 mm, over 2800 cm3: i/V (Derrett, Ship Stability, ch. 20, seen). */
const ACROSS = (220 * 90 ** 3) / 12 / 2_800_000;
const along = (cells: number) => (90 * (220 / cells) ** 3 * cells) / 12 / 2_800_000;

const CASES: readonly Case[] = [
  {
    boat: '100 g heavier than all it displaces',
    text: probe(['mass: 800 g', 'mass: 1700 g']),
    code: 'submerged-heavy',
    severity: 'error',
    says: 'Submerged, the boat is 100 g too heavy even with its tanks empty: it goes down and stays down. Add that much buoyancy: foam anywhere in the flooded hull.',
    figure: ({ submerged }) => (submerged.status === 'heavy' ? submerged.excess * 1e3 : Number.NaN),
    known: 100,
  },
  {
    // 1100 g to sink, 990 of them in the tank.
    boat: '110 g lighter than a full tank sinks',
    text: probe(['mass: 800 g', 'mass: 500 g']),
    code: 'submerged-light',
    severity: 'information',
    says: 'The boat cannot submerge: with its tanks full it is still 110 g too light. Add 110 g of weight in water, take foam away, or fit a larger tank.',
    figure: ({ submerged }) => (submerged.status === 'light' ? submerged.lack * 1e3 : Number.NaN),
    known: 110,
  },
  {
    boat: 'a boat without a tank',
    text: probe([/^ {2}tanks:\n(?: {4}.*\n)+/m.exec(PROBE)![0], '']),
    code: 'submerged-light',
    severity: 'information',
    says: 'Without a ballast tank the boat is 800 g too light to hang neutral under water.',
    figure: ({ submerged }) => (submerged.status === 'light' ? submerged.lack * 1e3 : Number.NaN),
    known: 800,
  },
  {
    boat: 'a weight of 800 g lifted by 30 mm',
    text: probe(battery('150 to 250 mm', '0 mm', '60 mm')),
    code: 'submerged-overturns',
    severity: 'error',
    says: 'Submerged, the boat does not stay upright: its centre of mass lies 2.5 mm above its centre of buoyancy. Lead lower and foam higher cure it.',
    figure: a => neutral(a).bg * 1e3,
    known: BG - (800 * 30) / 2800,
  },
  {
    boat: 'a long slack tank',
    text: probe(kind('kind: vented')),
    code: 'submerged-unstable',
    severity: 'error',
    says: 'Submerged, the boat does not stay level but runs off to 42.1° bow up: its centre of mass hangs 7.4 mm below its centre of buoyancy, and the water running along the tank takes 21.1 mm more than that. Lead lower, foam higher, a shorter tank, one in cells or with a piston cures it.',
    figure: a => neutral(a).bgEffectiveLongitudinal * 1e3,
    known: 35 - (57_000 + 800 * (5 + 800 / 39.6)) / 2800 - along(1),
  },
  {
    boat: 'a slack tank that is too broad, in cells, and a weight lifted by 10 mm',
    text: probe(
      kind(boatText`
        kind: vented
              cells: 4`),
      battery('150 to 250 mm', '0 mm', '40 mm'),
    ),
    code: 'submerged-unstable',
    severity: 'error',
    says: 'Submerged, the boat does not stay level but runs off to 17.4° to starboard: its centre of mass hangs 4.6 mm below its centre of buoyancy, and the water running across the tank takes 0.19 mm more than that. Lead lower, foam higher, a narrower tank or one with a piston cures it.',
    figure: a => neutral(a).bgEffective * 1e3,
    known: 35 - (57_000 + 8000 + 800 * (5 + 800 / 39.6)) / 2800 - ACROSS,
  },
  {
    boat: 'a weight of 800 g moved 2 mm aft',
    text: probe(battery('152 to 252 mm')),
    code: 'submerged-trim',
    says: 'Submerged, the boat hangs bow-light: trim 5.4° bow up, limit 0.5°. 1.5 g of weight in water at one end trims it by 1°.',
    figure: a => neutral(a).trim / degrees,
    known: tilt(1600 / 2800),
  },
  {
    boat: 'the same moved forward, by little more than the limit',
    text: probe(battery('149.81 to 249.81 mm')),
    code: 'submerged-trim',
    says: 'Submerged, the boat hangs stern-light: trim 0.51° bow down, limit 0.5°. 1.5 g of weight in water at one end trims it by 1°.',
    figure: a => neutral(a).trim / degrees,
    known: -tilt((800 * 0.19) / 2800),
  },
  {
    boat: 'a weight of 800 g moved 1 mm to port',
    text: probe(battery('150 to 250 mm', '-1 mm'), ['heel: 1°', 'heel: { surfaced: 9°, submerged: 1° }']),
    code: 'submerged-heel',
    says: 'Submerged, the boat lists to port: heel 2.7° to port, limit 1°.',
    figure: a => neutral(a).heel / degrees,
    known: -tilt(800 / 2800),
  },
  {
    boat: 'a weight of 800 g lifted by 15 mm',
    text: probe(battery('150 to 250 mm', '0 mm', '45 mm')),
    code: 'submerged-bg',
    says: 'Submerged, the boat is touchy: its centre of mass hangs 1.8 mm below its centre of buoyancy, limit 3 mm. Lead lower and foam higher stiffen it.',
    figure: a => neutral(a).bg * 1e3,
    known: BG - (800 * 15) / 2800,
  },
  {
    boat: 'a slack tank in cells',
    text: probe(
      kind(boatText`
        kind: vented
              cells: 4`),
    ),
    code: 'submerged-bg',
    says: 'Submerged, the boat is touchy: its centre of mass hangs 2.7 mm below its centre of buoyancy (7.4 mm before the tank’s free surface), limit 3 mm. Lead lower and foam higher stiffen it.',
    figure: a => neutral(a).bgEffective * 1e3,
    known: 35 - (57_000 + 800 * (5 + 800 / 39.6)) / 2800 - ACROSS,
  },
  {
    boat: '500 g more than it needs',
    text: probe(['mass: 800 g', 'mass: 1300 g']),
    code: 'neutral-fill',
    says: 'Submerged, the boat hangs neutral with its tanks 30 % full (300 ml of water), limits 40 % to 85 %: the tank is larger than the boat needs, or the boat is too heavy.',
    figure: a => neutral(a).fill,
    known: 300 / 990,
  },
  {
    boat: '150 g less than it needs',
    text: probe(['mass: 800 g', 'mass: 650 g']),
    code: 'neutral-fill',
    says: 'Submerged, the boat hangs neutral with its tanks 96 % full (950 ml of water), limits 40 % to 85 %: the tank is too small, or the boat too light: no margin is left.',
    figure: a => neutral(a).fill,
    known: 950 / 990,
  },
  {
    boat: 'a fill that rounds to its limit',
    text: probe(['mass: 800 g', 'mass: 757 g']),
    code: 'neutral-fill',
    says: 'Submerged, the boat hangs neutral with its tanks 85.2 % full (843 ml of water), limits 40 % to 85 %: the tank is too small, or the boat too light: no margin is left.',
    figure: a => neutral(a).fill,
    known: 843 / 990,
  },
];

describe('what the submerged boat does outside its limits', () => {
  it.each(CASES)('$boat: $code', ({ text, code, severity, says, figure, known }) => {
    const analysis = analysed(text);
    const told = submergedOf(analysis);
    expect(told.map(finding => [finding.code, finding.severity, finding.message])).toEqual([
      [code, severity ?? 'warning', says],
    ]);
    expect(figure(analysis)).toBeCloseTo(known, 6);
  });
  it('nothing for the probe, which hangs level', () => {
    expect(submergedOf(analysed(PROBE))).toEqual([]);
  });
});

describe('what one degree of trim takes', () => {
  it('is the moment over half the hull', () => {
    // 2800 g · 6.071 mm · sin 1° = 296.7 g·mm, at 200 mm from midships 1.48 g.
    expect(neutral(analysed(PROBE)).momentToTrimOneDegree * 1e6).toBeCloseTo(2800 * BG * Math.sin(degrees), 6);
  });
});

describe('where it is said', () => {
  it.each([
    ['on the name of the tank', probe(battery('152 to 252 mm')), 'main tank'],
    ['on the hull without a tank', probe([/^ {2}tanks:\n(?: {4}.*\n)+/m.exec(PROBE)![0], '']), 'hull'],
  ])('%s', (_, text, marks) => {
    const analysis = analysed(text);
    expect(submergedOf(analysis).map(finding => marked(analysis, finding))).toEqual([marks]);
  });
});

describe('a file that is not whole', () => {
  it('has no alarms: what it does waits until the part is read', () => {
    const text = probe(battery('152 to 252 mm'), [
      boatText`
        mass: 600 g
            station`,
      boatText`
        mass: 600 mm
            station`,
    ]);
    expect(submergedOf(analysed(text))).toEqual([]);
    expect(submergedOf(analysed(text.replace('600 mm', '600 g'))).length).toBeGreaterThan(0);
    expect(waitingWords(analysed(text))).toBe(
      'Figured without “floor lead”: limits and corrections wait until that is fixed.',
    );
  });
  it('does not ask for a tank that is there but cannot be read', () => {
    expect(submergedOf(analysed(probe(kind('kind: blader'))))).toEqual([]);
  });
  it('of nothing that floats says so, once', () => {
    for (const text of [
      '',
      boatText`
        boat: B
        hull: { length: 90 mm }
      `,
      '# only a comment',
    ]) {
      const told = analysed(text).findings.filter(finding => finding.severity === 'information');
      expect(told.map(finding => finding.message)).toEqual([
        'Nothing in the file floats yet, so there are no figures. Under “hull:” give it a compartment or a shell, and under “payload:” what it carries.',
      ]);
    }
  });
});

describe('a boat too touchy to trim by weight', () => {
  // Half a gram at an end, 200 mm from midships, against 2800 g x 6.071 mm: atan(0.5·200 / (2800·6.071)) = 0.337°.
  const known = Math.atan((0.5 * 200) / (2800 * BG)) / degrees;
  it('is told what half a gram does when that is more than half the limit', () => {
    const touchy = analysed(PROBE).findings.filter(({ code }) => code === 'submerged-touchy');
    expect(touchy.map(({ severity }) => severity)).toEqual(['information']);
    expect(Number(/trims the boat by ([\d.]+)°/.exec(touchy[0]!.message)?.[1])).toBeCloseTo(known, 2);
  });
});
