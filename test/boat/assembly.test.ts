import { describe, expect, it } from 'vitest';
import { analysed, fileFindings, marked, mended, service } from '../helpers/analysed.ts';
import { probeWith } from '../helpers/probe.ts';

const TRAY = 'name: tray, mass: 210 g, station: 200 mm, height: 30 mm, in: hold, balance: { station: 204 mm }';

describe('an assembly', () => {
  const analysis = analysed(
    probeWith(`{ ${TRAY}, holds: [rudder servo, { name: receiver, mass: 12 g, note: with its aerial }] }`),
  );
  it('weighs and balances as one, whatever it holds', () => {
    const plain = analysed(probeWith(`{ ${TRAY} }`));
    expect(fileFindings(analysis)).toEqual([]);
    expect(analysis.bodies.mass).toBeCloseTo(plain.bodies.mass, 12);
    expect(analysis.bodies.massMoment).toEqual(plain.bodies.massMoment);
    expect(analysis.boat.payload.at(-1)!.holds).toEqual(['rudder servo', 'receiver']);
  });
  it('says what is in it', () => {
    const hover = service.hover(analysis, analysis.syntax.text.indexOf('tray'))!.contents as { value: string };
    expect(hover.value).toContain('weighed as one with rudder servo, receiver 12 g');
  });
  it('tells what counts twice, and mends it either way', () => {
    const twice = analysed(
      probeWith(
        `{ ${TRAY}, holds: [rudder servo, Receiver] }`,
        '{ name: receiver, mass: 12 g, station: 210 mm, height: 30 mm, in: hold }',
      ),
    );
    const [finding, ...others] = fileFindings(twice);
    expect(finding).toMatchObject({ code: 'assembly-twice' });
    expect(others).toEqual([]);
    expect(marked(twice, finding!)).toBe('Receiver');
    for (const which of [0, 1]) expect(fileFindings(analysed(mended(twice, finding!, which)))).toEqual([]);
    expect(analysed(mended(twice, finding!, 0)).boat.payload.map(({ name }) => name)).not.toContain('receiver');
    expect(analysed(mended(twice, finding!, 1)).boat.payload.find(({ name }) => name === 'tray')!.holds).toEqual([
      'rudder servo',
    ]);
  });
  it.each([
    [
      'with more in it than it weighs',
      'holds: [{ name: servo, mass: 190 g }, { name: pump, mass: 90 g }]',
      ['assembly-lighter'],
    ],
    ['with about as much in it as it weighs', 'holds: [{ name: servo, mass: 120 g }, { name: pump, mass: 91 g }]', []],
  ] as const)('%s', (_, holds, codes) => {
    expect(fileFindings(analysed(probeWith(`{ ${TRAY}, ${holds} }`))).map(({ code }) => code)).toEqual(codes);
  });
});
