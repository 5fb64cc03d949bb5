import { describe, expect, it } from 'vitest';
import { floatSubmerged, type SubmergedNeutral } from '../../server/core/conditions/submerged.ts';
import { figuredIn } from '../../server/core/figures/figured.ts';
import { analysed, heard } from '../helpers/analysed.ts';
import { boatText } from '../helpers/boatText.ts';
import { barge, bodiesOf, type Plain } from '../helpers/bodies.ts';

function held(plain: Plain): SubmergedNeutral {
  const submerged = floatSubmerged(bodiesOf(plain), { kind: 'held' });
  if (submerged.status !== 'neutral') throw new Error(`expected to be held under, got ${submerged.status}`);
  return submerged;
}

// A block of 10 l with its centre of buoyancy 0.5 m aft and 50 mm up, and what weighs 9.98 kg beside it.
const block = (mass: number, at: readonly [number, number, number]): Plain => ({
  density: 1000,
  solids: [barge(1, 0.1, 0.1)],
  masses: [[mass, at]],
});

describe('a boat held under', () => {
  it('is held down by its buoyancy less its weight, and lies with G under B', () => {
    // Archimedes, and two parallel forces: tan(trim) = (xG - xB) / BG, whatever holds it under at B.
    const lies = held(block(9.98, [0.501, 0, 0.03]));
    expect(lies.heldDown).toBeCloseTo(0.02, 12);
    expect(Math.tan(lies.trim)).toBeCloseTo(0.001 / 0.02, 9);
    // What the planes hold takes that share of the lift from the righting moment.
    expect(lies.bg).toBeCloseTo((Math.hypot(0.001, 0.02) * 9.98) / 10, 12);
    expect(lies.displacement).toBeCloseTo(10, 12);
  });
  it('has its tanks full: nothing in them runs', () => {
    const tanks = [{ form: barge(0.2, 0.05, 0.05), kind: 'vented' as const }];
    const lies = held({ ...block(9.4, [0.5, 0, 0.03]), tanks });
    expect(lies.fill).toBe(1);
    expect(lies.heldDown).toBeCloseTo(10 - 9.4 - 0.5, 12);
    expect(lies.bgEffective).toBeCloseTo(lies.bg, 12);
  });
  it('too heavy it goes down by itself', () => {
    expect(held(block(10.03, [0.5, 0, 0.03])).heldDown).toBeCloseTo(-0.03, 12);
  });
});

const boat = (mass: string, limits: string, more = '') => boatText`
  boat: Tern
  water: { density: 1000 kg/m3 }
  hull:
    length: 400 mm
    waterline: 98 mm
    compartments:
      - { name: box, mass: 1 kg, box: 100 x 100 mm, station: 0 to 400 mm, height: 50 mm }
  payload:
    - { name: lead, material: lead, mass: ${mass}, station: 200 mm, height: 10 mm, in: box }
  limits: ${limits}
  ${more}
`;

const LIMITS = '{ reserve: 10 to 30 g }';

describe('reserve as a limit', () => {
  it.each([
    ['2.98 kg', []],
    [
      '2.96 kg',
      [
        'Submerged, the boat is still 40 g light, limits 10 g to 30 g: more than its planes may have to hold down. Add weight, or take foam away.',
      ],
    ],
    [
      '2.995 kg',
      [
        'Submerged, the boat is still 5 g light, limits 10 g to 30 g: little is left to bring it up when it stops. Add foam, or take weight out.',
      ],
    ],
    [
      '3.004 kg',
      [
        'Submerged, the boat is 4 g too heavy and goes down by itself, limits 10 g to 30 g. Take that much weight in water out, or add foam.',
      ],
    ],
  ])('of a boat without a tank, with %s of lead', (mass, said) => {
    const { findings } = analysed(boat(mass, LIMITS));
    expect(findings.filter(({ code }) => code === 'submerged-reserve').map(({ message }) => message)).toEqual(said);
    expect(findings.filter(({ code }) => code === 'submerged-light')).toEqual([]);
  });
  it('of a condition of the builder’s own', () => {
    const own = 'conditions: [{ name: fast, condition: submerged, limits: { reserve: 10 to 30 g, trim: 2° } }]';
    const { boat: read, conditions, scheme } = analysed(boat('2.98 kg', '{ trim: 1° }', own));
    const fast = conditions.find(({ condition }) => condition.id === 'fast')!;
    const reserve = figuredIn(read, fast, scheme.figures).find(({ figure }) => figure.id === 'reserve')!;
    expect(reserve.value).toBeCloseTo(0.02, 9);
    expect(reserve.margin).toBeCloseTo(0.01, 9);
  });
  it('stands in place of the fill', () => {
    const own = 'conditions: [{ name: fast, condition: submerged, limits: { reserve: 10 to 30 g, fill: 40 to 80 % } }]';
    const { findings } = analysed(boat('2.98 kg', '{ trim: 1° }', own));
    expect(findings.map(({ message }) => message)).toContain(
      '“fill” says nothing beside “reserve”: the boat is held under with its tanks full.',
    );
  });
  it('is as uncertain as the masses that make it', () => {
    // 3 g and 4 g, independent (GUM 5.1.2): 5 g; sizes and water are known to next to nothing.
    const text = boat('2.98 kg ± 3 g', LIMITS)
      .replace('mass: 1 kg', 'mass: 1 kg ± 4 g')
      .replace('1000 kg/m3', '1000 kg/m3 ± 0.001 kg/m3')
      .replace('100 x 100 mm', '100 x 100 mm ± 0.0001 mm')
      .replace('0 to 400 mm', '0 to 400 mm ± 0.0001 mm');
    expect(heard(text).uncertainties?.conditions.submerged?.reserve?.sigma).toBeCloseTo(0.005, 5);
  });
  it('corrections aim for it', () => {
    const bays =
      'bays: [{ name: floor, in: box, takes: lead, station: 20 to 380 mm, offset: -30 to 30 mm, height: 4 to 20 mm }]';
    const analysis = analysed(boat('2.9 kg', '{ reserve: 10 to 30 g, draft: 4 mm }', bays));
    const [first] = analysis.corrections.all();
    const { submerged } = first!;
    expect(submerged.status === 'neutral' && submerged.heldDown).toBeGreaterThan(0.01);
    expect(submerged.status === 'neutral' && submerged.heldDown).toBeLessThan(0.03);
    expect(first!.left.map(({ code }) => code)).toEqual([]);
  });
});
