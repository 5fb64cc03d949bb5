import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { enter, putAboard } from '../../client/poolside/dayLog.ts';
import { dayText, emptyDay, type LoosePiece, type PoolDay, type PoolReading } from '../../server/core/poolside/day.ts';
import type { PoolField } from '../../server/core/poolside/fields.ts';
import { textOfDay } from '../../server/core/poolside/textOfDay.ts';
import { analysed } from '../helpers/analysed.ts';
import { fieldsOf, NOON } from './days.ts';

const sample = (name: string) => readFileSync(new URL(`../../samples/${name}.boat.yaml`, import.meta.url), 'utf8');

/** SI for one of each unit (NIST SP 811, Appendix B.8; from memory): the test's own, not the program's table. */
const SI: Readonly<Record<string, number>> = {
  mm: 1e-3,
  in: 0.0254,
  '°': Math.PI / 180,
  '%': 0.01,
  ml: 1e-6,
  in3: 0.0254 ** 3,
};

const siOf = ({ size, unit, way }: PoolReading): number => (way ?? 1) * size! * SI[unit]!;

/** Some of the fields, each read somewhere about what is expected. */
const someRead = (fields: readonly PoolField[]) =>
  fc
    .subarray([...fields])
    .chain(some =>
      fc.tuple(
        ...some.map(field =>
          fc.tuple(fc.constant(field), fc.double({ min: 0.8, max: 1.2, noNaN: true }), fc.constantFrom(1, -1)),
        ),
      ),
    );

type Read = readonly [PoolField, number, number];

function entered(day: PoolDay, condition: 'surfaced' | 'submerged', read: readonly Read[]): PoolDay {
  return read.reduce((before, [{ key, station, unit, ways, expected }, part, side]) => {
    const size = Number(((expected?.size ?? 8) * part).toFixed(2));
    const way = ways ? (side > 0 ? 1 : -1) : null;
    return enter(before, condition, { key, station, unit, size, way }, NOON);
  }, day);
}

const pieceIn = (compartment: string | null): LoosePiece => ({
  name: 'lead: “bow” \\ "1"',
  fields: [
    ['material', 'lead'] as const,
    ['mass', '12 g'] as const,
    ['station', '70 mm'] as const,
    ['height', '20 mm'] as const,
    ...(compartment === null ? [] : [['in', compartment] as const]),
  ],
});

describe.each([
  ['petrel', null],
  ['sprat', 'hull'],
])('the text of a day with %s', (name, compartment) => {
  const piece = pieceIn(compartment);
  const boat = sample(name);
  const fields = fieldsOf(boat);
  it('is read back as what was entered, and nothing is said against it', () => {
    fc.assert(
      fc.property(someRead(fields.surfaced), someRead(fields.submerged), fc.boolean(), (afloat, under, isLaden) => {
        const empty = emptyDay('');
        const day = entered(entered(isLaden ? putAboard(empty, piece) : empty, 'surfaced', afloat), 'submerged', under);
        const analysis = analysed(textOfDay(boat, day));
        const open = [day.open.surfaced, day.open.submerged].filter(({ readings }) =>
          readings.some(({ key }) => key !== 'proud'),
        );
        expect(analysis.trials).toHaveLength(open.length);
        expect(analysis.file.findings).toEqual([]);
        open.forEach(({ readings }, i) => {
          const trial = analysis.trials[i]!;
          const wanted = readings.filter(({ key }) => key !== 'proud').map(siOf);
          const values = trial.readings.map(({ value }) => value);
          expect([...values].sort((a, b) => a - b)).toEqual(
            [...wanted].sort((a, b) => a - b).map(value => expect.closeTo(value, 9)),
          );
          const proud = readings.find(({ key }) => key === 'proud');
          expect(trial.proud?.value ?? null).toEqual(proud ? expect.closeTo(siOf(proud), 9) : null);
          expect(trial.aboard.map(({ entry }) => entry.name)).toEqual(isLaden ? [piece.name] : []);
        });
      }),
      { numRuns: 40 },
    );
  });
});

describe('the text of a day', () => {
  it('is nothing without readings, and says the boat’s name with them', () => {
    expect(dayText(emptyDay('Petrel'))).toBe('');
    const day = enter(
      emptyDay('Petrel'),
      'surfaced',
      { key: 'heel', station: null, size: 1.5, unit: '°', way: -1 },
      NOON,
    );
    expect(dayText(day)).toBe(`boat: "Petrel"
trials:
  - date: 2026-05-02
    condition: surfaced
    heel: -1.5°
    note: read at 12:00
`);
  });
  it('leaves out an angle of which nobody said which way, unless it is none', () => {
    const heel = (size: number) =>
      enter(emptyDay(''), 'surfaced', { key: 'heel', station: null, size, unit: '°', way: null }, NOON);
    expect(dayText(heel(2))).toBe('');
    expect(dayText(heel(0))).toContain('heel: 0°');
  });
});
