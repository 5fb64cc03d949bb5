/** One thing to read: what and where, what is expected, a figure with steppers, its side, and how far it is from the file. */
import type { AgainstFile } from '../../server/core/poolside/byFile.ts';
import type { PoolReading } from '../../server/core/poolside/day.ts';
import type { PoolField } from '../../server/core/poolside/fields.ts';
import { button, choice, h, refill } from './dom.ts';
import { frame, nearPicture } from './picture.ts';
import { shownFigure, stepped, typedFigure } from './typed.ts';

export interface FieldCard {
  readonly element: HTMLElement;
  readonly show: (shown: FieldShown) => void;
}

export interface FieldShown {
  readonly field: PoolField;
  readonly reading: PoolReading | null;
  readonly compared: AgainstFile | null;
  readonly svg: string;
}

export interface FieldHands {
  readonly enter: (reading: PoolReading) => void;
  /** The water is read at another station, as it was typed. */
  readonly moveTo: (text: string) => void;
}

const UNITS: Readonly<Record<string, string>> = { in3: 'in³' };

/** The card stays while its field does: what is typed in it is never taken from under the fingers. */
export function createField(first: FieldShown, hands: FieldHands, id: string): FieldCard {
  let shown = first;
  const { label, how, unit } = first.field;
  const input = h('input', {
    id,
    type: 'text',
    inputmode: 'decimal',
    autocomplete: 'off',
    enterkeyhint: 'done',
    'aria-describedby': `${id}-said`,
    placeholder: '–',
  });
  const size = () => shown.reading?.size ?? null;
  const enter = (change: Partial<PoolReading>): void => {
    const { key, station } = shown.field;
    const before = shown.reading ?? { key, station, unit, size: null, way: null };
    hands.enter({ ...before, ...change });
  };
  const tap = (by: 1 | -1) => () =>
    enter({ size: stepped(size(), shown.field.expected?.size ?? null, by, shown.field) });
  const type = (): void => {
    const figure = typedFigure(input.value);
    const most = shown.field.most ?? Number.POSITIVE_INFINITY;
    const isWrong =
      input.value.trim() !== '' && (figure === null || Math.abs(figure) > most || (figure < 0 && !shown.field.ways));
    input.setAttribute('aria-invalid', String(isWrong));
    if (isWrong) return;
    enter({ size: figure === null ? null : Math.abs(figure), ...(figure !== null && figure < 0 ? { way: -1 } : {}) });
  };
  input.addEventListener('input', type);
  input.addEventListener('keydown', ({ key }) => key === 'Enter' && input.blur());
  input.addEventListener('blur', () => {
    input.setAttribute('aria-invalid', 'false');
    input.value = written(size(), unit);
  });
  const expected = h('p', { class: 'expected' });
  const said = h('p', { class: 'said', id: `${id}-said`, 'aria-live': 'polite' });
  const sides = h('div', {});
  const near = shown.field.key === 'marks' ? frame('near') : null;
  const place = h('div', { class: 'place' });
  const element = h(
    'div',
    { class: 'field', 'data-key': first.field.key },
    h('div', { class: 'what' }, h('label', { for: id }, label), expected),
    near,
    place,
    h('p', { class: 'how' }, how),
    h(
      'div',
      { class: 'stepper' },
      button('−', tap(-1), { 'aria-label': `${label}: less` }),
      h('div', { class: 'figure' }, input, h('span', { class: 'unit' }, UNITS[unit] ?? unit)),
      button('+', tap(1), { 'aria-label': `${label}: more` }),
    ),
    sides,
    said,
  );
  const show = (next: FieldShown): void => {
    shown = next;
    const { field, reading, compared } = next;
    if (document.activeElement !== input) input.value = written(size(), unit);
    // Once it is read, what is expected has heard it.
    expected.textContent = field.expected && size() === null ? `expected ${field.expected.words}` : '';
    if (field.ways)
      refill(
        sides,
        sideChoice(field.ways, reading, way => enter({ way })),
      );
    const words = wordsFor(next);
    // Said anew it would be read out anew.
    if (said.textContent !== words) said.textContent = words;
    said.className = `said ${compared && reading?.size !== null ? compared.tone : ''}`;
    element.classList.toggle('read', reading !== null && reading.size !== null);
    if (near && field.at !== null) nearPicture(near, next.svg, field.at);
    if (field.station !== null && !place.querySelector('input'))
      refill(place, stationLine(field.station, field.where ?? field.station, hands.moveTo));
  };
  show(first);
  return { element, show };
}

const written = (size: number | null, unit: string): string => (size === null ? '' : shownFigure(size, unit));

function sideChoice(
  [more, less]: readonly [string, string],
  reading: PoolReading | null,
  choose: (way: 1 | -1) => void,
): HTMLElement {
  const chosen = reading?.way === 1 ? '1' : reading?.way === -1 ? '-1' : null;
  const sides = [['-1', less] as const, ['1', more] as const];
  const element = choice('Which way', sides, chosen, way => choose(way === '1' ? 1 : -1));
  element.classList.toggle('wanted', isSideWanted(reading));
  return element;
}

/** A figure without its side says nothing yet. */
const isSideWanted = (reading: PoolReading | null): boolean =>
  reading !== null && reading.size !== null && reading.size !== 0 && reading.way === null;

function wordsFor({ field, reading, compared }: FieldShown): string {
  if (field.ways && isSideWanted(reading)) return `Say which way: ${field.ways[1]} or ${field.ways[0]}.`;
  if (reading === null || reading.size === null) return '';
  return compared?.words ?? '';
}

/** Where it is read; a tap opens it for another station. */
function stationLine(station: string, where: string, moveTo: (text: string) => void): HTMLElement {
  const words = h('span', {}, where);
  const change = button(
    'Elsewhere',
    () => {
      const input = h('input', { type: 'text', inputmode: 'decimal', 'aria-label': 'Station' });
      input.value = station;
      const done = button('Here', () => {
        line.replaceChildren(words, change);
        moveTo(input.value);
      });
      line.replaceChildren(input, done);
      input.select();
    },
    { class: 'quiet' },
  );
  const line = h('div', { class: 'station-line' }, words, change);
  return line;
}
