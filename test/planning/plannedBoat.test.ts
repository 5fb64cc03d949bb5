import { describe, expect, it } from 'vitest';
import { analysed, service } from '../helpers/analysed.ts';

const planned = (figures: string, units: 'metric' | 'inches' = 'metric') => {
  const made = service.plannedBoat('Whimbrel', figures, units);
  return made.status === 'done' ? made.text : expect.unreachable(made.reason);
};

describe('a boat planned from four figures', () => {
  it.each([
    ['900, 90, 62, 1:60', 'metric'],
    ['1500, 170, 120', 'metric'],
    ['60 cm, 7 cm, 50 mm, 1:72', 'metric'],
    ['35 1/2, 3 1/2, 2 3/8, 1:60', 'inches'],
    ['24 in, 2 1/2 in, 1 3/4 in, 1:96', 'inches'],
  ] as const)(
    'of %s is read without a fault, has a tank that it wants, and is told what is wanted',
    (figures, units) => {
      const { boat, findings, wanted } = analysed(planned(figures, units));
      expect(findings.filter(({ about }) => about === 'file')).toEqual([]);
      expect(findings.filter(({ severity }) => severity === 'error' || severity === 'warning')).toEqual([]);
      expect(findings.map(({ code }) => code)).toContain('still-wanted');
      expect(findings.map(({ code }) => code)).not.toContain('tank-wanted');
      expect(boat.tanks).toHaveLength(1);
      // Hull and cylinder are not all that such a boat weighs.
      expect(wanted!.mass / wanted!.displacement).toBeGreaterThan(0.2);
    },
  );

  it('has the figures that it was planned from', () => {
    const { boat } = analysed(planned('900, 90, 62, 1:60'));
    expect(boat).toMatchObject({
      name: 'Whimbrel',
      length: 0.9,
      waterline: { bow: 0.062, stern: 0.062 },
      scale: 1 / 60,
    });
  });

  it('lists what is still to be weighed', () => {
    expect(planned('900, 90, 62')).toMatch(/^payload: #[\s\S]*^ {2}# battery$[\s\S]*^ {2}# keel lead/m);
  });

  it.each([
    ['900, 90', /such as: 900, 90, 62, 1:60/],
    ['900, 90, 95', /less than the beam/],
    ['900, 400, 62', /a third of the length/],
    ['900, ninety, 62', /ninety/],
    ['900, 90, 62, 60', /like 1:60/],
    ['', /such as/],
  ])('says what is wrong with “%s”', (figures, reason) => {
    expect(service.plannedBoat('X', figures)).toMatchObject({
      status: 'refused',
      reason: expect.stringMatching(reason),
    });
  });
});
