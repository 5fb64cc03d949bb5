import { describe, expect, it } from 'vitest';
import { analysed, mended, service } from '../helpers/analysed.ts';

/** A tube of 90 mm round and 600 mm long, its axis 50 mm above the baseline; `inside` are lines of its payload. */
const tubeBoat = (payload = '', tanks = ''): string => `boat: Tube
water: { density: 1000 kg/m3 }
hull:
  length: 800 mm
  waterline: 50 mm
  compartments:
    - { name: hull, mass: 500 g, round: 90 mm, station: 100 to 700 mm, height: 50 mm }
  tanks: [${tanks}]
payload: [${payload}]
`;

const volume = (Math.PI / 4) * 0.09 ** 2 * 0.6;

describe('a tube on a waterline at its axis', () => {
  const { wanted } = analysed(tubeBoat());
  it('still wants half its own volume of water less what it weighs, amidships', () => {
    // A half-immersed cylinder displaces half of its volume (closed form).
    expect(wanted?.displacement).toBeCloseTo((1000 * volume) / 2, 9);
    expect(wanted?.mass).toBeCloseTo((1000 * volume) / 2 - 0.5, 9);
    expect(wanted?.centre?.[0]).toBeCloseTo(0.4, 9);
    expect(wanted?.centre?.[1]).toBeCloseTo(0, 12);
  });
  it('asks for a centre so low that G lies the metacentric height under the axis', () => {
    // M of a circular section lies in its axis; the usual limit of the metacentric height is 3 mm.
    const gm = 0.003;
    const mass = (1000 * volume) / 2;
    expect(wanted?.highest).toBeCloseTo((mass * (0.05 - gm) - 0.5 * 0.05) / (mass - 0.5), 9);
  });
  it('wants a tank for the half that stands out of the water, in its middle', () => {
    expect(wanted?.tank.water).toBeCloseTo(volume / 2, 12);
    expect(wanted?.tank.capacity).toBeCloseTo(volume / 2 / 0.7, 12);
    expect(wanted?.tank.centre?.[0]).toBeCloseTo(0.4, 9);
  });
});

it('a bow painted higher asks for weight aft', () => {
  const by = (waterline: string) => analysed(tubeBoat().replace('waterline: 50 mm', waterline)).wanted?.centre?.[0];
  expect(by('waterline: { bow: 48 mm, stern: 52 mm }')).toBeGreaterThan(by('waterline: 50 mm')!);
});

it.each([
  ['no painted waterline', tubeBoat().replace('  waterline: 50 mm', '')],
  ['a waterline under the keel', tubeBoat().replace('waterline: 50 mm', 'waterline: 1 mm')],
  ['nothing that displaces', 'hull: { length: 300 mm, waterline: 20 mm }'],
])('of a boat with %s nothing can be said', (_, text) => {
  expect(analysed(text).wanted).toBeNull();
});

describe('the word of it', () => {
  const codes = (text: string) => analysed(text).findings.map(({ code, severity }) => `${code} ${severity}`);
  it('takes the alarm out of a boat that is half entered', () => {
    expect(codes(tubeBoat())).toContain('still-wanted information');
    expect(
      analysed(tubeBoat()).findings.filter(({ severity }) => severity === 'error' || severity === 'warning'),
    ).toEqual([]);
  });
  it('keeps it for one that is too heavy', () => {
    const heavy = tubeBoat('{ name: lead, mass: 5 kg, station: 400 mm, height: 20 mm, in: hull }');
    expect(codes(heavy)).toContain('sinks error');
    expect(service.report(analysed(heavy))).toMatch(/Aboard {2,}\d+ g too much, its centre at station/);
  });
  it('is silent about a boat that is all there', () => {
    const lead = '{ name: lead, mass: 1408 g, station: 400 mm, height: 20 mm, in: hull }';
    const tank = '{ name: tank, in: hull, round: 80 mm, station: 130 to 670 mm, height: 50 mm, kind: piston }';
    const text = tubeBoat(lead, tank);
    expect(service.report(analysed(text))).not.toContain('Still wanted');
    expect(analysed(text).findings.filter(({ about }) => about === 'wanted')).toEqual([]);
  });
  it('tells the middle to be moved where no place in the hull does it', () => {
    const off = '{ name: lead, mass: 1380 g, station: 250 mm, height: 20 mm, in: hull }';
    expect(service.report(analysed(tubeBoat(off)))).toMatch(/what is aboard has its centre to move \d+ mm aft/);
  });
});

describe('the tank that is wanted', () => {
  const wantsTank = (text: string) => analysed(text).findings.find(({ code }) => code === 'tank-wanted');
  it('is written into the compartment, and is what it takes', () => {
    const before = analysed(tubeBoat());
    const after = analysed(mended(before, wantsTank(tubeBoat())!));
    expect(after.boat.tanks).toHaveLength(1);
    expect(wantsTank(after.syntax.text)).toBeUndefined();
    expect(after.file.findings).toEqual([]);
    // The tape has marks of 1 mm: the tank is that near to what is wanted.
    expect(after.boat.tanks[0]!.capacity / after.wanted!.tank.capacity).toBeCloseTo(1, 1);
  });
  it('is the one that there is made longer, where it can be', () => {
    const tank = `
    { name: tank, in: hull, round: 80 mm, station: 350 to 450 mm, height: 50 mm, kind: piston }, # the old one
  `;
    const before = analysed(tubeBoat('', tank));
    const after = analysed(mended(before, wantsTank(before.syntax.text)!));
    expect(after.syntax.text).toMatch(/station: 129 to 671 mm, height: 50 mm, kind: piston \}, # the old one/);
    expect(wantsTank(after.syntax.text)).toBeUndefined();
  });
  it('is not offered where it does not fit, and the word says so', () => {
    const text = tubeBoat()
      .replace('station: 100 to 700 mm, height: 50 mm', 'box: 30 x 200 mm, station: 100 to 700 mm, height: 60 mm')
      .replace('round: 90 mm, ', '');
    const finding = wantsTank(text)!;
    expect(finding.mends).toEqual([]);
    expect(finding.message).toMatch(/does not go into “hull”/);
  });
});
