import { describe, expect, it } from 'vitest';
import type { Analysis } from '../../server/core/analysis/analysis.ts';
import type { SurfacedAfloat } from '../../server/core/conditions/surfaced.ts';
import { conditionOf } from '../../server/core/findings/finding.ts';
import { analysed, marked } from '../helpers/analysed.ts';
import { boatText } from '../helpers/boatText.ts';
import { PROBE, probe, probeWith } from '../helpers/probe.ts';

const degrees = Math.PI / 180;

const surfacedOf = (analysis: Analysis) => analysis.findings.filter(finding => conditionOf(finding) === 'surfaced');

function afloat({ surfaced }: Analysis): SurfacedAfloat {
  if (surfaced.status !== 'afloat') throw new Error(`expected to float, got ${surfaced.status}`);
  return surfaced;
}

/** Exact for a wall-sided box: tan θ·(GM + ½·BM·tan² θ) = lever (Derrett, Ship Stability, p. 130, seen). */
function wallSided(lever: number, gm: number, bm: number): number {
  let tan = lever / gm;
  for (let i = 0; i < 50; i++) tan = lever / (gm + (bm / 2) * tan * tan);
  return Math.atan(tan) / degrees;
}

/*
 * The probe: a box of 400 x 100 mm, 2000 g, 50 mm deep, G 28.5 mm up. KB = 25, BM = b²/12T = 16.667 and l²/12T = 266.667,
 * so GM is 13.167 and 263.167 mm; 40 g sink it by 1 mm.
 */
const GM = 25 + 100 ** 2 / 600 - 28.5;
const GML = 25 + 400 ** 2 / 600 - 28.5;

interface Case {
  readonly boat: string;
  readonly text: string;
  readonly code: string;
  readonly says: string;
  /** The figure behind the sentence, and what it must be by hand. */
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
const trimOf = (a: Analysis) => afloat(a).attitude.trim / degrees;
const heelOf = (a: Analysis) => afloat(a).attitude.heel / degrees;
const draftOf = (a: Analysis) => afloat(a).attitude.draft * 1e3;
const gmOf = (a: Analysis) => afloat(a).gm * 1e3;

const CASES: readonly Case[] = [
  {
    boat: 'a weight of 800 g moved 10 mm aft',
    text: probe(battery('160 to 260 mm')),
    code: 'surfaced-trim',
    says: 'Surfaced, the bow rides 3 mm high: trim 0.9° bow up, limit 0.5°.',
    figure: trimOf,
    known: wallSided(8000 / 2000, GML, 400 ** 2 / 600),
  },
  {
    boat: 'the same moved forward',
    text: probe(battery('140 to 240 mm')),
    code: 'surfaced-trim',
    says: 'Surfaced, the bow rides 3 mm low: trim 0.9° bow down, limit 0.5°.',
    figure: trimOf,
    known: -wallSided(8000 / 2000, GML, 400 ** 2 / 600),
  },
  {
    boat: 'a boat trimmed level where the waterline is painted for bow up',
    text: probe(['waterline: 50 mm', 'waterline: { bow: 47 mm, stern: 53 mm }']),
    code: 'surfaced-trim',
    says: 'Surfaced, the bow rides 3 mm low: trim 0.9° bow down, limit 0.5°.',
    figure: trimOf,
    known: 0,
  },
  {
    boat: 'a boat without a painted waterline',
    text: probe(['  waterline: 50 mm', ''], battery('160 to 260 mm')),
    code: 'surfaced-trim',
    says: 'Surfaced, the boat floats down by the stern: trim 0.9° bow up, limit 0.5°.',
    figure: trimOf,
    known: wallSided(8000 / 2000, GML, 400 ** 2 / 600),
  },
  {
    boat: 'a trim that rounds to its limit',
    text: probe(battery('156 to 256 mm')),
    code: 'surfaced-trim',
    says: 'Surfaced, the bow rides 1.8 mm high: trim 0.52° bow up, limit 0.5°.',
    figure: trimOf,
    known: wallSided(4800 / 2000, GML, 400 ** 2 / 600),
  },
  {
    boat: 'a weight of 800 g moved 2 mm to starboard',
    text: probe(battery('150 to 250 mm', '2 mm')),
    code: 'surfaced-heel',
    says: 'Surfaced, the boat lists to starboard: heel 3.5° to starboard, limit 1°.',
    figure: heelOf,
    known: wallSided(1600 / 2000, GM, 100 ** 2 / 600),
  },
  {
    boat: 'the same to port, by little more than the limit',
    text: probe(battery('150 to 250 mm', '-0.6 mm')),
    code: 'surfaced-heel',
    says: 'Surfaced, the boat lists to port: heel 1.04° to port, limit 1°.',
    figure: heelOf,
    known: -wallSided(480 / 2000, GM, 100 ** 2 / 600),
  },
  {
    boat: '120 g more amidships',
    text: probeWith('{ name: brick, mass: 120 g, in: hold, station: 200 mm, height: 28.5 mm }'),
    code: 'surfaced-draft',
    says: 'Surfaced, the boat floats 3 mm deep at half length, about 120 g too heavy: draft 53 mm, limit 2 mm from the painted waterline.',
    figure: draftOf,
    known: 53,
  },
  {
    boat: '100 g less, spread as before',
    text: probe(['mass: 800 g', 'mass: 700 g']),
    code: 'surfaced-draft',
    says: 'Surfaced, the boat floats 2.5 mm high at half length, about 100 g too light: draft 47.5 mm, limit 2 mm from the painted waterline.',
    figure: draftOf,
    known: 47.5,
  },
  {
    boat: 'a draft that rounds to its limit',
    text: probe(['mass: 800 g', 'mass: 719.2 g']),
    code: 'surfaced-draft',
    says: 'Surfaced, the boat floats 2.02 mm high at half length, about 81 g too light: draft 48 mm, limit 2 mm from the painted waterline.',
    figure: draftOf,
    known: 50 - 80.8 / 40,
  },
  {
    boat: 'a weight of 800 g lifted by 30 mm',
    text: probe(battery('150 to 250 mm', '0 mm', '60 mm')),
    code: 'surfaced-gm',
    says: 'Surfaced, the boat is tender: metacentric height 1.2 mm, limit 3 mm. Weight lower down cures it.',
    figure: gmOf,
    known: GM - (800 * 30) / 2000,
  },
  {
    // A tenth of the tank: 99 g, 5 mm deep over 220 x 90 mm; i/V is 220·90³/12 over 2099 cm3 (i/V: Derrett ch. 20, seen).
    boat: 'a slack tank and a weight lifted by 18 mm',
    text: probe(
      battery('150 to 250 mm', '0 mm', '48 mm'),
      [
        'kind: bladder',
        boatText`
          kind: vented
                fill: 10 %`,
      ],
      ['waterline: 50', 'waterline: 52'],
    ),
    code: 'surfaced-gm',
    says: 'Surfaced, the boat is tender: metacentric height 1.4 mm after 6.4 mm for the free surface in the tank, limit 3 mm. Weight lower down cures it.',
    figure: gmOf,
    known:
      2099 / 80 + 1e4 / (12 * (2099 / 40)) - (57_000 + 800 * 18 + 99 * 7.5) / 2099 - (220 * 90 ** 3) / 12 / 2_099_000,
  },
  {
    boat: '900 g too many',
    text: probe(['mass: 800 g', 'mass: 1700 g']),
    code: 'sinks',
    says: 'On the surface the boat sinks: it weighs 100 g more than all the water it can push aside. Take that much out, or add foam or a larger compartment.',
    figure: a => (a.surfaced.status === 'sinks' ? a.surfaced.excess * 1e3 : Number.NaN),
    known: 100,
  },
];

describe('what the floating boat does outside its limits', () => {
  it.each(CASES)('$boat: $code', ({ text, code, says, figure, known }) => {
    const analysis = analysed(text);
    const told = surfacedOf(analysis);
    expect(told.map(finding => [finding.code, finding.message])).toEqual([[code, says]]);
    expect(told[0]!.severity).toBe(code === 'sinks' ? 'error' : 'warning');
    expect(figure(analysis)).toBeCloseTo(known, 6);
  });
  it('nothing for the probe, which floats as painted', () => {
    expect(surfacedOf(analysed(PROBE))).toEqual([]);
  });
});

describe('a boat that does not stay upright', () => {
  it.each([
    // G = (600·35 + 800·66 + 600·66)/2000 = 56.7 mm, M 41.667 mm up.
    [
      'rolls over',
      probe(battery('150 to 250 mm', '0 mm', '66 mm'), ['height: 20 mm', 'height: 66 mm']),
      'On the surface the boat does not stay upright: let go, it rolls over and floats keel up. Upright its centre of mass lies 15 mm above its metacentre. Put weight lower or buoyancy higher.',
    ],
  ])('%s, and it is said by how much', (_, text, says) => {
    const analysis = analysed(text);
    expect(surfacedOf(analysis).map(finding => [finding.code, finding.severity, finding.message])).toEqual([
      ['overturns', 'error', says],
    ]);
    const { surfaced } = analysis;
    expect(surfaced.status === 'overturns' && surfaced.gmUpright * 1e3).toBeCloseTo(25 + 1e4 / 600 - 56.7, 6);
  });
});

describe('where it is said', () => {
  it.each([
    ['on the painted waterline', probe(battery('160 to 260 mm')), 'waterline'],
    ['on the payload where none is painted', probe(['  waterline: 50 mm', ''], battery('160 to 260 mm')), 'payload'],
    ['on the payload for a boat that sinks', probe(['mass: 800 g', 'mass: 1700 g']), 'payload'],
    [
      'on the hull of a boat that carries nothing',
      boatText`
        boat: B
        hull:
          length: 400 mm
          compartments: [{ name: c, mass: 9 kg, station: 0 to 400 mm, offset: -50 to 50 mm, height: 0 to 70 mm }]
      `,
      'hull',
    ],
  ])('%s', (_, text, marks) => {
    const analysis = analysed(text);
    expect(surfacedOf(analysis).map(finding => marked(analysis, finding))).toEqual([marks]);
  });
});
