/** The readings that are asked for in one condition, a card each; the cards stay while the same things are asked for. */
import type { PoolCondition, PoolReading } from '../../server/core/poolside/day.ts';
import type { PoolField } from '../../server/core/poolside/fields.ts';
import { comparedNow, type KnownOfDay } from './comparing.ts';
import { readingIn } from './dayLog.ts';
import { choice, h } from './dom.ts';
import { createField, type FieldCard } from './field.ts';

export interface ReadingHands {
  readonly enter: (condition: PoolCondition, reading: PoolReading) => void;
  readonly moveMark: (stations: readonly string[], which: number, text: string) => void;
}

export interface Readings {
  readonly show: (known: KnownOfDay, condition: PoolCondition) => void;
}

/** How the water in the tanks is read: one of the two is shown. */
type TankWay = 'fill' | 'water';

export function createReadings(host: HTMLElement, hands: ReadingHands): Readings {
  let asked = '';
  let cards: readonly FieldCard[] = [];
  let tankWay: TankWay = 'fill';
  let last: Parameters<Readings['show']> | null = null;

  const show: Readings['show'] = (known, condition) => {
    last = [known, condition];
    const { view, day } = known;
    if (readingIn(day, 'submerged', { key: 'water', station: null })) tankWay = 'water';
    const fields = view.fields[condition].filter(({ key }) => !isOther(key, tankWay));
    const stations = fields.flatMap(({ station }) => station ?? []);
    const shownOf = (field: PoolField) => ({
      field,
      reading: readingIn(day, condition, field),
      compared: comparedNow(known, condition, field),
      svg: view.pictures[condition].svg,
    });
    const now = JSON.stringify([condition, fields.map(({ key, station }) => [key, station])]);
    if (now !== asked) {
      asked = now;
      cards = fields.map((field, i) =>
        createField(
          shownOf(field),
          {
            enter: reading => hands.enter(condition, reading),
            moveTo: text => hands.moveMark(stations, stations.indexOf(field.station ?? ''), text),
          },
          `field-${i}`,
        ),
      );
      const tank = fields.findIndex(({ key }) => key === tankWay);
      const elements = cards.map(({ element }) => element);
      if (tank >= 0) elements[tank]!.prepend(wayChoice());
      host.replaceChildren(...elements);
    }
    for (const [i, field] of fields.entries()) cards[i]?.show(shownOf(field));
  };

  const wayChoice = (): HTMLElement =>
    h(
      'div',
      { class: 'tank-way' },
      choice<TankWay>(
        'How the tank is read',
        [
          ['fill', 'Part full'],
          ['water', 'Poured out'],
        ],
        tankWay,
        way => {
          if (!last || way === tankWay) return;
          tankWay = way;
          const [, condition] = last;
          const other: PoolReading['key'] = way === 'fill' ? 'water' : 'fill';
          hands.enter(condition, { key: other, station: null, unit: '', size: null, way: null });
        },
      ),
    );
  return { show };
}

const isOther = (key: PoolField['key'], tankWay: TankWay): boolean =>
  (key === 'fill' || key === 'water') && key !== tankWay;
