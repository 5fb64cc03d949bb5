import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { moveAlong } from '../../server/core/corrections/room/shift.ts';
import { applyChanges, splice } from '../../server/core/text/editing/edit.ts';
import { analysed } from '../helpers/analysed.ts';
import { boatText } from '../helpers/boatText.ts';
import { runsOf } from '../helpers/long.ts';

const boatWith = (station: string, units = '{ length: mm, mass: g }') => boatText`
  boat: Tern
  units: ${units}
  hull:
    length: 900 mm
    compartments:
      - { name: box, mass: 2 kg, box: 100 x 100 mm, station: 100 to 800 mm, height: 50 mm }
  payload:
    - name: battery   # kept
      mass: 300 g
      in: box
      station: ${station}   # by the tape
      height: 20 mm
`;

/** The station of the battery once it is moved by so many metres; everything else must be as it was. */
function moved(station: string, metres: number, units?: string): string {
  const text = boatWith(station, units);
  const { boat, syntax } = analysed(text);
  const changes = moveAlong(boat.payload[0]!, metres, boat);
  const after = splice(text, applyChanges(syntax, changes!) ?? []);
  const [before, behind] = boatWith('\u0001', units).split('\u0001') as [string, string];
  expect(after.startsWith(before) && after.endsWith(behind)).toBe(true);
  return after.slice(before.length, after.length - behind.length);
}

describe('a part moved along the boat keeps the way in which its station is written', { timeout: 60_000 }, () => {
  test.each([
    ['345 mm', 0.002, '347 mm'],
    ['345 mm', -0.0104, '335 mm'],
    ['260 to 340 mm', 0.01, '270 to 350 mm'],
    ['260 to 340 mm ± 2 mm', 0.001, '261 to 341 mm ± 2 mm'],
    ['34.5 cm', 0.002, '34.7 cm'],
    ['0.345 m', 0.01, '0.355 m'],
    ['345', 0.003, '348'],
    ['260 to 340', 0.003, '263 to 343'],
    ['345 ± 1', 0.003, '348 ± 1'],
    ['345.5 mm', 0.001, '346.5 mm'],
    ['9 in', 0.0016, '9 1/16 in'],
    ['2 1/2 to 4 3/4 in', 0.0254 / 4, '2 3/4 to 5 in'],
  ])('%s by %d m: %s', (station, metres, after) => {
    expect(moved(station, metres)).toBe(after);
  });

  test('in the file’s own unit where it names none', () => {
    expect(moved('9 1/2', 0.0254, '{ length: in, mass: g }')).toBe('10 1/2');
    expect(moved('34.5', 0.01, '{ length: cm, mass: g }')).toBe('35.5');
  });

  test('less than half a mark of the tape is no move', () => {
    expect(moved('345 mm', 0.0004)).toBe('345 mm');
  });

  test('what has no station of its own, or balances elsewhere, is not moved', () => {
    const { boat } = analysed(
      boatWith('345 mm').replace(
        'height: 20 mm',
        boatText`
        height: 20 mm
            balance: { station: 340 mm }`,
      ),
    );
    expect(moveAlong(boat.payload[0]!, 0.01, boat)).toBeNull();
  });

  test('whatever the station, it is then where it was wanted, to a mark of the tape', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1000, max: 7000 }),
        fc.constantFrom('mm', 'cm', 'm', 'in'),
        fc.boolean(),
        fc.double({ min: -0.09, max: 0.09, noNaN: true }),
        (tenths, unit, isRange, metres) => {
          const perMetre = { mm: 1000, cm: 100, m: 1, in: 1 / 0.0254 }[unit];
          const at = (shift: number) => `${Number(((tenths / 10_000) * perMetre + shift * perMetre).toFixed(4))}`;
          const station = isRange ? `${at(0)} to ${at(0.05)} ${unit}` : `${at(0)} ${unit}`;
          const was = analysed(boatWith(station)).boat.payload[0]!;
          const is = analysed(boatWith(moved(station, metres))).boat.payload[0]!;
          const half = unit === 'in' ? 0.0254 / 32 : 0.0005;
          // What is written is rounded to thousandths of a millimetre or hundred-thousandths of an inch.
          expect(Math.abs(is.centroid[0] - was.centroid[0] - metres)).toBeLessThan(half + 1e-5);
          expect(is.to[0] - is.from[0]).toBeCloseTo(was.to[0] - was.from[0], 4);
        },
      ),
      runsOf(20, 100),
    );
  });
});
