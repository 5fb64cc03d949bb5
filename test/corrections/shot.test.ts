import { describe, expect, it } from 'vitest';
import { findMaterial } from '../../schema/materials.ts';
import { slotSets } from '../../server/core/corrections/room/slots.ts';
import { cautions, cutLines } from '../../server/core/report/bench.ts';
import { inputsOf } from '../../server/core/uncertainty/inputs.ts';
import { analysed, fileFindings, heard } from '../helpers/analysed.ts';
import { corrected, firstOfBoth, outOfLimits } from '../helpers/corrected.ts';
import { probe, probeWith } from '../helpers/probe.ts';

describe('loose shot', () => {
  it('takes up the room of what is poured', () => {
    const { boat } = analysed(
      probeWith(
        '{ name: shot, material: lead shot, mass: 134 g, station: 100 to 200 mm, offset: -10 to 10 mm, height: 10 mm, in: hold }',
      ),
    );
    const shot = boat.payload.at(-1)!;
    // 134 g of 6.7 g/ml are 20 ml: 10 mm deep in 100 x 20 mm.
    expect(shot.to[2] - shot.from[2]).toBeCloseTo(0.01, 9);
    expect(shot.mass).toBeCloseTo(0.134, 12);
  });
  it('lets the water into its gaps: only its metal displaces', () => {
    const part = (rest: string) =>
      analysed(probeWith(`{ name: shot, ${rest}, mass: 111 g, station: 200 mm, height: 90 mm }`)).boat.payload.at(-1)!;
    expect(part('material: lead shot').volume * 1e6).toBeCloseTo(10, 9);
    expect(part('material: lead shot, density: 6.4 g/cm3').volume * 1e6).toBeCloseTo(10, 9);
    expect(part('material: lead shot in resin').volume * 1e6).toBeCloseTo(111 / 7.3, 9);
  });
  it('fills a form with what goes in', () => {
    const { boat } = analysed(
      probeWith('{ name: shot, material: lead shot, round: 20 mm, station: 100 to 200 mm, height: 10 mm, in: hold }'),
    );
    expect(boat.payload.at(-1)!.mass).toBeCloseTo(6700 * Math.PI * 0.01 ** 2 * 0.1, 9);
  });
  /*
   * Equal balls at random: 0.57 poured, 0.64 shaken down (G. D. Scott & D. M. Kilgour, J. Phys. D 2 (1969) 863; from
   * memory), of lead hardened with antimony and arsenic.
   */
  it('lies as dense as balls at random do', () => {
    const { density, poured } = findMaterial('lead shot')!;
    for (const packing of [0.57, 0.6, 0.64]) {
      expect(packing * density).toBeGreaterThanOrEqual(poured!.range[0]);
      expect(packing * density).toBeLessThanOrEqual(poured!.range[1] + 10);
    }
  });
  it('is uncertain by how dense it lies', () => {
    const { source } = heard(
      probeWith('{ name: shot, material: lead shot, round: 20 mm, station: 100 to 200 mm, height: 10 mm, in: hold }'),
    );
    const density = inputsOf(source).find(({ words }) => words === 'density of lead shot')!;
    expect(density).toMatchObject({ value: 6700, sigma: expect.closeTo(800 / Math.sqrt(12), 9) });
  });
});

describe('shot in stock', { timeout: 120_000 }, () => {
  const outOfTrim = (shot: string) =>
    probe(
      ['lead: { strip: 12 x 6 mm }', `lead: { shot: ${shot} }`],
      ['station: 150 to 250 mm', 'station: 165 to 265 mm'],
      ['mass: 800 g', 'mass: 740 g'],
    );
  it.each([
    ['true', 6700],
    ['6.5 g/cm3', 6500],
  ])('is poured into the bays from below: %s', (shot, density) => {
    const analysis = analysed(outOfTrim(shot));
    expect(fileFindings(analysis)).toEqual([]);
    const correction = firstOfBoth(analysis)!;
    expect(correction.pieces.length).toBeGreaterThan(0);
    for (const piece of correction.pieces) {
      const { slot, mass, station } = piece;
      expect(slot.isShot).toBe(true);
      expect(mass).toBeCloseTo(density * slot.breadth * slot.depth * (station[1] - station[0]), 3);
      expect(slot.height - slot.depth / 2).toBeCloseTo(slot.bay.from[2], 9);
    }
    const text = corrected(analysis, correction);
    expect(text).toMatch(/material: lead shot/);
    expect(text).toMatch(/poured between two dams; lead: no dust/);
    const after = analysed(text);
    expect(outOfLimits(after)).toEqual([]);
    expect(fileFindings(after)).toEqual([]);
  });
  it('is said so on the bench, with its caution', () => {
    const { boat } = analysed(outOfTrim('true'));
    const slot = slotSets(boat, false)[0]![0]!;
    const [from] = slot.station;
    const piece = {
      slot,
      mass: 0.05 * slot.massPerLength,
      station: [from, from + 0.05],
      offset: 0,
      counts: [],
    } as const;
    // 60 x 8 mm of the bow bay, 50 mm long: 24 ml at 6.7 g/ml.
    const lines = cutLines(piece, 'shot', boat).join(' ');
    expect(lines).toMatch(/161 g of lead shot, poured 8 mm deep over 50 mm between two dams 60 mm broad/);
    expect(lines).toContain('so that it cannot run');
    expect(cautions([piece]).join()).toContain('Lead is poisonous');
  });
  it('that is no shot is told', () => {
    expect(fileFindings(analysed(outOfTrim('6.5 mm')))).toMatchObject([{ code: 'wrong-quantity' }]);
  });
});
