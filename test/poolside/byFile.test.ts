import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { comparedNow } from '../../client/poolside/comparing.ts';
import { closeTrials, enter } from '../../client/poolside/dayLog.ts';
import { createPoolside } from '../../server/core/poolside/answer.ts';
import { emptyDay, type PoolCondition } from '../../server/core/poolside/day.ts';
import { dayOf, NOON } from './days.ts';

const sample = (name: string) => readFileSync(new URL(`../../samples/${name}.boat.yaml`, import.meta.url), 'utf8');

describe('what the page says of a reading before the worker has answered', () => {
  it.each(['petrel', 'sprat', 'dunlin', 'grebe'])('is what the worker says of it after that: %s', name => {
    const ask = createPoolside(sample(name), () => null);
    const { view } = ask(emptyDay(''));
    const viewed = emptyDay('');
    fc.assert(
      fc.property(
        fc.constantFrom<PoolCondition>('surfaced', 'submerged'),
        fc.integer({ min: 0, max: 3 }),
        fc.integer({ min: -12, max: 12 }),
        (condition, which, steps) => {
          const field = view.fields[condition][which]!;
          if (!field.byFile) return;
          const least = field.ways ? -30 : 0;
          const size = Math.min(field.most ?? 1e3, Math.max(least, field.expected!.size + steps * field.step));
          const day = dayOf('', condition, [[field, size]]);
          const atOnce = comparedNow({ day, view, viewed }, condition, field);
          const [told] = ask(day).view.compared;
          // A trial with more water than the tanks hold is none.
          if (!told && field.key === 'water') return;
          expect(atOnce).toEqual({ tone: told!.tone, words: told!.words });
        },
      ),
      { numRuns: 12 },
    );
  });

  it('is by the file also once trials are heard, and with what was put aboard', () => {
    const ask = createPoolside(sample('petrel'), () => null);
    const [fore, aft] = ask(emptyDay('')).view.fields.surfaced;
    const first = closeTrials(dayOf('Petrel', 'surfaced', [[fore!, fore!.expected!.size + 30]]));
    const lead = {
      name: 'loose lead',
      fields: [
        ['material', 'lead'] as const,
        ['mass', '60 g'] as const,
        ['station', '90 mm'] as const,
        ['height', '20 mm'] as const,
      ],
    };
    const aboard = { ...first, aboard: [lead] };
    const view = ask(aboard).settled.all();
    const read = enter(
      aboard,
      'surfaced',
      { key: 'marks', station: aft!.station, unit: 'mm', size: 70, way: null },
      NOON,
    );
    const field = view.fields.surfaced[1]!;
    const atOnce = comparedNow({ day: read, view, viewed: aboard }, 'surfaced', field);
    const told = ask(read).view.compared;
    expect(told).toHaveLength(1);
    expect(atOnce).toEqual({ tone: told[0]!.tone, words: told[0]!.words });
  });

  it('is what the worker said where that still holds, and nothing where nothing can be told', () => {
    const ask = createPoolside(sample('petrel'), () => null);
    const { view: first } = ask(emptyDay(''));
    const [fore, , heel] = first.fields.surfaced;
    const day = dayOf('Petrel', 'surfaced', [[fore!, 90]]);
    const slip = {
      ...first,
      compared: [
        {
          condition: 'surfaced' as const,
          key: 'marks' as const,
          station: fore!.at,
          tone: 'slip' as const,
          words: 'Read it again.',
        },
      ],
    };
    expect(comparedNow({ day, view: slip, viewed: day }, 'surfaced', fore!)?.words).toBe('Read it again.');
    const other = dayOf('Petrel', 'surfaced', [[fore!, fore!.expected!.size + 30]]);
    expect(comparedNow({ day: other, view: slip, viewed: day }, 'surfaced', fore!)?.tone).toBe('differs');
    expect(comparedNow({ day, view: first, viewed: day }, 'surfaced', heel!)).toBeNull();
    const sideless = enter(day, 'surfaced', { key: 'heel', station: null, unit: '°', size: 2, way: null }, NOON);
    expect(comparedNow({ day: sideless, view: first, viewed: day }, 'surfaced', heel!)).toBeNull();
    const [trim, , , , proud] = first.fields.submerged;
    const under = dayOf('Petrel', 'submerged', [
      [trim!, 3],
      [proud!, 4],
    ]);
    expect(comparedNow({ day: under, view: first, viewed: day }, 'submerged', trim!)).toBeNull();
  });
});
