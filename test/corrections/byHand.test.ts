import { describe, expect, it } from 'vitest';
import type { Correction } from '../../server/core/corrections/correction.ts';
import { heard } from '../helpers/analysed.ts';
import { probe } from '../helpers/probe.ts';

const degrees = Math.PI / 180;

/** The pieces put in for the surface, whatever else they set right: what a slot rule can follow. */
function surfaced(text: string): Correction {
  const found = heard(text)
    .corrections.all()
    .find(({ kind, condition, left }) => kind === 'insert' && condition !== 'submerged' && left.length === 0);
  if (!found) throw new Error('no pieces are offered for the surface');
  return found;
}

/** Each piece as mass (g) and middle (mm from midships, aft positive). */
const pieces = ({ parts }: Correction) =>
  parts.map(part => ({ grams: part.mass * 1e3, arm: ((part.from[0] + part.to[0]) / 2) * 1e3 - 200 }));

/*
 * The probe: a box barge of 2000 g with GM lengthwise 263.17 mm, 40 g to the millimetre, midships at 200 mm. Its strip of
 * lead, 12 x 6 mm of 11340 kg/m3 (from memory, D-01), weighs 0.81648 g to the millimetre; its bays lie inside, so that
 * lead there weighs and displaces nothing. Limits: 0.5° of trim and 2 mm of draft.
 */
const STRIP = 0.81648;
const GML = 25 + 400 ** 2 / 600 - 28.5;

describe('a barge down by the stern', () => {
  // 800 g of battery 10 mm aft: 8000 g·mm, which trims it 0.87°.
  const correction = surfaced(probe(['150 to 250 mm', '160 to 260 mm']));
  const [piece, ...more] = pieces(correction);

  it('needs one piece of lead, as far forward as it can lie', () => {
    expect(more).toEqual([]);
    expect(correction.pieces[0]?.slot.bay.name).toBe('bow bay');
    // The bay begins at 20 mm.
    expect(correction.parts[0]!.from[0] * 1e3).toBeCloseTo(20, 9);
    // A strip of so many whole millimetres.
    const long = (correction.parts[0]!.to[0] - correction.parts[0]!.from[0]) * 1e3;
    expect(long).toBeCloseTo(Math.round(long), 9);
    expect(Math.abs(piece!.grams - STRIP * long)).toBeLessThan(0.6);
  });
  it('and no more of it than the slot rule asks', () => {
    // To be inside the limit, 8000 g·mm less the piece's moment may leave 2000·263.17·tan 0.5° = 4593 g·mm. What brings it
    // there and no further is 20 g; what levels it has a moment of 8000 g·mm. It lies between, well inside the limit.
    const left = 2000 * GML * Math.tan(0.5 * degrees);
    expect(left).toBeCloseTo(4593, 0);
    const least = (8000 - left) / 170;
    expect(piece!.grams).toBeGreaterThan(2 * least);
    // No more than levels it, but for a millimetre of strip.
    expect(-piece!.arm * (piece!.grams - STRIP)).toBeLessThan(8000);
  });
  it('and floats as the wall-sided formula says', () => {
    // tan θ·(GM + ½·BM·tan² θ) = slot, with the piece aboard 5 mm up (Derrett, Ship Stability, p. 130, seen).
    const mass = 2000 + piece!.grams;
    const draft = mass / 40;
    const gm = draft / 2 + 400 ** 2 / (12 * draft) - (57_000 + piece!.grams * 5) / mass;
    const slot = (8000 + piece!.grams * piece!.arm) / mass;
    const bm = 400 ** 2 / (12 * draft);
    let tan = slot / gm;
    for (let i = 0; i < 50; i++) tan = slot / (gm + (bm / 2) * tan * tan);
    const { surfaced: afloat } = correction;
    expect(afloat.status === 'afloat' && afloat.attitude.trim / degrees).toBeCloseTo(Math.atan(tan) / degrees, 3);
    expect(Math.atan(tan) / degrees).toBeLessThan(0.5);
    expect(correction.title).toMatch(/^Insert \d+ g lead in “bow bay”: both conditions within limits/);
  });
});

describe('a barge too light', () => {
  // 150 g short amidships: 3.75 mm high, 1.75 mm or 70 g more than the limit.
  const correction = surfaced(probe(['mass: 800 g', 'mass: 650 g']));

  it('takes lead at both ends, in the ratio of the slot rule', () => {
    const found = pieces(correction);
    expect(correction.pieces.map(piece => piece.slot.bay.name).sort()).toEqual(['bow bay', 'stern bay']);
    // The limit asks for 70 to 230 g, the painted waterline for 150 g: it aims at the middle, where that costs little.
    const total = found.reduce((sum, { grams }) => sum + grams, 0);
    expect(Math.abs(total - 150)).toBeLessThan(40);
    // m1·a1 = m2·a2: what is left of the moment is what the millimetre and the tenth of a gram cannot do.
    const moment = found.reduce((sum, { grams, arm }) => sum + grams * arm, 0);
    expect(Math.abs(moment)).toBeLessThan(150);
  });
  it('and sinks by a millimetre for every 40 g', () => {
    const total = pieces(correction).reduce((sum, { grams }) => sum + grams, 0);
    const { surfaced: afloat } = correction;
    expect(afloat.status === 'afloat' && afloat.attitude.draft * 1e3).toBeCloseTo((1850 + total) / 40, 3);
  });
});
