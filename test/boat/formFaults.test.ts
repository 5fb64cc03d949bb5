import { describe, expect, it } from 'vitest';
import { analysed, fileFindings, marked } from '../helpers/analysed.ts';
import { probe, probeWith } from '../helpers/probe.ts';

/** A thing added to the probe or changed in it, and the one complaint that it makes. */
interface Fault {
  readonly fault: string;
  readonly text: string;
  readonly code: string;
  readonly marks: string;
  readonly says: string;
  readonly without: readonly string[];
}

const part = (rest: string) => probeWith(`{ name: pin, ${rest} }`);
const shell = (rest: string) =>
  probe([
    '  tanks:',
    `  shells:
    - { name: skin, mass: 40 g, ${rest} }
  tanks:`,
  ]);

const FAULTS: readonly Fault[] = [
  {
    fault: 'two forms',
    text: part('mass: 4 g, box: 12 x 12 mm, ball: 20 mm, station: 100 to 120 mm, height: 90 mm'),
    code: 'two-forms',
    marks: '20 mm',
    says: 'This has two forms, “box” and “ball”. Keep one of them, or list both under “forms”.',
    without: ['pin'],
  },
  {
    fault: 'a wet part of unknown volume',
    text: part('mass: 4 g, station: 100 mm, height: 90 mm'),
    code: 'volume-unknown',
    marks: 'pin',
    says: '“pin” lies in the water, but what it displaces cannot be known. Give its material (“material: brass”), its form (“round: 20 mm”), “inWater: 22 g” or “volume: 32 ml”. Or does it lie in a compartment (“in:”)?',
    without: ['pin'],
  },
  {
    fault: 'a wet part of known material but neither mass nor form',
    text: part('material: brass, station: 100 mm, height: 90 mm'),
    code: 'volume-unknown',
    marks: 'pin',
    says: '“pin” lies in the water, but what it displaces cannot be known. Give its mass and material, its form (“round: 20 mm”), “inWater: 22 g” or “volume: 32 ml”. Or does it lie in a compartment (“in:”)?',
    without: ['pin'],
  },
  {
    fault: 'a form without mass or material',
    text: part('round: 6 mm, station: 100 to 120 mm, height: 90 mm'),
    code: 'mass-unknown',
    marks: 'pin',
    says: '“pin” has no mass. Weigh it (“mass: 310 g”), or name its material and the program weighs it by its form.',
    without: ['pin'],
  },
  {
    fault: 'a round of unknown length',
    text: part('mass: 4 g, round: 6 mm, station: 100 mm, height: 90 mm'),
    code: 'length-unknown',
    marks: '100 mm',
    says: 'How long this round is cannot be told. Give a range, such as “station: 200 to 680 mm”, or its mass and material.',
    without: ['pin'],
  },
  {
    fault: 'an upright box of unknown length',
    text: part('mass: 4 g, box: 6 x 6 mm, axis: vertical, station: 100 mm, height: 90 mm'),
    code: 'length-unknown',
    marks: '90 mm',
    says: 'How long this box is cannot be told. Give a range, such as “height: 12 to 60 mm”, or its mass and material.',
    without: ['pin'],
  },
  {
    fault: 'an athwart round of unknown length, without an offset',
    text: part('mass: 4 g, round: 6 mm, axis: athwart, station: 100 mm, height: 90 mm'),
    code: 'length-unknown',
    marks: 'pin',
    says: 'How long this round is cannot be told. Give a range, such as “offset: -20 to 20 mm”, or its mass and material.',
    without: ['pin'],
  },
  {
    fault: 'a round with a range across',
    text: part('mass: 4 g, round: 20 mm, station: 100 to 120 mm, height: 80 to 90 mm'),
    code: 'size-twice',
    marks: '80 to 90 mm',
    says: 'A round is as broad and deep as its diameter; give one figure for the “height” of its axis, not a range.',
    without: ['pin'],
  },
  {
    fault: 'a box with another range across',
    text: part('mass: 4 g, box: 20 x 6 mm, station: 100 to 120 mm, offset: -15 to 15 mm, height: 90 mm'),
    code: 'size-twice',
    marks: '-15 to 15 mm',
    says: 'The box already gives this size; give one figure for the middle of its “offset”, not a range.',
    without: ['pin'],
  },
  {
    fault: 'a profile that turns back',
    text: part('mass: 4 g, profile: [[100, 5], [120, 8], [110, 8]], height: 90 mm'),
    code: 'profile-order',
    marks: '110',
    says: 'Stations of a profile run from bow to stern; point 3 lies forward of the one before it.',
    without: ['pin'],
  },
  {
    fault: 'a profile without length',
    text: part('mass: 4 g, profile: [[100, 5], [100, 8]], height: 90 mm'),
    code: 'profile-order',
    marks: '[[100, 5], [100, 8]]',
    says: 'A profile needs length: its last station must lie aft of its first.',
    without: ['pin'],
  },
  {
    fault: 'a profile of negative radius',
    text: part('mass: 4 g, profile: [[100, -5], [120, 8]], height: 90 mm'),
    code: 'profile-radius',
    marks: '-5',
    says: 'The radii of a profile cannot be negative, nor all nothing.',
    without: ['pin'],
  },
  {
    fault: 'a profile of one point',
    text: part('mass: 4 g, profile: [[100, 5]], height: 90 mm'),
    code: 'wrong-value',
    marks: '[[100, 5]]',
    says: 'A profile needs two points or more: [[0, 0], [40, 31]].',
    without: ['pin'],
  },
  {
    fault: 'a profile with half a point',
    text: part('mass: 4 g, profile: [[100, 5], [120]], height: 90 mm'),
    code: 'wrong-value',
    marks: '[120]',
    says: 'Expected a [station, radius] pair, such as [40, 31].',
    without: ['pin'],
  },
  {
    fault: 'a profile without the height of its axis',
    text: part('mass: 4 g, profile: [[100, 5], [120, 8]]'),
    code: 'missing-key',
    marks: 'pin',
    says: 'A profile needs the “height” of its axis, such as “height: 46 mm”.',
    without: ['pin'],
  },
  {
    fault: 'a compartment without a form',
    text: probe(['      offset: -50 to 50 mm', '']),
    code: 'form-unknown',
    marks: 'hold',
    says: 'The compartment “hold” needs a form: “round: 76 mm” with a station range, a “profile”, or ranges for station, offset and height.',
    without: ['hold'],
  },
  {
    fault: 'a shell without a material',
    text: shell('box: 12 x 12 mm, station: 100 to 120 mm, height: 90 mm'),
    code: 'volume-unknown',
    marks: 'skin',
    says: 'What the wall of “skin” displaces cannot be known without its material, such as “material: fibreglass”, or its weight in water, such as “inWater: 280 g”.',
    without: ['skin'],
  },
  {
    fault: 'a shell without a form',
    text: shell('material: ABS, station: 100 to 120 mm, height: 90 mm'),
    code: 'form-unknown',
    marks: 'skin',
    says: 'The shell “skin” needs a form: “round: 76 mm” with a station range, a “profile”, or ranges for station, offset and height.',
    without: ['skin'],
  },
];

describe('a form that cannot be', () => {
  it.each(FAULTS)('$fault', ({ text, code, marks, says, without }) => {
    const analysis = analysed(text);
    const told = fileFindings(analysis);
    expect(told.map(finding => [finding.code, finding.severity, finding.message])).toEqual([[code, 'error', says]]);
    expect(marked(analysis, told[0]!)).toBe(marks);
    expect(analysis.boat.leftOut).toEqual(without);
  });
});

describe('sizes that a tape reads as the same', () => {
  it.each([
    ['a round', 'mass: 4 g, round: 50 mm, station: 100 to 120 mm, height: 80 to 129.2 mm'],
    ['a box', 'mass: 4 g, box: 50 x 6 mm, station: 100 to 120 mm, offset: -25.3 to 25.1 mm, height: 90 mm'],
  ])('%s whose range is its size is taken', (_, rest) => {
    expect(fileFindings(analysed(part(rest)))).toEqual([]);
  });
});

describe('the rest of the file', () => {
  it('is computed without the entry, and says so', () => {
    const analysis = analysed(part('mass: 40 g, station: 100 mm, height: 90 mm'));
    expect(analysis.bodies.mass).toBeCloseTo(2, 12);
    expect(analysis.surfaced.status === 'afloat' && analysis.surfaced.attitude.draft).toBeCloseTo(0.05, 9);
  });
});
