import { describe, expect, it } from 'vitest';
import type { Part } from '../../server/core/boat/boat.ts';
import { boundsOf, solidOf } from '../../server/core/geometry/cut/solids.ts';
import type { Vec3 } from '../../server/core/geometry/form/vector.ts';
import { analysed, fileFindings } from '../helpers/analysed.ts';
import { probeWith } from '../helpers/probe.ts';

/** The part of a line added to the probe, which must have no fault. */
function partOf(line: string): Part {
  const analysis = analysed(probeWith(line));
  expect(fileFindings(analysis)).toEqual([]);
  return analysis.boat.payload.at(-1)!;
}

const inMm = (p: Vec3): number[] => p.map(metres => Math.round(metres * 1e7) / 1e4 + 0);

/** A wet part, and what it must come to: volume in mm3, centroid and corners in mm, worked out by hand. */
interface Case {
  readonly form: string;
  readonly line: string;
  readonly volume: number;
  readonly centroid: readonly number[];
  readonly from: readonly number[];
  readonly to: readonly number[];
  readonly worked?: readonly string[];
}

const frustum = (d1: number, d2: number, h: number) => (Math.PI * h * (d1 * d1 + d1 * d2 + d2 * d2)) / 12;
/** Distance of a frustum's centroid from its first end: h/4·(R² + 2Rr + 3r²)/(R² + Rr + r²), any table (from memory). */
const frustumCentre = (d1: number, d2: number, h: number) =>
  ((h / 4) * (d1 * d1 + 2 * d1 * d2 + 3 * d2 * d2)) / (d1 * d1 + d1 * d2 + d2 * d2);

const CASES: readonly Case[] = [
  {
    form: 'ranges on all three axes: a box',
    line: '{ name: x, mass: 9 g, station: 100 to 140 mm, offset: -10 to 20 mm, height: 80 to 110 mm }',
    volume: 40 * 30 * 30,
    centroid: [120, 5, 95],
    from: [100, -10, 80],
    to: [140, 20, 110],
  },
  {
    form: 'one size missing: solved from mass and material',
    // 340.2 g of lead of 11340 kg/m3 (handbook, from memory) are 30 ml; 250 x 6 mm leave 20 mm.
    line: '{ name: x, material: lead, mass: 340.2 g, station: 50 to 300 mm, height: 80 to 86 mm }',
    volume: 30_000,
    centroid: [175, 0, 83],
    from: [50, -10, 80],
    to: [300, 10, 86],
    worked: ['breadth 20 mm'],
  },
  {
    form: 'two sizes missing: made equal',
    line: '{ name: x, material: lead, mass: 113.4 g, station: 100 to 200 mm, offset: 30 mm, height: 85 mm }',
    volume: 10_000,
    centroid: [150, 30, 85],
    from: [100, 25, 80],
    to: [200, 35, 90],
    worked: ['breadth 10 mm', 'depth 10 mm'],
  },
  {
    form: 'two sizes missing: from a dunked volume',
    line: '{ name: x, mass: 4 g, volume: 10 ml, station: 200 mm, offset: -50 to 50 mm, height: 85 mm }',
    volume: 10_000,
    centroid: [200, 0, 85],
    from: [195, -50, 80],
    to: [205, 50, 90],
    worked: ['length 10 mm', 'depth 10 mm'],
  },
  {
    form: 'no size at all: a ball of the volume',
    line: '{ name: x, mass: 4 g, volume: 14.13717 ml, station: 200 mm, offset: 4 mm, height: 95 mm }',
    // π/6·30³ mm3 = 14137.17 mm3.
    volume: 14137.17,
    centroid: [200, 4, 95],
    from: [185, -11, 80],
    to: [215, 19, 110],
    worked: ['taken as a ball of 30 mm'],
  },
  {
    form: 'a ball',
    line: '{ name: x, mass: 4 g, ball: 30 mm, station: 200 mm, height: 95 mm }',
    volume: (Math.PI / 6) * 27_000,
    centroid: [200, 0, 95],
    from: [185, -15, 80],
    to: [215, 15, 110],
  },
  {
    form: 'a round bar along the boat',
    line: '{ name: x, mass: 4 g, round: 20 mm, station: 100 to 160 mm, height: 90 mm }',
    volume: Math.PI * 100 * 60,
    centroid: [130, 0, 90],
    from: [100, -10, 80],
    to: [160, 10, 100],
  },
  {
    form: 'a round bar athwart',
    line: '{ name: x, mass: 4 g, round: 20 mm, axis: athwart, station: 130 mm, offset: -40 to 20 mm, height: 90 mm }',
    volume: Math.PI * 100 * 60,
    centroid: [130, -10, 90],
    from: [120, -40, 80],
    to: [140, 20, 100],
  },
  {
    form: 'a round bar upright',
    line: '{ name: x, mass: 4 g, round: 20 mm, axis: vertical, station: 130 mm, offset: 5 mm, height: 80 to 140 mm }',
    volume: Math.PI * 100 * 60,
    centroid: [130, 5, 110],
    from: [120, -5, 80],
    to: [140, 15, 140],
  },
  {
    form: 'a cone along the boat, its ends in the order of the axis',
    line: '{ name: x, mass: 4 g, round: 40 to 10 mm, station: 100 to 160 mm, height: 100 mm }',
    volume: frustum(40, 10, 60),
    centroid: [100 + frustumCentre(40, 10, 60), 0, 100],
    from: [100, -20, 80],
    to: [160, 20, 120],
  },
  {
    form: 'a cone athwart, from port to starboard',
    line: '{ name: x, mass: 4 g, round: 40 to 0 mm, axis: athwart, station: 130 mm, offset: -30 to 30 mm, height: 100 mm }',
    volume: frustum(40, 0, 60),
    centroid: [130, -15, 100],
    from: [110, -30, 80],
    to: [150, 30, 120],
  },
  {
    form: 'a cone upright, from below to above',
    line: '{ name: x, mass: 4 g, round: 0 to 40 mm, axis: vertical, station: 130 mm, height: 80 to 140 mm }',
    volume: frustum(0, 40, 60),
    centroid: [130, 0, 125],
    from: [110, -20, 80],
    to: [150, 20, 140],
  },
  {
    form: 'a round bar whose length follows from mass and material',
    // 8.5 g of brass of 8500 kg/m3 (handbook, from memory) are 1 ml: 1000 mm3 over π·5² mm2 are 12.732 mm.
    line: '{ name: x, material: brass, mass: 8.5 g, round: 10 mm, station: 130 mm, height: 90 mm }',
    volume: 1000,
    centroid: [130, 0, 90],
    from: [130 - 20 / Math.PI, -5, 85],
    to: [130 + 20 / Math.PI, 5, 95],
    worked: ['length 12.7 mm'],
  },
  {
    form: 'a box along the boat: breadth x depth',
    line: '{ name: x, mass: 4 g, box: 40 x 12 mm, station: 100 to 160 mm, height: 90 mm }',
    volume: 40 * 12 * 60,
    centroid: [130, 0, 90],
    from: [100, -20, 84],
    to: [160, 20, 96],
  },
  {
    form: 'a box athwart: length x depth',
    line: '{ name: x, mass: 4 g, box: 40 x 12 mm, axis: athwart, station: 130 mm, offset: -20 to 40 mm, height: 90 mm }',
    volume: 40 * 12 * 60,
    centroid: [130, 10, 90],
    from: [110, -20, 84],
    to: [150, 40, 96],
  },
  {
    form: 'a box upright: length x breadth',
    line: '{ name: x, mass: 4 g, box: 40 x 12 mm, axis: vertical, station: 130 mm, height: 80 to 140 mm }',
    volume: 40 * 12 * 60,
    centroid: [130, 0, 110],
    from: [110, -6, 80],
    to: [150, 6, 140],
  },
  {
    form: 'a profile: cone, cylinder and flat end',
    line: '{ name: x, mass: 4 g, profile: [[100, 0], [130, 15], [190, 15]], offset: 5 mm, height: 100 mm }',
    volume: frustum(0, 30, 30) + Math.PI * 225 * 60,
    centroid: [
      (frustum(0, 30, 30) * 122.5 + Math.PI * 225 * 60 * 160) / (frustum(0, 30, 30) + Math.PI * 225 * 60),
      5,
      100,
    ],
    from: [100, -10, 85],
    to: [190, 20, 115],
  },
];

describe('what a part in the water displaces, and where', () => {
  it.each(CASES)('$form', ({ line, volume, centroid, from, to, worked }) => {
    const part = partOf(line);
    expect(part.volume * 1e9).toBeCloseTo(volume, 1);
    for (const axis of [0, 1, 2] as const) expect(part.centroid[axis] * 1e3).toBeCloseTo(centroid[axis]!, 3);
    expect(inMm(part.from)).toEqual(from.map(mm => Math.round(mm * 1e4) / 1e4));
    expect(inMm(part.to)).toEqual(to.map(mm => Math.round(mm * 1e4) / 1e4));
    expect(part.worked).toEqual(worked ?? []);
    // The body that is cut by the water is the one that was described.
    expect(solidOf(part.form!).volume * 1e9).toBeCloseTo(volume, 1);
    expect(inMm(boundsOf(part.form!).from)).toEqual(inMm(part.from));
  });
});

describe('where a part weighs', () => {
  it('is where it balances, on the axes that are named', () => {
    const line =
      '{ name: x, mass: 4 g, box: 40 x 12 mm, station: 100 to 160 mm, height: 90 mm, balance: { station: 118 mm } }';
    expect(inMm(partOf(line).centroid)).toEqual([118, 0, 90]);
  });
  it('is the middle of its room inside a compartment, where no form is needed and nothing displaces', () => {
    const part = partOf('{ name: x, mass: 4 g, in: hold, station: 100 to 160 mm, offset: 12 mm, height: 30 mm }');
    expect(inMm(part.centroid)).toEqual([130, 12, 30]);
    expect([part.volume, part.form]).toEqual([0, null]);
  });
  it('a form inside a compartment gives the mass and the middle, and still displaces nothing', () => {
    const part = partOf(
      '{ name: x, material: brass, in: hold, round: 0 to 40 mm, station: 40 to 100 mm, height: 30 mm }',
    );
    // 8500 kg/m3 (handbook, from memory); a cone's centroid lies a quarter of its height from the base.
    expect(part.mass).toBeCloseTo(8500 * frustum(0, 40, 60) * 1e-9, 9);
    expect(inMm(part.centroid)).toEqual([85, 0, 30]);
    expect(part.volume).toBe(0);
  });
});
