import { describe, expect, it } from 'vitest';
import { isInside } from '../../schema/path.ts';
import { analysed, marked } from '../helpers/analysed.ts';
import { boatText } from '../helpers/boatText.ts';
import { plainState } from '../helpers/plainState.ts';
import { PROBE } from '../helpers/probe.ts';

const DEGREE = Math.PI / 180;

/** The probe with one trial, a line of YAML. */
const tried = (trial: string) =>
  analysed(boatText`
    ${PROBE}trials:
      - ${trial}
  `);
const only = (trial: string) => tried(trial).trials[0]!;

describe('readings in SI, with what they are good for', () => {
  // Common practice, no source: 1.5 mm, 0.5°, 3 %, a jug 2 % and 5 ml at least.
  it.each([
    ['{ condition: surfaced, marks: [{ station: 60 mm, height: 49 mm }] }', 'mark', 0.049, 0.0015],
    ['{ condition: surfaced, marks: [{ station: 6 cm, height: 49 mm ± 1 mm }] }', 'mark', 0.049, 0.001],
    ['{ condition: surfaced, freeboard: [{ station: 200 mm, height: 2 cm, of: hold }] }', 'freeboard', 0.02, 0.0015],
    ['{ condition: surfaced, heel: -1° ± 0.2° }', 'heel', -DEGREE, 0.2 * DEGREE],
    ['{ condition: surfaced, trim: 2 }', 'trim', 2 * DEGREE, 0.5 * DEGREE],
    ['{ condition: submerged, fill: 63 % }', 'fill', 0.63, 0.03],
    ['{ condition: submerged, water: 400 ml }', 'water', 4e-4, 8e-6],
    ['{ condition: submerged, water: 100 ml }', 'water', 1e-4, 5e-6],
    ['{ condition: submerged, level: 31 mm, tank: main tank }', 'level', 0.031, 0.0015],
    ['{ condition: bench, scales: [{ reads: 1746 g }] }', 'scale', 1.746, 0.00873],
    ['{ condition: bench, scales: [{ reads: 120 g }] }', 'scale', 0.12, 0.001],
    ['{ condition: bench, balance: 212 mm }', 'balance', 0.212, 0.001],
    ['{ condition: hung, fill: 100 %, hooks: [{ reads: 43 g }] }', 'hook', 0.043, 0.002],
    // A jug of 400 ml leaves 8 ml open: √(2² + 8²) g.
    ['{ condition: hung, water: 400 ml, hooks: [{ reads: 43 g }] }', 'hook', 0.043, Math.hypot(0.002, 0.008)],
    ['{ condition: inclining, mass: 50 g, moved: 40 mm, heel: 4.2° ± 0.2° }', 'tilt', 4.2 * DEGREE, 0.2 * DEGREE],
    ['{ condition: inclining, shifts: [{ mass: 50 g, moved: -40 mm, heel: -4° }] }', 'tilt', -4 * DEGREE, 0.5 * DEGREE],
  ])('%s', (trial, of, value, sigma) => {
    const analysis = tried(trial);
    expect(analysis.file.findings).toEqual([]);
    const { readings } = analysis.trials[0]!;
    expect(readings.map(reading => reading.of)).toEqual([of]);
    expect(readings[0]!.value).toBeCloseTo(value, 12);
    expect(readings[0]!.sigma).toBeCloseTo(sigma, 12);
  });
  it('what was left in the tank afloat is no reading but part of the day', () => {
    const trial = only('{ condition: surfaced, heel: 0°, water: 40 ml }');
    expect(trial.readings.map(({ of }) => of)).toEqual(['heel']);
    expect([trial.left?.of, trial.left?.value]).toEqual(['water', 4e-5]);
  });
  it('pieces on board for the day are read as parts, the water of the day as water', () => {
    const trial = only(
      '{ date: 2026-05-02, condition: surfaced, heel: 0°, pool: { density: 1010 kg/m3 }, note: calm, aboard: [{ name: strip, material: lead, mass: 60 g, station: 70 mm, height: -4 mm }] }',
    );
    expect([trial.name, trial.date, trial.note, trial.water?.density]).toEqual([
      '2026-05-02',
      '2026-05-02',
      'calm',
      1010,
    ]);
    expect(trial.aboard.map(({ entry: { name, mass, centroid } }) => [name, mass, centroid[2]])).toEqual([
      ['strip', 0.06, -0.004],
    ]);
  });
  it('two supports share what their stations leave open: the careful side', () => {
    // 0.5 mm of each in 200 mm: 1.5 and 0.5 g, together √2.5, and √2 of that.
    const { readings } = only(
      '{ condition: bench, scales: [{ station: 100 mm, reads: 600 g ± 1 g }, { station: 300 mm, reads: 200 g ± 2 g }] }',
    );
    expect(readings.map(({ sigma }) => sigma * 1e3)).toEqual([
      expect.closeTo(Math.hypot(1, Math.sqrt(5)), 9),
      expect.closeTo(Math.hypot(2, Math.sqrt(5)), 9),
    ]);
  });
  it('tanks are empty on the bench unless it says otherwise, and known to be', () => {
    const left = (trial: string) => {
      const { of, value, sigma } = only(trial).left!;
      return [of, value, sigma];
    };
    expect(left('{ condition: bench, balance: 212 mm }')).toEqual(['fill', 0, 0]);
    expect(left('{ condition: hung, fill: 100 %, hooks: [{ reads: 43 g }] }')).toEqual(['fill', 1, 0]);
    expect(left('{ condition: hung, fill: 80 %, hooks: [{ reads: 43 g }] }')).toEqual(['fill', 0.8, 0.03]);
  });
  it('what is struck out is a reading still', () => {
    const struck = (trial: string) => only(trial).readings.map(({ of, isSlip }) => [of, isSlip]);
    expect(
      struck(
        '{ condition: surfaced, trim: 1°, heel: 0°, slips: [trim], marks: [{ station: 60 mm, height: 49 mm, slip: true }] }',
      ),
    ).toEqual([
      ['mark', true],
      ['trim', true],
      ['heel', false],
    ]);
    expect(struck('{ condition: submerged, fill: 60 %, slips: [fill] }')).toEqual([['fill', true]]);
    expect(struck('{ condition: bench, balance: 212 mm, scales: [{ reads: 2 kg }], slips: [balance] }')).toEqual([
      ['scale', false],
      ['balance', true],
    ]);
    expect(only('{ condition: surfaced, heel: 0°, fill: 10 %, slips: [fill] }').left).toBeNull();
  });
  it('a trial is called by its place in the list when it has no date', () => {
    expect(only('{ condition: surfaced, heel: 0° }').name).toBe('trial 1');
  });
});

describe('what cannot be is told on its own characters and left out', () => {
  it.each([
    [
      '{ condition: surfaced, heel: 0°, marks: [{ station: 500 mm, height: 49 mm }] }',
      'trial-impossible',
      '500 mm',
      'The hull is 400 mm long, so nothing can be read at this station. Stations count from the bow tip.',
    ],
    [
      '{ condition: submerged, trim: 0°, fill: 63 %, water: 360 ml }',
      'trial-impossible',
      '360 ml',
      'The water in the tanks is given twice, as “fill” and as “water”. Keep the one that was read; the other is left out.',
    ],
    [
      '{ condition: submerged, trim: 0°, water: 1100 ml }',
      'trial-impossible',
      '1100 ml',
      'More water than the tank holds, which is 990 ml by the file. Check the reading, and the tank’s size.',
    ],
    [
      '{ condition: submerged, trim: 0°, level: 61 mm }',
      'trial-impossible',
      '61 mm',
      '“main tank” is only 50 mm high. The level is measured from the tank’s lowest point.',
    ],
    [
      '{ condition: submerged, trim: 0°, level: 31 mm, tank: aft tank }',
      'trial-impossible',
      'aft tank',
      'There is no tank “aft tank”.',
    ],
    [
      '{ condition: bench, scales: [{ station: 60 mm, reads: 800 g }] }',
      'trial-impossible',
      '60 mm',
      'One scale at a station tells nothing by itself: the rest of the weight was somewhere else. Give the other scale too; or leave the station out, if the whole boat was on this one: it then weighs the boat.',
    ],
    [
      '{ condition: bench, balance: 200 mm, scales: [{ station: 60 mm, reads: 8 g }, { station: 160 mm, reads: 8 g }, { station: 260 mm, reads: 8 g }] }',
      'trial-impossible',
      '[{ station: 60 mm, reads: 8 g }, { station: 160 mm, reads: 8 g }, { station: 260 mm, reads: 8 g }]',
      'How a boat shares its weight among 3 scales hangs on how high each of them is to a hair, so statics cannot tell what each should show. Use two, or one without a station.',
    ],
    [
      '{ condition: hung, fill: 100 %, hooks: [{ reads: 190 g }, { station: 60 mm, reads: 8 g }, { station: 60 mm, reads: 8 g }] }',
      'trial-impossible',
      '60 mm',
      'Two spring balances at one station tell no more than one. Set them well apart, near the ends of the boat.',
    ],
    [
      '{ condition: hung, hooks: [{ reads: 190 g }] }',
      'trial-impossible',
      'condition: hung',
      'A boat that hangs under water weighs there as much as its tanks make it: say how full they were, such as “fill: 100 %”.',
    ],
    [
      '{ condition: bench, balance: 500 mm }',
      'trial-impossible',
      '500 mm',
      'The hull is 400 mm long, so nothing can be read at this station. Stations count from the bow tip.',
    ],
    [
      '{ condition: bench, trim: 1°, balance: 200 mm }',
      'trial-reading-unused',
      'trim',
      '“trim” is nothing that a bench trial tells, and is left out. Here belong: scales, balance, fill, water, level, tank.',
    ],
    [
      '{ condition: surfaced, heel: 0°, freeboard: [{ station: 200 mm, height: 2 cm, of: lid }] }',
      'trial-impossible',
      'lid',
      'There is no shell or compartment “lid” to read a freeboard to.',
    ],
    [
      '{ condition: surfaced, heel: 0°, freeboard: [{ station: 410 mm, height: 2 cm }] }',
      'trial-impossible',
      '410 mm',
      'No shell or compartment reaches this station, so there is no freeboard to read here.',
    ],
    [
      '{ condition: surfaced, heel: 0°, trim: 88° }',
      'trial-impossible',
      '88°',
      'A boat that lies over by more than 60° is not in trim enough to be read. Give the angle in degrees from level, such as 2°.',
    ],
    [
      '{ condition: inclining, shifts: [{ mass: 50 g, moved: 40 mm, heel: 4° }, { mass: 50 g, moved: -40 mm, heel: 4° }] }',
      'trial-impossible',
      '4°',
      'The weight was moved to one side and the boat is said to have heeled to the other, or not at all. To starboard both are positive, to port both negative.',
    ],
    [
      '{ condition: inclining, mass: 50 g, heel: 4° }',
      'trial-impossible',
      'condition: inclining',
      'An inclining trial needs the weight that was moved, how far, and the heel that it made: “mass: 50 g”, “moved: 40 mm”, “heel: 4.2°”; or several of them under “shifts:”.',
    ],
    [
      '{ condition: submerged, trim: 0°, marks: [{ station: 60 mm, height: 49 mm }] }',
      'trial-reading-unused',
      'marks',
      '“marks” is nothing that a submerged trial tells, and is left out. Here belong: heel, trim, fill, water, level, tank, proud.',
    ],
    [
      '{ condition: submerged }',
      'trial-empty',
      'condition: submerged',
      'This trial has no readings yet, such as “fill: 63 %” and “trim: 2°”.',
    ],
    [
      '{ condition: surfaced, heel: 0°, aboard: [{ name: coin, mass: 8 g, station: 90 mm, height: 9 mm, in: hole }] }',
      'unknown-compartment',
      'hole',
      'There is no compartment “hole”. Did you mean “hold”?',
    ],
    [
      '{ condition: surfaced, heel: 3 mm }',
      'wrong-quantity',
      'mm',
      'Expected an angle, e.g. 2°, but “mm” is a unit of length.',
    ],
    [
      '{ condition: surfaced, hell: 3° }',
      'unknown-key',
      'hell',
      'There is no key “hell” in a trial. Did you mean “heel”?',
    ],
    [
      '{ heel: 3° }',
      'missing-key',
      'heel: 3°',
      'A trial needs “condition”, such as “condition: surfaced”. It is one of “surfaced”, “submerged”, “inclining”, “bench”, “hung”.',
    ],
  ])('%s', (trial, code, marks, message) => {
    const analysis = tried(trial);
    const told = analysis.file.findings;
    expect(told.map(finding => [finding.code, finding.message])).toEqual([[code, message]]);
    expect(marked(analysis, told[0]!)).toBe(marks);
    const at = 'path' in told[0]!.place ? told[0]!.place.path : [];
    const readings = analysis.trials[0]?.readings ?? [];
    expect(readings.filter(({ path }) => isInside(path, at) && at.length > 2)).toEqual([]);
  });
  it('and spoils no figure of the boat, nor its corrections', () => {
    const analysis = tried('{ condition: surfaced, heel: 3 mm }');
    expect(analysis.file.isFaulty).toBe(false);
    expect(plainState(analysis.surfaced)).toEqual(plainState(analysed(PROBE).surfaced));
  });
});
