import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { inOtherWater } from '../../server/core/analysis/analyse.ts';
import type { Analysis } from '../../server/core/analysis/analysis.ts';
import { waterOfKind } from '../../server/core/boat/readWater.ts';
import { applyChanges, splice } from '../../server/core/text/editing/edit.ts';
import type { Uncertainty } from '../../server/core/uncertainty/spread.ts';
import type { Uncertainties } from '../../server/core/uncertainty/uncertainties.ts';
import { heard } from '../helpers/analysed.ts';
import { boatText, textLines } from '../helpers/boatText.ts';

const dunlinText = readFileSync(new URL('../../samples/dunlin.boat.yaml', import.meta.url), 'utf8');

/** A tube with a battery that was written 20 mm too far forward, read with care: what it shows is that of the battery aft. */
const strayed = (trials: string) =>
  boatText`
  boat: Strayed
  hull:
    length: 600 mm
    compartments:
      - { name: tube, mass: 340 g ± 1 g, round: 70 mm ± 0.1 mm, station: 60 to 480 mm ± 0.3 mm, offset: 0 mm ± 0.2 mm, height: 35 mm ± 0.2 mm }
    tanks:
      - { name: tank, in: tube, round: 52 mm ± 0.1 mm, station: 210 to 330 mm ± 0.3 mm, offset: 0 mm ± 0.2 mm, height: 36 mm ± 0.2 mm, kind: piston }
  payload:
    - { name: battery, mass: 420 g ± 1 g, station: 90 to 170 mm ± 0.5 mm, offset: 0 mm ± 0.3 mm, height: 18 mm ± 0.5 mm, in: tube }
    - { name: keel lead, mass: 600 g ± 1 g, station: 284 mm ± 0.5 mm, offset: 0 mm ± 0.3 mm, height: 6 mm ± 0.3 mm, in: tube }
    - { name: motor, mass: 60 g ± 0.5 g, station: 440 mm ± 0.5 mm, offset: 0 mm ± 0.3 mm, height: 30 mm ± 0.5 mm, in: tube }
  trials:
`.concat(trials);

const degrees = (angle: number): string => ((angle * 180) / Math.PI).toFixed(2);

/** Where a boat lies on the surface and under water, and the height of the water at a station of its 600 mm, mm. */
function lying({ surfaced, submerged }: Analysis) {
  if (surfaced.status !== 'afloat' || submerged.status !== 'neutral') throw new Error('it must float and hang');
  const { draftBow, draftStern } = surfaced;
  const mark = (station: number, slip = 0): string =>
    ((draftBow + (draftStern - draftBow) * (station / 600)) * 1000 + slip).toFixed(2);
  return { surfaced, submerged, mark };
}

/** The readings that a boat would have shown, exact to the digits written. */
function shownBy(analysis: Analysis): string {
  const { surfaced, submerged, mark } = lying(analysis);
  return boatText`
    - { condition: surfaced, marks: [{ station: 80 mm, height: ${mark(80)} mm ± 1 mm }, { station: 460 mm, height: ${mark(460)} mm ± 1 mm }], heel: ${degrees(surfaced.attitude.heel)}° ± 0.5° }
    - { condition: submerged, fill: ${(submerged.fill * 100).toFixed(2)} % ± 1 %, trim: ${degrees(submerged.trim)}° ± 0.5°, heel: 0° ± 0.5° }
  `.replace(/^/gm, '  ');
}

const none = strayed('').replace(textLines(['trials:']), '');
const truth = heard(none.replace('station: 90 to 170 mm', 'station: 110 to 190 mm'));
const battery = heard(strayed(shownBy(truth)));
const dunlin = heard(dunlinText);

const figuresOf = (analysis: Analysis): readonly (readonly [string, Uncertainty])[] =>
  Object.entries(analysis.uncertainties!.conditions).flatMap(([condition, figures]) =>
    Object.entries(figures!).map(([name, uncertainty]) => [`${condition} ${name}`, uncertainty!] as const),
  );
const verdictOf = (analysis: Analysis) => analysis.learned!.verdict!;

const taking = (analysis: Analysis, n: number): Analysis => {
  const { changes } = verdictOf(analysis).offers[n]!;
  return heard(splice(analysis.syntax.text, applyChanges(analysis.syntax, changes)!));
};

describe('taking an offer changes no figure with the trials', () => {
  const cases = [
    ['Dunlin', dunlin],
    ['a battery elsewhere', battery],
  ] as const;
  it.each(
    cases.flatMap(([name, boat]) => verdictOf(boat).offers.map(({ title }, n) => [name, title, boat, n] as const)),
  )('%s: %s', (_, __, boat, n) => {
    const after = taking(boat, n);
    expect(after.file.findings.filter(({ severity }) => severity === 'error')).toEqual([]);
    const before = new Map(figuresOf(boat));
    for (const [name, { value, sigma }] of figuresOf(after)) {
      const was = before.get(name)!;
      expect(Math.abs(value - was.value), name).toBeLessThan(was.sigma / 10);
      expect(Math.abs(sigma / was.sigma - 1), name).toBeLessThan(0.1);
    }
    const [first] = verdictOf(boat).told;
    expect(verdictOf(after).told[0]!.odds).toBeCloseTo(first!.odds, 1);
  });
});

describe('a part elsewhere', () => {
  it('is offered to be written where it lies, 20 mm further aft', () => {
    const told = verdictOf(battery).told.find(({ causes }) =>
      causes.some(
        cause => cause.kind === 'elsewhere' && cause.axis === 'station' && cause.input.entryName === 'battery',
      ),
    );
    expect(told!.odds).toBeGreaterThan(0.05);
    const n = verdictOf(battery).offers.findIndex(({ changes }) =>
      changes.some(
        change =>
          change.kind === 'add-key' && change.path.join(' ') === 'payload 0' && change.text.startsWith('{ station'),
      ),
    );
    const after = taking(battery, n);
    const line = after.syntax.text.split('\n').find(each => each.includes('name: battery'))!;
    expect(line).toMatch(
      /station: 1(09|10|11)(\.\d)? to 1(89|90|91)(\.\d)? mm ± \d(\.\d+)? mm, .*written: \{ station: 90 to 170 mm ± 0\.5 mm \}, learned: true/,
    );
    expect(after.findings.map(({ code }) => code)).not.toContain('trial-differs');
  });
});

/** A boat low at the bow, its deck awash there; what is aboard besides, and its trials. */
const low = (aboard: readonly string[], trials: readonly string[]) =>
  boatText`
  boat: Low
  hull:
    length: 600 mm
    shells:
      - { name: hull, mass: 300 g ± 1 g, density: 1600 kg/m3 ± 20 kg/m3, height: 40 mm ± 0.2 mm, profile: [[0, 0], [30, 22], [90, 36], [160, 40], [420, 40], [540, 22], [600, 0]] }
      - { name: casing, material: ABS, density: 1050 kg/m3 ± 10 kg/m3, mass: 40 g ± 0.5 g, station: 210 to 280 mm ± 0.5 mm, offset: -9 to 9 mm ± 0.3 mm, height: 80 to 110 mm ± 0.5 mm }
    compartments:
      - { name: tube, mass: 260 g ± 1 g, round: 68 mm ± 0.1 mm, station: 140 to 440 mm ± 0.3 mm, offset: 0 mm ± 0.2 mm, height: 40 mm ± 0.2 mm }
    tanks:
      - { name: tank, in: tube, round: 54 mm ± 0.1 mm, station: 260 to 350 mm ± 0.3 mm, offset: 0 mm ± 0.3 mm, height: 40 mm ± 0.3 mm, kind: piston }
  payload:
    - { name: battery, mass: 210 g ± 0.5 g, station: 150 to 230 mm ± 0.5 mm, offset: 0 mm ± 0.3 mm, height: 24 mm ± 0.5 mm, in: tube }
    - { name: motor, mass: 150 g ± 0.5 g, station: 410 mm ± 0.5 mm, offset: 0 mm ± 0.3 mm, height: 38 mm ± 0.5 mm, in: tube }
    - { name: keel lead, mass: 220 g ± 1 g, material: lead, station: 300 mm ± 0.5 mm, offset: 0 mm ± 0.3 mm, height: 4 mm ± 0.3 mm }
`.concat(textLines([...aboard, ...(trials.length > 0 ? ['trials:', ...trials] : [])]));

it('a slip of the tape and a weight that nobody wrote down, at once, do not swamp the readings that are right', () => {
  const forgotten = '  - { name: forgotten, mass: 45 g, station: 230 mm, offset: 8 mm, height: 30 mm, in: tube }';
  const { surfaced, submerged, mark } = lying(heard(low([forgotten], [])));
  const read = heard(
    low(
      [],
      [
        `  - { condition: surfaced, marks: [{ station: 50 mm, height: ${mark(50)} mm ± 1 mm }, { station: 550 mm, height: ${mark(550, 10)} mm ± 1 mm }], heel: ${degrees(surfaced.attitude.heel)}° }`,
        `  - { condition: submerged, fill: ${(100 * submerged.fill).toFixed(2)} % ± 2 %, trim: ${degrees(submerged.trim)}°, heel: ${degrees(submerged.heel)}° }`,
      ],
    ),
  );
  const { slips, offers } = verdictOf(read);
  expect(slips.map(({ reading }) => 'station' in reading && reading.station)).toEqual([0.55]);
  expect(offers[1]!.title).toMatch(/“unlisted weight”: 4[0-9] g about 2[23]\d mm aft/);
});

it('without trials nothing changes: figures and uncertainties are those of the file', () => {
  const analysis = heard(none);
  expect(analysis.uncertainties).toBe(analysis.filedUncertainties!);
  const { boat, surfaced, submerged } = analysis;
  expect(boat).toBe(analysis.boat);
  expect(surfaced).toBe(analysis.surfaced);
  expect(submerged).toBe(analysis.submerged);
});

describe('marks that are read again and again', () => {
  /** A lighter whose lead is known to 40 g, which lies as its file has it. */
  const repeated = (times: number) =>
    heard(boatText`
      boat: Repeated
      hull:
        length: 400 mm
        compartments:
          - { name: hold, mass: 800 g ± 1 g, box: 100 x 70 mm, station: 0 to 400 mm, offset: 0 mm, height: 35 mm }
      payload:
        - { name: lead, mass: 1200 g ± 40 g, station: 200 mm, offset: 0 mm ± 0.3 mm, height: 6 mm ± 0.3 mm, in: hold }
      trials:
        - { condition: surfaced, marks: [${Array(times).fill('{ station: 60 mm, height: 50 mm ± 1 mm }, { station: 340 mm, height: 50 mm ± 1 mm }').join(', ')}], heel: 0° ± 0.5° }
    `);
  const [once, often] = [repeated(1), repeated(12)];
  it('never make an uncertainty larger, and tell no more than the zero of the tape lets', () => {
    const before = new Map(figuresOf(once));
    for (const [name, { sigma }] of figuresOf(often)) expect(sigma, name).toBeLessThan(1.05 * before.get(name)!.sigma);
    const draft = often.uncertainties!.conditions.surfaced!.draft!.sigma;
    // A quarter of the variance of a mark is shared by all of the day: half a millimetre, beside what the file knows.
    const filed = often.filedUncertainties!.conditions.surfaced!.draft!.sigma;
    expect(draft).toBeGreaterThan(0.95 / Math.hypot(1 / filed, 1 / 0.5e-3));
  });
});

describe('a boat that weighs on two scales what its file says', () => {
  const filed = heard(none);
  const { mass, massMoment } = filed.bodies;
  const [fore, aft] = [0.15, 0.45];
  const onAft = (massMoment[0] - fore * mass) / (aft - fore);
  const grams = (kg: number) => (kg * 1e3).toFixed(1);
  const weighed = heard(
    strayed(
      boatText`
      - { condition: bench, scales: [{ station: 150 mm, reads: ${grams(mass - onAft)} g ± 1 g }, { station: 450 mm, reads: ${grams(onAft)} g ± 1 g }] }
    `.replace(/^/gm, '  '),
    ),
  );
  it('is known no worse for it: what no scale can tell of is no more likely than before', () => {
    const before = new Map(figuresOf(filed));
    const after = figuresOf(weighed);
    expect(after.length).toBe(before.size);
    for (const [name, { value, sigma }] of after) {
      const was = before.get(name)!;
      expect(sigma, name).toBeLessThan(1.05 * was.sigma);
      expect(Math.abs(value - was.value), name).toBeLessThan(was.sigma / 4);
    }
  });
});

describe('in other water the boat is as well known as the trials have it', () => {
  const there = (kind: 'fresh' | 'sea') =>
    inOtherWater(dunlin, waterOfKind(kind, dunlin.boat.water.temperature)).settled.all();
  it('fresh, as in the trials: figures and uncertainties are the same', () => {
    const known = new Map(figuresOf(dunlin));
    const again = figuresOf(there('fresh'));
    expect(again.length).toBe(known.size);
    for (const [name, { value, sigma }] of again) {
      const was = known.get(name)!;
      expect(Math.abs(value - was.value), name).toBeLessThan(was.sigma / 10);
      // The water is not that of the trials, and how well it is known is its own matter: its weight makes the draft.
      if (!/trim|heel/.test(name)) continue;
      expect(sigma, name).toBeGreaterThan(0.8 * was.sigma);
      expect(sigma, name).toBeLessThan(1.2 * was.sigma);
    }
  });
  it('and sea: better than by the file alone', () => {
    const trim = ({ conditions }: Uncertainties) => conditions.submerged!.trim!.sigma;
    expect(trim(there('sea').uncertainties!)).toBeLessThan(0.8 * trim(dunlin.filedUncertainties!));
  });
});
