import { describe, expect, it } from 'vitest';
import {
  closeTrials,
  dropTrial,
  enter,
  moveMark,
  putAboard,
  readingIn,
  takeAshore,
} from '../../client/poolside/dayLog.ts';
import { createKeeper, type Drawer, historyDrawer } from '../../client/poolside/keeper.ts';
import { shownFigure, stepped, typedFigure } from '../../client/poolside/typed.ts';
import { aboardWhenRead, emptyDay, type PoolReading, trialsOf } from '../../server/core/poolside/day.ts';
import { NOON } from './days.ts';

const later = { date: '2026-05-02', time: '12:30' };
const mark = (station: string, size: number | null): PoolReading => ({
  ...{ key: 'marks', station, size, unit: 'mm', way: null },
});
const tank = (key: 'fill' | 'water', size: number): PoolReading => ({
  ...{ key, station: null, size, unit: key === 'fill' ? '%' : 'ml', way: null },
});
const lead = { name: 'lead keel aft', fields: [['mass', '20 g']] as const };
const foam = { name: 'foam deck aft', fields: [['mass', '1 g']] as const };

const read = enter(emptyDay('T'), 'surfaced', mark('60 mm', 80), NOON);

describe('a reading', () => {
  it('begins its trial, and entered anew it changes its figure only', () => {
    const anew = enter(read, 'surfaced', mark('60 mm', 82), later);
    expect(anew.open.surfaced).toEqual({ readings: [mark('60 mm', 82)], when: NOON });
  });
  it('of nothing is taken out, and with the last one the trial', () => {
    expect(enter(read, 'surfaced', mark('60 mm', null), later)).toEqual(emptyDay('T'));
  });
  it('of the tank takes the place of the other way to read it', () => {
    const day = enter(enter(emptyDay('T'), 'submerged', tank('fill', 60), NOON), 'submerged', tank('water', 300), NOON);
    expect(day.open.submerged.readings).toEqual([tank('water', 300)]);
    expect(readingIn(day, 'submerged', { key: 'fill', station: null })).toBeNull();
  });
  it('of the other condition leaves it open', () => {
    const both = enter(read, 'submerged', tank('fill', 60), later);
    expect(trialsOf(both).map(({ condition, time }) => [condition, time])).toEqual([
      ['surfaced', '12:00'],
      ['submerged', '12:30'],
    ]);
  });
  it('at another station is another reading', () => {
    const moved = moveMark(read, ['60 mm', '840 mm'], 0, '90 mm');
    expect(moved).toMatchObject({ stations: ['90 mm', '840 mm'], open: { surfaced: { readings: [], when: null } } });
  });
});

describe('what is put aboard', () => {
  const laden = putAboard(read, lead);
  it('closes what was read without it, and is in what is read next', () => {
    expect(laden.closed).toMatchObject([{ condition: 'surfaced', aboard: [] }]);
    expect(aboardWhenRead(laden)).toEqual([]);
    const next = enter(laden, 'surfaced', mark('60 mm', 84), later);
    expect(trialsOf(next).map(({ aboard }) => aboard)).toEqual([[], [lead]]);
    expect(aboardWhenRead(next)).toEqual([lead]);
  });
  it('comes out again', () => {
    const both = putAboard(laden, foam);
    expect(takeAshore(both, lead.name).aboard).toEqual([foam]);
    expect(putAboard(both, lead).aboard).toEqual([foam, lead]);
  });
  it('closes nothing where nothing was read', () => {
    expect(putAboard(emptyDay('T'), lead).closed).toEqual([]);
  });
});

describe('what is read', () => {
  it('once it is taken away is followed by another trial', () => {
    const next = enter(closeTrials(read), 'surfaced', mark('840 mm', 78), later);
    expect(trialsOf(next)).toHaveLength(2);
    expect(closeTrials(closeTrials(read))).toEqual(closeTrials(read));
  });
  it('can be struck out', () => {
    expect(dropTrial(closeTrials(read), 0).closed).toEqual([]);
  });
});

describe('a figure', () => {
  it.each([
    ['88', 88],
    [' 88,5 ', 88.5],
    ['.5', 0.5],
    ['2 1/4', 2.25],
    ['2-1/4', 2.25],
    ['3/8', 0.375],
    ['-1.5', -1.5],
    ['−2', -2],
    ['', null],
    ['8 8', null],
    ['1/0', null],
    ['eight', null],
  ])('typed as “%s” is %s', (text, value) => expect(typedFigure(text)).toBe(value));
  it.each([
    [2.25, 'in', '2 1/4'],
    [0.375, 'in', '3/8'],
    [2, 'in', '2'],
    [0, 'in', '0'],
    [2.19, 'in', '2.19'],
    [2.25, 'mm', '2.25'],
    [0.1 + 0.2, 'cm', '0.3'],
  ])('of %s %s is shown as “%s”', (size, unit, text) => {
    expect(shownFigure(size, unit)).toBe(text);
    expect(typedFigure(text)).toBeCloseTo(size, 9);
  });
  it.each([
    ['begins at what is expected', null, 97, 1, 97],
    ['begins at nothing where nothing is expected', null, null, 1, 0],
    ['goes up by a step', 97, null, 1, 98],
    ['goes down by a step', 97, null, -1, 96],
    ['goes to the next step', 97.4, null, 1, 98],
    ['goes to the step before', 97.4, null, -1, 97],
    ['stays at nothing', 0, null, -1, 0],
    ['stays at the most', 100, null, 1, 100],
  ] as const)('by a tap %s', (_, size, expected, by, next) => {
    expect(stepped(size, expected, by, { step: 1, most: 100 })).toBe(next);
  });
  it('by sixteenths stays on them', () => {
    let size = 0;
    for (let tap = 0; tap < 100; tap++) size = stepped(size, null, 1, { step: 1 / 16, most: null });
    expect(size).toBe(6.25);
  });
});

describe('the day on the phone', () => {
  const drawer = (): Drawer => {
    const kept = new Map<string, string>();
    return { getItem: key => kept.get(key) ?? null, setItem: (key, value) => void kept.set(key, value) };
  };
  const forbidden = (): Drawer => {
    throw new Error('the browser keeps nothing');
  };
  const kept = { day: read, at: 1000 };
  const later = { day: closeTrials(read), at: 1001 };
  it('is there again, for this boat as it is', () => {
    const phone = drawer();
    const keeper = createKeeper(() => phone, drawer, 'Petrel', 'boat: Petrel');
    expect(keeper.kept()).toBeNull();
    expect(keeper.keep(kept)).toBe(true);
    expect(keeper.kept()).toEqual(kept);
    expect(createKeeper(() => phone, drawer, 'Petrel', 'boat: Petrel # changed').kept()).toBeNull();
  });
  it('is there as it was changed last, whichever drawer has that', () => {
    const [lasting, passing] = [drawer(), drawer()];
    const keeperOf = (...drawers: readonly Drawer[]) =>
      createKeeper(
        () => drawers[0]!,
        () => drawers[1]!,
        'Petrel',
        '',
      );
    keeperOf(drawer(), passing).keep(kept);
    expect(keeperOf(lasting, passing).kept()).toEqual(kept);
    keeperOf(lasting, drawer()).keep(later);
    expect(keeperOf(lasting, passing).kept()).toEqual(later);
  });
  it('stands in the history of its window until that is closed', () => {
    const history = {
      state: null as unknown,
      replaceState: (state: unknown) => void Object.assign(history, { state }),
    };
    const keeper = createKeeper(forbidden, () => historyDrawer(history), 'Petrel', '');
    expect([keeper.kept(), keeper.keep(kept)]).toEqual([null, false]);
    expect(keeper.kept()).toEqual(kept);
  });
  it('is not, where the browser keeps nothing or something else', () => {
    const keeper = createKeeper(forbidden, forbidden, 'Petrel', '');
    expect([keeper.keep(kept), keeper.kept()]).toEqual([false, null]);
    const odd: Drawer = { getItem: () => '{"at": 1, "day": {"closed": 3}}', setItem: () => {} };
    expect(createKeeper(() => odd, forbidden, 'Petrel', '').kept()).toBeNull();
  });
});
