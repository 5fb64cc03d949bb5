import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { emptyCache, pieceSteps } from '../../server/core/bodies/assemble.ts';
import { finish } from '../../server/core/steps/steps.ts';
import { inputsOf } from '../../server/core/uncertainty/inputs.ts';
import { withInputs } from '../../server/core/uncertainty/withInputs.ts';
import { analysed, fileFindings, marked, service } from '../helpers/analysed.ts';
import { boatText } from '../helpers/boatText.ts';
import { probe, probeWith } from '../helpers/probe.ts';

const withPart = (rest: string) => analysed(probeWith(`{ name: piece, station: 100 mm, height: 120 mm, ${rest} }`));
const partOf = (rest: string) => withPart(rest).boat.payload.find(part => part.name === 'piece')!;
const told = (rest: string) => fileFindings(withPart(rest)).map(({ code }) => code);
const inWater = 'water: { density: 1000 kg/m3 }';

describe('weighed in water', () => {
  it.each([
    // Water of 20 °C: 998.2 kg/m3 (CRC Handbook, from memory); (412 - 310) g lost.
    ['in fresh water of 20 °C unless it says otherwise', 'mass: 412 g, inWater: 310 g', 0.102 / 998.2],
    ['in water as given', `mass: 412 g, inWater: { reads: 310 g, ${inWater} }`, 102e-6],
    // Sea water of 35 g/kg at 20 °C: 1024.76 kg/m3 (UNESCO 44, its table of check values).
    ['in the sea', 'mass: 412 g, inWater: { reads: 310 g, water: { kind: sea, temperature: 20 °C } }', 0.102 / 1024.76],
    ['held under by a sinker', `mass: 4 g, inWater: { reads: -96 g, ${inWater} }`, 100e-6],
  ])('displaces what it loses %s', (_, text, volume) => {
    const part = partOf(text);
    expect(Math.abs(part.volume / volume - 1)).toBeLessThan(2e-5);
    expect(told(text)).toEqual([]);
  });
  it('weighs under water what the balance showed, in any form and in any place', () => {
    const grams = fc.integer({ min: 20, max: 400 });
    fc.assert(
      fc.property(grams, fc.double({ min: -1.5, max: 0.95, noNaN: true }), grams, (mass, share, size) => {
        const reads = Math.round(mass * share * 10) / 10;
        const forms = [
          `ball: ${size / 10} mm`,
          `round: ${size / 10} to ${size / 20} mm, axis: vertical`,
          'material: brass',
        ];
        for (const form of forms) {
          const analysis = withPart(`mass: ${mass} g, inWater: { reads: ${reads} g, ${inWater} }, ${form}`);
          const part = analysis.boat.payload.find(({ name }) => name === 'piece');
          if (!part) continue;
          expect(part.mass - 1000 * part.volume).toBeCloseTo(reads / 1000, 12);
          const { displacers } = finish(pieceSteps({ ...NOTHING, payload: [part] }, emptyCache()));
          expect(displacers[0]!.body.volume).toBeCloseTo(part.volume, 15);
        }
      }),
      { numRuns: 12 },
    );
  });
  it('tells the wall of a shell without its material, and a compartment whatever its form', () => {
    const { boat } = analysed(
      probe(
        [
          'hull:',
          boatText`
            hull:
              shells:
                - { name: casing, mass: 300 g, inWater: { reads: 100 g, ${inWater} }, station: 0 to 400 mm, offset: -60 to 60 mm, height: 0 to 80 mm }`,
        ],
        [
          `mass: 600 g
      station: 0`,
          `mass: 600 g
      inWater: { reads: -2150 g, ${inWater} }
      station: 0`,
        ],
      ),
    );
    expect(boat.shells[0]!.volume).toBeCloseTo(200e-6, 12);
    expect(boat.compartments[0]!.volume).toBeCloseTo(2750e-6, 12);
  });
  it.each([
    ['brass is brass', 'mass: 425 g, inWater: 375 g, material: brass', []],
    ['brass is not aluminium', 'mass: 425 g, inWater: 375 g, material: aluminium', ['in-water-material']],
    ['nor of another density', 'mass: 425 g, inWater: 375 g, density: 2700 kg/m3', ['in-water-material']],
    ['a form that agrees', 'mass: 425 g, inWater: 375 g, ball: 45.7 mm', []],
    ['a form that does not', 'mass: 425 g, inWater: 375 g, ball: 60 mm', ['in-water-form']],
    ['unless it is known by so little', 'mass: 425 g, inWater: 375 g, ball: 60 mm ± 6 mm', []],
    ['nothing gains weight in water', 'mass: 100 g, inWater: 120 g, material: lead', ['in-water-impossible']],
    ['without a mass it tells nothing', 'inWater: 20 g, material: lead, ball: 20 mm', ['in-water-mass']],
  ] as const)('%s', (_, text, codes) => {
    expect(told(text)).toEqual(codes);
  });
  it('findings mark what the balance showed', () => {
    const analysis = withPart('mass: 425 g, inWater: 375 g, material: aluminium');
    expect(marked(analysis, fileFindings(analysis)[0]!)).toBe('375 g');
  });
  it('is hovered over with what it makes', () => {
    const analysis = withPart('mass: 425 g, inWater: 375 g, material: brass');
    const hover = service.hover(analysis, analysis.syntax.text.indexOf('inWater') + 2)!.contents as { value: string };
    expect(hover.value).toContain('spring balance');
    expect(hover.value).toContain('by its weight in water (fresh, 20 °C) 50 ± 4.3 ml');
  });
});

const NOTHING = { shells: [], compartments: [], tanks: [], payload: [] } as const;

describe('its uncertainty', () => {
  /** GUM 5.1.2 by hand: each figure one uncertainty off by itself. */
  it('comes of both weights and of the water', () => {
    const { source } = withPart(
      'mass: 400 g ± 1 g, inWater: { reads: 300 g ± 2 g, water: { density: 1000 ± 1 kg/m3 } }',
    );
    const inputs = inputsOf(source);
    const change = (noun: string) => {
      const input = inputs.find(each => each.entryName === 'piece' && each.noun === noun)!;
      const boat = withInputs(source, new Map([[input, input.value + input.sigma]]));
      return (boat.payload.find(({ name }) => name === 'piece')!.volume - 100e-6) * 1e6;
    };
    expect(change('mass')).toBeCloseTo(1, 9);
    expect(change('weight in water')).toBeCloseTo(-2, 9);
    expect(change('density of the water of its weighing')).toBeCloseTo(-0.0999, 4);
  });
  it('of a density is what many weighings would scatter', () => {
    const [mass, reads] = [0.4, 0.3];
    const part = partOf(`mass: 400 g ± 1 g, inWater: { reads: 300 g ± 2 g, ${inWater} }, in: hold`);
    expect(part.worked.join()).toContain('100 ± 2.2 ml, so 4000 ± ');
    // Partial derivatives by differences, independent of the formula.
    const density = (m: number, w: number, water: number) => (water * m) / (m - w);
    const by = (m: number, w: number, water: number) =>
      density(mass + m, reads + w, 1000 + water) - density(mass, reads, 1000);
    const sigma = Math.hypot(by(1e-6, 0, 0) * 1e3, by(0, 1e-6, 0) * 2e3, by(0, 0, 0.5));
    expect(part.worked.join()).toContain(`so 4000 ± ${Number(sigma.toPrecision(2))} kg/m³`);
  });
});

describe('a tank by the jug', () => {
  const tank = (rest: string) =>
    analysed(
      probe([
        `station: 90 to 310 mm
      offset: -45 to 45 mm
      height: 5 to 55 mm`,
        rest,
      ]),
    );
  const PLACED = `station: 90 to 310 mm
      offset: -45 to 45 mm
      height: 5 to 55 mm`;
  it('holds what the jug says, where its form is', () => {
    const analysis = tank(`${PLACED}
      capacity: 960 ml`);
    expect(analysis.boat.tanks[0]!.capacity).toBeCloseTo(960e-6, 12);
    expect(analysis.bodies.tanks[0]!.whole.volume).toBeCloseTo(960e-6, 12);
    expect(analysis.bodies.tanks[0]!.whole.moment[0] / 960e-6).toBeCloseTo(0.2, 9);
    expect(fileFindings(analysis)).toEqual([]);
    // 800 ml of water hang the probe.
    expect(analysis.submerged).toMatchObject({ status: 'neutral' });
    expect(analysis.submerged.status === 'neutral' && analysis.submerged.fill).toBeCloseTo(800 / 960, 6);
  });
  it('says where jug and form disagree', () => {
    const analysis = tank(`${PLACED}
      capacity: 700 ml`);
    expect(fileFindings(analysis).map(({ code }) => code)).toEqual(['capacity-disagrees']);
  });
  it('in cells holds as much as all of them', () => {
    const text = probe([
      'kind: bladder',
      `kind: vented
      cells: 3
      capacity: 960 ml`,
    ]);
    const { bodies } = analysed(text);
    const volumes = bodies.tanks[0]!.cells.map(({ volume }) => volume * 1e6);
    expect(volumes).toHaveLength(3);
    for (const volume of volumes) expect(volume).toBeCloseTo(320, 6);
  });
  it('needs no more than its middle, and does not stick out', () => {
    for (const millilitres of [200, 600, 900]) {
      const analysis = tank(`capacity: ${millilitres} ml
      station: 200 mm
      height: 35 mm`);
      expect(fileFindings(analysis)).toEqual([]);
      expect(analysis.bodies.tanks[0]!.whole.volume * 1e6).toBeCloseTo(millilitres, 6);
    }
  });
  it('that fits nowhere is told', () => {
    const analysis = tank(`capacity: 990 ml
      station: 380 mm
      height: 35 mm`);
    expect(fileFindings(analysis).map(({ code }) => code)).toEqual(['sticks-out']);
  });
  it('is fitted anew when its compartment changes', () => {
    const text = (depth: number) =>
      probe(
        ['height: 0 to 70 mm', `height: 0 to ${depth} mm`],
        [
          `station: 90 to 310 mm
      offset: -45 to 45 mm
      height: 5 to 55 mm`,
          `capacity: 300 ml
      station: 200 mm
      height: 25 mm`,
        ],
      );
    const first = analysed(text(70));
    const next = service.analyse(text(40), first);
    expect(next.boat.tanks[0]!.form).not.toEqual(first.boat.tanks[0]!.form);
    expect(next.boat.tanks[0]!.form).toEqual(analysed(text(40)).boat.tanks[0]!.form);
  });
});

describe('a part by volume alone', () => {
  it.each([
    ['in a compartment', 'mass: 20 g, volume: 150 ml, in: hold, height: 35 mm', 0.035],
    ['in a shell', 'mass: 20 g, volume: 150 ml, height: 90 mm', 0.02],
  ])('%s lies within it', (_, rest, free) => {
    const shell = boatText`
      hull:
        shells:
          - { name: casing, mass: 30 g, material: ABS, round: 40 mm, station: 0 to 400 mm, height: 90 mm }`;
    const analysis = analysed(
      probe(
        ['hull:', shell],
        [
          'bays:',
          `  - { name: piece, station: 200 mm, ${rest} }
bays:`,
        ],
      ),
    );
    const part = analysis.boat.payload.find(({ name }) => name === 'piece')!;
    expect(part.to[2] - part.from[2]).toBeLessThan(2 * free + 1e-12);
    const [length, breadth] = [part.to[0] - part.from[0], part.to[1] - part.from[1]];
    if (part.form?.shape === 'revolved') expect((Math.PI / 4) * breadth ** 2 * length * 1e6).toBeCloseTo(150, 6);
    expect(fileFindings(analysis)).toEqual([]);
  });
});
