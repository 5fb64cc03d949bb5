import { describe, expect, it } from 'vitest';
import { analysed } from '../helpers/analysed.ts';
import { boatText } from '../helpers/boatText.ts';

const boat = (tank: string) => boatText`
  boat: Tern
  water: { density: 1000 kg/m3, temperature: 20 °C }
  hull:
    length: 400 mm
    waterline: 80 mm
    compartments:
      - { name: box, mass: 1 kg, box: 100 x 100 mm, station: 0 to 400 mm, height: 50 mm }
    tanks:
      - { name: main, in: box, box: 50 x 100 mm, station: 100 to 300 mm, height: 50 mm, ${tank} }
  payload:
    - { name: lead, material: lead, mass: 2.2 kg, station: 200 mm, height: 10 mm, in: box }
`;

const blowsOf = (tank: string) => analysed(boat(tank)).blows;

// The boat displaces 4 l and weighs 3.2 kg: 0.8 l of water in the tank of 1 l. At 10.33 m of water the pressure doubles:
// 101 325 Pa / (1000 kg/m3 x 9.80665 m/s2) = 10.3323 m (Pascal's law).
const DOUBLED = '10.33227 m';

describe('a tank that is blown', () => {
  it('takes the pressure of the water there, and so much gas by Boyle’s law', () => {
    const [blow] = blowsOf(`kind: vented, blow: { depth: ${DOUBLED} }`);
    expect(blow!.gauge).toBeCloseTo(101_325, 0);
    expect(blow!.water).toBeCloseTo(0.8e-3, 9);
    expect(blow!.free).toBeCloseTo(1.6e-3, 8);
    expect([blow!.mass, blow!.times]).toEqual([null, null]);
  });
  it('as often as the bottle gives gas above the pressure there', () => {
    // (6 - 1.01325) bar x 64.2 ml over 2.0265 bar x 800 ml.
    const [blow] = blowsOf(`kind: vented, blow: { depth: ${DOUBLED}, bottle: 64.2 ml, pressure: 6 bar }`);
    expect(blow!.times).toBeCloseTo(((6 - 1.01325) * 64.2) / (2.0265 * 800), 6);
  });
  it('of a gas by its mass: a mole is 24.055 l at 20 °C and one atmosphere', () => {
    // R T / p = 8.314462618 x 293.15 / 101 325; 44.01 g of carbon dioxide is a mole.
    const [blow] = blowsOf(`kind: vented, blow: { depth: ${DOUBLED}, mass: 44.01 g }`);
    expect(blow!.times! * blow!.free).toBeCloseTo(24.0548e-3, 6);
    expect(blow!.mass).toBeCloseTo((0.04401 * 1.6) / 24.0548, 7);
  });
  it('sealed, has its own air already', () => {
    const [blow] = blowsOf(`kind: sealed, blow: { depth: ${DOUBLED} }`);
    expect(blow!.free).toBeCloseTo(1e-3, 8);
  });
  it('by a charge that does not do is told, with the caution', () => {
    const said = (charge: string) =>
      analysed(boat(`kind: vented, blow: { depth: 3 m, ${charge} }`)).findings.flatMap(({ code, message }) =>
        code === 'blow-short' ? [message] : [],
      );
    expect(said('bottle: 60 ml, pressure: 6 bar')[0]).toMatch(
      /^“main”: to blow 800 ml out at a depth of 3 m takes 0\.29 bar over the air outside at least, and 1032 ml of gas, measured at the surface; the charge gives 0\.3 blows: the charge does not empty it once\. Bottles and cartridges are pressure vessels/,
    );
    expect(said('bottle: 60 ml, pressure: 0.2 bar')[0]).toMatch(/do not even reach the pressure of the water there/);
    expect(said('mass: 16 g')).toEqual([]);
  });
  it.each([
    [
      'kind: vented, blow: { depth: 2 m, bottle: 60 ml }',
      'a charge is told by the bottle and what it is filled to: add “pressure: 6 bar”.',
    ],
    ['kind: vented, blow: { depth: 2 m, mass: 16 g, bottle: 60 ml }', 'the charge is given by its “mass”.'],
    ['kind: piston, blow: { depth: 2 m }', 'a piston drives its water out by itself.'],
  ])('%s says nothing: %s', (tank, why) => {
    expect(analysed(boat(tank)).findings.some(({ message }) => message.endsWith(why))).toBe(true);
  });
});
