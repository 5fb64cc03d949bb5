import { describe, expect, it } from 'vitest';
import { heard } from '../helpers/analysed.ts';
import { boatText } from '../helpers/boatText.ts';
import { predictTrial } from '../helpers/predictTrial.ts';
import { PROBE, probe } from '../helpers/probe.ts';

const DEGREE = Math.PI / 180;

/** What the probe, a barge of 400 x 100 x 70 mm, 2000 g and 50 mm draft, would show in the one trial of its file. */
function shown(trial: string, text = PROBE): readonly (number | null)[] {
  const { filed, trials, kept } = heard(boatText`
    ${text}trials:
      - ${trial}
  `);
  return predictTrial(filed.boat, trials[0]!, kept.cache);
}

/** All worked by hand from the barge's round numbers. */
describe('a barge in a trial', () => {
  it.each([
    [
      '{ condition: surfaced, marks: [{ station: 20 mm, height: 40 mm }, { station: 390 mm, height: 40 mm }] }',
      [0.05, 0.05],
    ],
    ['{ condition: surfaced, freeboard: [{ station: 200 mm, height: 10 mm }] }', [0.02]],
    ['{ condition: surfaced, heel: 3°, trim: 3° }', [0, 0]],
    // 400 g in the hold of 40 000 mm2 of waterplane: 10 mm.
    [
      '{ condition: surfaced, marks: [{ station: 200 mm, height: 1 mm }], aboard: [{ name: a, mass: 400 g, station: 200 mm, height: 30 mm, in: hold }] }',
      [0.06],
    ],
    // 2000 g in water of 1250 kg/m3: 40 mm.
    ['{ condition: surfaced, marks: [{ station: 9 mm, height: 1 mm }], pool: { density: 1250 kg/m3 } }', [0.04]],
    // 200 ml, or 198 ml = 20 % of 990 ml, left in a bladder amidships: 5 and 4.95 mm deeper.
    ['{ condition: surfaced, marks: [{ station: 200 mm, height: 1 mm }], water: 200 ml }', [0.055]],
    ['{ condition: surfaced, marks: [{ station: 200 mm, height: 1 mm }], fill: 20 % }', [0.05495]],
    // A level of 10 mm in a tank 50 mm high is 20 % too.
    ['{ condition: surfaced, marks: [{ station: 200 mm, height: 1 mm }], level: 10 mm }', [0.05495]],
    // Neutral: 2800 g of buoyancy, 800 ml in 990 ml.
    ['{ condition: submerged, fill: 50 %, trim: 1°, heel: 1° }', [0, 0, 800 / 990]],
    ['{ condition: submerged, water: 500 ml }', [8e-4]],
    ['{ condition: submerged, level: 10 mm }', [(800 / 990) * 0.05]],
    // On the bench, dry: G amidships, so of 2000 g the nearer edge carries 150/250. A hundred grams at 300 mm pull G to
    // (2000·200 + 100·300) / 2100.
    ['{ condition: bench, scales: [{ reads: 1 g }] }', [2]],
    ['{ condition: bench, scales: [{ station: 100 mm, reads: 1 g }, { station: 350 mm, reads: 1 g }] }', [1.2, 0.8]],
    ['{ condition: bench, scales: [{ station: 350 mm, reads: 1 g }, { station: 100 mm, reads: 1 g }] }', [0.8, 1.2]],
    ['{ condition: bench, scales: [{ reads: 1 g }], water: 300 ml }', [2.3]],
    ['{ condition: bench, balance: 1 mm }', [0.2]],
    [
      '{ condition: bench, balance: 1 mm, aboard: [{ name: a, mass: 100 g, station: 300 mm, height: 30 mm, in: hold }] }',
      [430 / 2100],
    ],
    // Hung up, its 990 ml full: 2000 + 990 - 2800 = 190 g; with the hundred grams at 300 mm 290 g, whose moment about the
    // fore hook at 100 mm is 190·100 + 100·200, over 200 mm.
    ['{ condition: hung, fill: 100 %, hooks: [{ reads: 1 g }] }', [0.19]],
    [
      '{ condition: hung, fill: 100 %, hooks: [{ station: 100 mm, reads: 1 g }, { station: 300 mm, reads: 1 g }], aboard: [{ name: a, mass: 100 g, station: 300 mm, height: 30 mm, in: hold }] }',
      [0.095, 0.195],
    ],
    // 2 mm of the barge still out: 80 g less.
    ['{ condition: submerged, water: 500 ml, proud: 2 mm }', [7.2e-4]],
  ])('%s', (trial, expected) => {
    const values = shown(trial);
    expect(values.length).toBe(expected.length);
    for (const [i, value] of values.entries()) expect(value).toBeCloseTo(expected[i]!, 8);
  });
  it('shows the surface on the centreline by the tilted plane', () => {
    // 100 g shifted by 100 mm aft in a barge whose G is at 23 mm: trim by GM_L = L2/12T - ..., from the full model itself.
    const text = probe(['station: 150 to 250 mm', 'station: 160 to 260 mm']);
    const { surfaced } = heard(text);
    if (surfaced.status !== 'afloat') throw new Error('the barge must float');
    const [fore, aft] = shown(
      '{ condition: surfaced, marks: [{ station: 0 mm, height: 1 mm }, { station: 400 mm, height: 1 mm }] }',
      text,
    );
    expect(fore).toBeCloseTo(surfaced.draftBow, 10);
    expect(aft).toBeCloseTo(surfaced.draftStern, 10);
    expect(fore! - aft!).toBeLessThan(-0.001);
  });
  it('heels by a weight moved athwart as the wall-sided formula has it', () => {
    // Wall-sided: w·d = Δ·(GM + BM/2·tan²)·sin; BM = b²/12T = 16.667 mm, KB 25 mm, G at (600·35 + 800·30 + 600·20)/2000
    // = 28.5 mm, so GM = 13.167 mm. (Attwood and Scribanti's formula; from memory.)
    const heel = 4 * DEGREE;
    const [gm, bm] = [0.025 + 0.01 / 0.6 - 0.0285, 0.01 / 0.6];
    const moment = 2 * (gm + (bm / 2) * Math.tan(heel) ** 2) * Math.sin(heel);
    // The weight stays level with itself in the boat, so its arm is d·cos(heel).
    const moved = moment / (0.05 * Math.cos(heel));
    const [tilt] = shown(`{ condition: inclining, mass: 50 g, moved: ${moved * 1000} mm, heel: 1° }`);
    expect(tilt! / DEGREE).toBeCloseTo(4, 6);
  });
  it('tells nothing of a boat that sinks, or cannot hang', () => {
    const heavy = probe([
      boatText`
        mass: 600 g
            station: 120`,
      boatText`
        mass: 6000 g
            station: 120`,
    ]);
    expect(shown('{ condition: surfaced, heel: 1° }', heavy)).toEqual([null]);
    const tankless = PROBE.replace(/ {2}tanks:[\s\S]*?payload:/, 'payload:');
    expect(shown('{ condition: submerged, trim: 1° }', tankless)).toEqual([null]);
  });
});
