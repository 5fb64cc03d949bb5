/** What stands below the readings: what they tell, what to do now, the day. */
import type { DrawnAdvice } from '../../server/core/poolside/answer.ts';
import { dayText, type LoosePiece, type PoolDay, type PoolTrial, trialsOf } from '../../server/core/poolside/day.ts';
import type { PoolView } from '../../server/core/poolside/view.ts';
import { button, h, paragraphs, refill } from './dom.ts';

export interface CardHands {
  readonly putAboard: (piece: LoosePiece) => void;
  readonly takeAshore: (name: string) => void;
  readonly readAgain: () => void;
  readonly copy: () => void;
  /** Null where the browser cannot. */
  readonly share: (() => void) | null;
  readonly save: () => void;
  readonly dropTrial: (index: number) => void;
  readonly beginAnew: () => void;
}

/** Findings that a phone has room for; what is most out stands first in each condition. */
const MOST = 5;

/** What the readings tell of the boat. */
export function showTold(host: HTMLElement, view: PoolView, isWorking: boolean): void {
  const { findings, verdict } = view;
  const heading = verdict.length > 0 && view.isSettled ? 'With what was read' : 'By the file';
  // Said anew it would be read out anew.
  const told = JSON.stringify([heading, findings, verdict, isWorking]);
  if (host.dataset.told === told) return;
  host.dataset.told = told;
  refill(
    host,
    ...(verdict.length > 0 ? [h('h3', {}, 'What may be behind it'), ...paragraphs(verdict)] : []),
    h('h3', {}, heading),
    findings.length === 0
      ? h('p', { class: 'within' }, 'Within all limits.')
      : h('ul', { class: 'out' }, ...findings.slice(0, MOST).map(words => h('li', {}, words))),
    isWorking ? h('p', { class: 'working' }, 'Working it out …') : null,
  );
}

/** One thing to do, and what is on board for the day. */
export function showToDo(
  host: HTMLElement,
  {
    day,
    advice,
    isWorking,
  }: { readonly day: PoolDay; readonly advice: DrawnAdvice | null; readonly isWorking: boolean },
  hands: CardHands,
): void {
  refill(host, ...advised(day, advice, isWorking, hands), ...aboard(day, hands));
}

function advised(
  day: PoolDay,
  advice: DrawnAdvice | null,
  isWorking: boolean,
  hands: CardHands,
): readonly (HTMLElement | null)[] {
  if (trialsOf(day).length === 0) return paragraphs(['Float it and read one thing. What to put aboard is told then.']);
  if (isWorking) return paragraphs(['Working it out …'], 'working');
  if (!advice) return paragraphs(['Nothing can be proposed.']);
  if (advice.pieces.length === 0) return paragraphs([advice.words], advice.state === 'within' ? 'within' : '');
  const left = advice.pieces.filter(({ piece }) => !day.aboard.some(({ name }) => name === piece.name));
  const [next, ...later] = left;
  if (!next) {
    return [
      h('p', { class: 'head' }, 'Now read it again.'),
      h('p', {}, 'Lay it in the water, wait until it is at rest, and read what is asked for above.'),
      button('To the readings', hands.readAgain, { class: 'main', 'data-focus': 'again' }),
    ];
  }
  const count = advice.pieces.length - left.length + 1;
  return [
    advice.pieces.length > 1 ? h('p', { class: 'count' }, `${count} of ${advice.pieces.length}`) : null,
    h('p', { class: 'head' }, `Put aboard: ${next.head}`),
    h('ul', { class: 'steps' }, ...next.lines.map(line => h('li', {}, line))),
    ...(later.length > 0 ? paragraphs([`After that: ${later.map(({ head }) => head).join(', ')}.`]) : []),
    h('p', {}, advice.words),
    button('Done: put aboard', () => hands.putAboard(next.piece), { class: 'main', 'data-focus': 'done' }),
  ];
}

function aboard({ aboard: pieces }: PoolDay, hands: CardHands): readonly HTMLElement[] {
  if (pieces.length === 0) return [];
  return [
    h('h3', {}, 'On board for the day'),
    ...pieces.map(({ name, fields }) => {
      const text = (key: string) => fields.find(([each]) => each === key)?.[1];
      const words = [text('mass'), text('station')].filter(each => each !== undefined).join(' at ');
      const out = button('Taken out', () => hands.takeAshore(name), { class: 'quiet', 'data-focus': `out ${name}` });
      return h('div', { class: 'row' }, h('span', {}, `${name}: ${words}`), out);
    }),
  ];
}

/** The trials of the day, and how they leave the phone. */
export function showDay(host: HTMLElement, day: PoolDay, said: string, hands: CardHands): void {
  const trials = trialsOf(day);
  if (trials.length === 0) {
    refill(host, h('p', {}, 'Nothing is read yet. What you read is kept on this phone.'));
    return;
  }
  const text = h('textarea', { readonly: true, rows: '8', 'aria-label': 'The trials as text', 'data-focus': 'text' });
  text.value = dayText(day);
  text.addEventListener('focus', () => text.select());
  refill(
    host,
    ...trials.map((trial, i) => {
      const isClosed = i < day.closed.length;
      const out = button('Strike out', () => hands.dropTrial(i), { class: 'quiet', 'data-focus': `drop ${i}` });
      return h('div', { class: 'row' }, h('span', {}, trialWords(trial)), isClosed ? out : h('em', {}, 'being read'));
    }),
    h('p', { class: 'said-of-day', role: 'status' }, said),
    h(
      'div',
      { class: 'ways-out' },
      button('Copy', hands.copy, { class: 'main', 'data-focus': 'copy' }),
      hands.share ? button('Share', hands.share, { class: 'main', 'data-focus': 'share' }) : null,
      button('Save as a file', hands.save, { class: 'main', 'data-focus': 'save' }),
    ),
    h('p', {}, 'In the editor: “Trimwright: Take trials from the poolside page”. Taken twice, they count once.'),
    h('details', {}, h('summary', {}, 'The text'), text),
    h(
      'details',
      {},
      h('summary', {}, 'Another day'),
      h('p', {}, 'Strikes out all trials on this phone. Copy, share or save them first.'),
      button('Strike out all of it', hands.beginAnew, { class: 'quiet', 'data-focus': 'anew' }),
    ),
  );
}

function trialWords({ time, condition, readings, aboard: pieces }: PoolTrial): string {
  const count = readings.length === 1 ? 'one reading' : `${readings.length} readings`;
  const loose = pieces.length === 0 ? '' : `, with ${pieces.map(({ name }) => name).join(', ')}`;
  return `${time} ${condition}: ${count}${loose}`;
}
