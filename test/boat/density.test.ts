import { describe, expect, it } from 'vitest';
import { trimSheet } from '../../server/core/drawing/trimSheet.ts';
import { analysed, fileFindings, marked } from '../helpers/analysed.ts';
import { boatText } from '../helpers/boatText.ts';
import { probe, probeWith } from '../helpers/probe.ts';

const lineOf = (rest: string) => `{ name: piece, ${rest} }`;
const read = (text: string) => {
  const analysis = analysed(text);
  return { analysis, part: analysis.boat.payload.find(part => part.name === 'piece'), told: fileFindings(analysis) };
};

/** 100 x 20 x 10 mm: 20 ml. */
const BLOCK = 'station: 100 to 200 mm, offset: -10 to 10 mm, height: 80 to 90 mm';

it('what a part is made of is called as the file calls it', () => {
  const { analysis, part } = read(probeWith(lineOf(`material: pink foam, mass: 0.6 g, ${BLOCK}`)));
  expect(part).toMatchObject({ material: 'XPS', materialWords: 'pink foam' });
  const drawn = trimSheet(analysis);
  expect(JSON.stringify(drawn)).toContain('piece: pink foam, 0.6 g');
});

describe('weighed by its form', () => {
  it.each<readonly [whose: string, text: string, kilograms: number]>([
    // Handbook densities: lead 11340, brass 8500 kg/m3 (from memory; D-01, D-03).
    ['the handbook’s', probeWith(lineOf(`material: lead, ${BLOCK}`)), 0.2268],
    ['the handbook’s under another name', probeWith(lineOf(`material: Free-cutting Brass, ${BLOCK}`)), 0.17],
    ['its own', probeWith(lineOf(`material: lead, density: 10 g/cm3, ${BLOCK}`)), 0.2],
    [
      'its own, for a material that the handbook has not',
      probeWith(lineOf(`material: slate, density: 2800 kg/m3, ${BLOCK}`)),
      0.056,
    ],
    ['its own, without a material', probeWith(lineOf(`density: 2800 kg/m3, ${BLOCK}`)), 0.056],
    [
      'the stock’s',
      probe(
        ['strip: 12 x 6 mm', 'density: 11000 kg/m3'],
        [
          'bays:',
          boatText`
              - ${lineOf(`material: lead, ${BLOCK}`)}
            bays:`,
        ],
      ),
      0.22,
    ],
    [
      'its own before the stock’s',
      probe(
        ['strip: 12 x 6 mm', 'density: 11000 kg/m3'],
        [
          'bays:',
          boatText`
              - ${lineOf(`material: lead, density: 10 g/cm3, ${BLOCK}`)}
            bays:`,
        ],
      ),
      0.2,
    ],
    [
      'the stock’s foam',
      probe(
        [
          'stock:',
          boatText`
            stock:
              foam: { density: 2 lb/ft3 }`,
        ],
        [
          'bays:',
          boatText`
              - ${lineOf(`material: foam, ${BLOCK}`)}
            bays:`,
        ],
      ),
      0.02e-3 * 2 * 16.01846337396,
    ],
  ])('by %s density', (_, text, kilograms) => {
    const { part, told } = read(text);
    expect(told).toEqual([]);
    expect(part).toMatchObject({ massFrom: 'form' });
    expect(part!.mass).toBeCloseTo(kilograms, 9);
  });
  it('what the scale shows goes before', () => {
    expect(read(probeWith(lineOf(`material: lead, mass: 225 g, ${BLOCK}`))).part).toMatchObject({
      massFrom: 'scale',
      mass: 0.225,
    });
  });
});

describe('mass, form and material that do not agree', () => {
  it.each<readonly [what: string, rest: string, says: string | null]>([
    // Lead of 11300 to 11350 kg/m3 (from memory, D-01): 226 to 227 g in 20 ml; five per cent are left to the tape.
    [
      'far too light',
      `material: lead, mass: 120 g, ${BLOCK}`,
      '120 g in this form is 6000 kg/m³; lead is 11300 to 11350 kg/m³, so the scale should have shown 226 g to 227 g. Check the sizes, the mass and the material.',
    ],
    [
      'too heavy',
      `material: lead, mass: 240 g, ${BLOCK}`,
      '240 g in this form is 12000 kg/m³; lead is 11300 to 11350 kg/m³, so the scale should have shown 226 g to 227 g. Check the sizes, the mass and the material.',
    ],
    ['light within what a tape reads', `material: lead, mass: 216 g, ${BLOCK}`, null],
    ['heavy within what a tape reads', `material: lead, mass: 238 g, ${BLOCK}`, null],
    ['a density of its own', `material: lead, density: 6000 kg/m3, mass: 120 g, ${BLOCK}`, null],
    [
      'a print with voids',
      `material: PLA, mass: 14 g, ${BLOCK}`,
      '14 g in this form is 700 kg/m³; PLA is 1210 to 1290 kg/m³, so the scale should have shown 24 g to 26 g. Check the sizes, the mass and the material. The figure is for solid plastic. A print carries voids: weigh it, and give its outer form or a dunked volume.',
    ],
    [
      'too heavy for a print, voids or not',
      `material: PLA, mass: 40 g, ${BLOCK}`,
      '40 g in this form is 2000 kg/m³; PLA is 1210 to 1290 kg/m³, so the scale should have shown 24 g to 26 g. Check the sizes, the mass and the material.',
    ],
    ['a form that followed from the mass', 'material: lead, mass: 120 g, station: 100 to 200 mm, height: 85 mm', null],
  ])('%s', (_, rest, says) => {
    const { analysis, told } = read(probeWith(lineOf(rest)));
    expect(told.map(finding => [finding.code, finding.severity, finding.message])).toEqual(
      says === null ? [] : [['density-unlikely', 'warning', says]],
    );
    if (told[0]) expect(marked(analysis, told[0])).toMatch(/^\d+ g$/);
  });
  it('are told in the file’s own units', () => {
    const { told } = read(
      probe(
        [
          'boat: Probe',
          boatText`
            boat: Probe
            units: { length: in, mass: oz }`,
        ],
        [
          'bays:',
          boatText`
              - ${lineOf('material: lead, mass: 3 oz, station: 4 to 8 in, offset: -0.4 to 0.4 in, height: 3.2 to 3.6 in')}
            bays:`,
        ],
      ),
    );
    // 4 x 0.8 x 0.4 in³ are 1.28 in³ or 20.975 ml: 237.0 to 238.1 g of lead, 8.4 oz.
    expect(told.map(finding => finding.message)).toEqual([
      '3 oz in this form is 4055 kg/m³; lead is 11300 to 11350 kg/m³, so the scale should have shown 8.4 oz. Check the sizes, the mass and the material.',
    ]);
  });
});
