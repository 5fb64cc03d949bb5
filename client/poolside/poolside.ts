/** The poolside page: keeps the day, asks the worker what it makes of the boat, and shows that. */
import { styleSheet } from '../../server/core/drawing/styleSheet.ts';
import type { DrawnAdvice } from '../../server/core/poolside/answer.ts';
import {
  dayText,
  emptyDay,
  type PoolCondition,
  type PoolDay,
  type PoolTime,
  trialsOf,
} from '../../server/core/poolside/day.ts';
import type { FromWorker, ToWorker } from '../../server/core/poolside/messages.ts';
import type { PoolBoat } from '../../server/core/poolside/poolBoat.ts';
import type { PoolView } from '../../server/core/poolside/view.ts';
import { type CardHands, showDay, showToDo, showTold } from './cards.ts';
import { closeTrials, dropTrial, enter, moveMark, putAboard, takeAshore } from './dayLog.ts';
import { choice, h, refill } from './dom.ts';
import { createKeeper, historyDrawer } from './keeper.ts';
import { pictureIn } from './picture.ts';
import { createReadings } from './readings.ts';
import { typedFigure } from './typed.ts';
import { copyText, saveText, sharer } from './waysOut.ts';

/** The worker's first turn warms it up: the page has that answer already. */
const WARMING = 0;

/** Fingers are still at it for so long, ms: then the worker is asked. */
const PAUSE = 250;

const part = <T extends HTMLElement>(id: string): T => document.getElementById(id) as T;
const json = <T>(id: string): T => JSON.parse(part(id).textContent ?? 'null') as T;

const drawings = new CSSStyleSheet();
drawings.replaceSync(styleSheet);
document.adoptedStyleSheets = [...document.adoptedStyleSheets, drawings];

const boat = json<PoolBoat>('boat');
const keeper = createKeeper(
  () => localStorage,
  () => historyDrawer(history),
  boat.name,
  boat.text,
);
let { day, at: changedAt } = keeper.kept() ?? { day: emptyDay(boat.name), at: 0 };
let view: PoolView = boat.view;
let viewed = emptyDay(boat.name);
let advice: DrawnAdvice | null = null;
let condition: PoolCondition = 'surfaced';
let turn = WARMING;
/** What is shown is of an earlier turn until the worker has answered this one. */
let working: { readonly view: boolean; readonly advice: boolean } = { view: false, advice: false };
let saidOfDay = '';
let pause: ReturnType<typeof setTimeout> | undefined;

const worker = startWorker();

function startWorker(): Worker {
  // The editor's worker, told what it is here.
  const code = ['self.poolside = true;\n', json<string>('worker')];
  const url = URL.createObjectURL(new Blob(code, { type: 'text/javascript' }));
  const made = new Worker(url);
  made.addEventListener('message', ({ data }: MessageEvent<FromWorker>) => hear(data));
  made.addEventListener('error', ({ message }) => hear({ kind: 'failed', turn, reason: message }));
  const first: readonly ToWorker[] = [
    { kind: 'boat', boat: { text: boat.text, meshes: boat.meshes } },
    { kind: 'day', turn: WARMING, day: emptyDay(boat.name) },
  ];
  for (const message of first) made.postMessage(message);
  return made;
}

function hear(message: FromWorker): void {
  if (message.kind !== 'failed' && (message.turn !== turn || turn === WARMING)) return;
  if (message.kind === 'view') {
    view = message.view;
    viewed = day;
    working = { ...working, view: working.view && !view.isSettled && view.isWhole };
  } else if (message.kind === 'advice') {
    advice = message.advice;
    working = { ...working, advice: false };
  } else {
    working = { view: false, advice: false };
    part('trouble').textContent =
      `Nothing can be figured here (${message.reason}). What you read is kept all the same: copy it, and take it into the boat file.`;
  }
  show();
}

function ask(advice: boolean): void {
  turn += 1;
  working = { view: true, advice: working.advice || advice };
  clearTimeout(pause);
  pause = setTimeout(() => {
    const asked: ToWorker = { kind: 'day', turn, day };
    worker.postMessage(asked);
  }, PAUSE);
}

/** The day as hands have changed it: kept at once, then asked about. What is put aboard leaves the advice as it was. */
function change(next: PoolDay, { changesAdvice = true } = {}): void {
  day = next;
  changedAt = Date.now();
  saidOfDay = '';
  if (!keeper.keep({ day, at: changedAt }))
    part('trouble').textContent = 'This browser keeps nothing: copy the trials before you close the page.';
  ask(changesAdvice);
  show();
}

/** The same page may be open in another window, or another page of this boat: what was read there last counts here too. */
function catchUp(): void {
  const kept = keeper.kept();
  if (!kept || kept.at <= changedAt) return;
  ({ day, at: changedAt } = kept);
  ask(true);
  show();
}

/** Date and time where the phone is. */
function now(): PoolTime {
  const at = new Date();
  const two = (figure: number): string => String(figure).padStart(2, '0');
  return {
    date: `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`,
    time: `${two(at.getHours())}:${two(at.getMinutes())}`,
  };
}

const readings = createReadings(part('fields'), {
  enter: (where, reading) => change(enter(day, where, reading, now())),
  moveMark(stations, which, text) {
    const unit = stations[which]?.replace(/^-?[\d\s./]+/, '') ?? '';
    const figure = typedFigure(text.replace(/(?<![a-z\s])[a-z\s]+$/i, ''));
    if (figure !== null) change(moveMark(day, stations, which, `${figure} ${unit}`));
    else show();
  },
});

/** What leaves the phone is read: what is read later is another trial. */
function takenAway(): string {
  change(closeTrials(day));
  return dayText(day);
}

function say(words: string): void {
  saidOfDay = words;
  show();
}

/** Whose boat is shown. */
const shownBy = (): string => (view.isSettled && view.verdict.length > 0 ? 'By all that was read' : 'By the file');

/** How it lies, a line for each figure. */
const linesOf = (words: string): readonly string[] => words.replace(/\.$/, '').split(/; |\. /);

const share = sharer();
const hands: CardHands = {
  putAboard: piece => change(putAboard(day, piece), { changesAdvice: false }),
  takeAshore: name => change(takeAshore(day, name), { changesAdvice: false }),
  readAgain: () => part('read').scrollIntoView({ behavior: 'smooth' }),
  copy: () => void copyText(takenAway()).then(isDone => say(isDone ? 'Copied.' : 'Open “The text” and copy it there.')),
  share: share && (() => void share(boat.name, takenAway()).then(isDone => say(isDone ? 'Shared.' : ''))),
  save() {
    const name = boat.name.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '-') || 'boat';
    saveText(`${name}-${now().date}.trials.yaml`, takenAway());
    say('Saved.');
  },
  dropTrial: index => change(dropTrial(day, index)),
  beginAnew: () => change(emptyDay(boat.name)),
};

function show(): void {
  if (!view.dives) condition = 'surfaced';
  const conditions = [['surfaced', 'Surfaced'] as const, ['submerged', 'Submerged'] as const];
  refill(
    part('condition'),
    choice('Condition', view.dives ? conditions : conditions.slice(0, 1), condition, chosen => {
      condition = chosen;
      show();
    }),
  );
  part('title').textContent = boat.name || 'Boat without a name';
  part('water').textContent = view.water;
  const pending = advice?.pieces.some(({ piece }) => !day.aboard.some(({ name }) => name === piece.name));
  const drawn = !working.advice && pending && advice ? advice.pictures : view.pictures;
  pictureIn(part('picture'), drawn[condition]);
  part('by').textContent = `${shownBy()}, with what is aboard now:`;
  part('lies').replaceChildren(...linesOf(view.pictures[condition].words).map(words => h('li', {}, words)));
  readings.show({ view, day, viewed }, condition);
  showTold(part('told'), view, working.view);
  showToDo(part('todo'), { day, advice, isWorking: working.advice }, hands);
  showDay(part('day'), day, saidOfDay, hands);
}

document.title = `${boat.name || 'Boat'}: at the pool`;
const isBegun = trialsOf(day).length > 0 || day.aboard.length > 0;
part<HTMLDetailsElement>('mind').open = !isBegun;
show();
if (isBegun) ask(true);
addEventListener('storage', catchUp);
addEventListener('pageshow', catchUp);
document.addEventListener('visibilitychange', catchUp);
