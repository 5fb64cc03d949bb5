import { describe, expect, test } from 'vitest';
import { ballastAdvice } from '../../server/core/corrections/remedies/ballastAdvice.ts';
import { loweringAdvice } from '../../server/core/corrections/remedies/loweringAdvice.ts';
import { tankAdvice } from '../../server/core/corrections/remedies/tankAdvice.ts';
import { weightAdvice } from '../../server/core/corrections/remedies/weightAdvice.ts';
import type { BoatToTrim } from '../../server/core/corrections/room/boatToTrim.ts';
import { finish, type Steps } from '../../server/core/steps/steps.ts';
import { heard } from '../helpers/analysed.ts';
import { outOfLimits } from '../helpers/corrected.ts';
import { probe, probeWith } from '../helpers/probe.ts';

/*
 * The probe is a box barge of round numbers: 400 x 100 x 70 mm, 2000 g, 50 mm deep, 990 ml of tank in the middle. Each
 * remedy is read as a builder reads it and done to the file.
 */

/** Lines of an entry of the probe's payload. */
const lines = (...of: readonly string[]): string => of.join('\n    ');
/** The probe's lead weighing so much, with more said of it. */
const ofLead = (mass: string, ...more: readonly string[]): string =>
  lines('name: floor lead', `mass: ${mass}`, ...more);

type Changes = readonly (readonly [was: string, is: string])[];
type Advice = (boatToTrim: BoatToTrim) => Steps<string | null>;

const toldOf = (advice: Advice, changes: Changes): string | null =>
  finish(advice(heard(probe(...changes)).boatToTrim!));
const outWith = (changes: Changes) => outOfLimits(heard(probe(...changes)));

describe('what would do it, done', () => {
  test('lead cut shorter', () => {
    // 350 g too heavy, of which 2 mm of draft take 80 g.
    const heavy = ['mass: 800 g', 'mass: 1150 g'] as const;
    const words = toldOf(ballastAdvice, [heavy])!;
    const found = /^With “floor lead” cut from 600 g to (\d+) g, station (\d+) mm to (\d+) mm, it would /.exec(words);
    const [mass, from, to] = found!.slice(1).map(Number) as [number, number, number];
    // It is as long as it weighs: 160 mm are 600 g.
    expect(Math.abs((to - from) / 160 - mass / 600)).toBeLessThan(0.01);
    const cut = [heavy, [ofLead('600 g'), ofLead(`${mass} g`)], ['120 to 280 mm', `${from} to ${to} mm`]] as const;
    expect(outWith([heavy])).not.toEqual([]);
    expect(outWith(cut)).toEqual([]);
    // Lead that stays is not to be cut.
    const pinned = [ofLead('600 g'), ofLead('600 g', 'fixed: true')] as const;
    expect(toldOf(ballastAdvice, [heavy, pinned])).toBeNull();
  });

  test('something heavy put lower', () => {
    // G 8 mm higher: 12 mm under water are asked, of which 35 - 27 were there.
    const high = [
      ['height: 30 mm', 'height: 55 mm'],
      ['bg: 3 mm', 'bg: 6 mm'],
    ] as const;
    const words = toldOf(loweringAdvice, high)!;
    const down = Number(/^With “battery” (\d+) mm lower, it would keep every limit as it is\.$/.exec(words)![1]);
    expect(outWith(high)).not.toEqual([]);
    expect(outWith([['height: 30 mm', `height: ${55 - down} mm`], high[1]])).toEqual([]);
    // And no lower than it takes: at half of that it is still out.
    expect(outWith([['height: 30 mm', `height: ${55 - down / 2} mm`], high[1]])).not.toEqual([]);
    expect(toldOf(loweringAdvice, [['150 to 250', '155 to 255']])).toBeNull();
  });

  test('a longer tank, and one elsewhere', () => {
    const fixed = ['mass: 800 g', lines('mass: 800 g', 'fixed: true')] as const;
    const short = ['station: 90 to 310 mm', 'station: 120 to 280 mm'] as const;
    const words = toldOf(tankAdvice, [fixed, short])!;
    const longer =
      /^With “main tank” (\d+) mm long instead of 160 mm, from (\d+) mm to (\d+) mm, it would keep every limit as/;
    const [long, from, to] = longer.exec(words)!.slice(1).map(Number);
    expect(to! - from!).toBe(long);
    expect(outWith([fixed, short])).not.toEqual([]);
    expect(outWith([fixed, ['station: 90 to 310 mm', `station: ${from} to ${to} mm`]])).toEqual([]);

    const aside = ['station: 90 to 310 mm', 'station: 60 to 280 mm'] as const;
    const place = /^With “main tank” .*from (\d+) mm to (\d+) mm, it would keep every limit/.exec(
      toldOf(tankAdvice, [fixed, aside])!,
    );
    expect(outWith([fixed, aside])).not.toEqual([]);
    expect(outWith([fixed, ['station: 90 to 310 mm', `station: ${place![1]} to ${place![2]} mm`]])).toEqual([]);
  });

  test('weight where there is no room for it yet', () => {
    // 100 g less than it should weigh, and 700 g of it 20 mm too far aft: 100 g belong about 140 mm forward of the middle.
    const light = [
      ['150 to 250 mm', '170 to 270 mm'],
      ['mass: 800 g', 'mass: 700 g'],
    ] as const;
    const words = toldOf(weightAdvice, light)!;
    const more = /^It would keep every limit with ([\d.]+) g more near station ([\d.]+) mm, ([\d.]+) mm up\.$/.exec(
      words,
    );
    const [mass, station, height] = more!.slice(1);
    expect(Math.abs(Number(station) - (200 - 14_000 / Number(mass)))).toBeLessThan(5);
    const there = `{ name: more, mass: ${mass} g, station: ${station} mm, height: ${height} mm, in: hold }`;
    const done = light.reduce((text, [was, is]) => text.replace(was, is), probeWith(there));
    expect(outWith(light)).not.toEqual([]);
    expect(outOfLimits(heard(done))).toEqual([]);
  });
});

/* Without its tank, for the surface alone. */
describe('a boat that does not float upright yet', () => {
  const offeredFor = (changes: Changes) => {
    const { boatToTrim, surfaced, corrections } = heard(withoutTank(probe(...changes)));
    const [first] = corrections.all();
    return { boatToTrim, status: surfaced.status, first };
  };
  const withoutTank = (text: string) => text.replace(/^ {2}tanks:\n(?: {4}.*\n)+/m, '');

  test('is lightened to its waterline when it sinks', () => {
    // 3000 g in a box of 2800 ml, of which 1600 g are lead that may be cut: 600 g of it are right, to 80 g of draft.
    const { status, first } = offeredFor([
      [ofLead('600 g'), ofLead('1600 g', 'material: lead', 'offset: -20 to 20 mm', 'fixed: false')],
      ['height: 20 mm', 'height: 8 to 32 mm'],
      ['height: 30 mm', 'height: 24 mm'],
    ]);
    expect(status).toBe('sinks');
    expect(first!.kind).toBe('recut');
    const left = first!.parts.reduce((sum, { mass }) => sum + 1e3 * mass, 0);
    expect(Math.abs(left - 600)).toBeLessThan(80);
    expect(first!.title).toMatch(/: surfaced within limits$/);
  });

  test('is put upright by lead low down when it lies over', () => {
    // G 44.5 up, and M 41.7: it lies over. With 300 g of lead 5 up, and so 7.5 deeper, G is 39.3 and M 43.2 up.
    const { status, first } = offeredFor([
      ['height: 30 mm', 'height: 70 mm'],
      ['draft: 2 mm', 'draft: 10 mm'],
    ]);
    expect(status).not.toBe('sinks');
    expect(first!.title).toMatch(/^Insert \d+ g lead in “bow bay”.*: surfaced (only just )?within limits$/);
    expect(first!.surfaced.status).toBe('afloat');
  });
});
