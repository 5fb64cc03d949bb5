/** The page of the trim sheet: shows what the extension sends, and tells it what hands do. */
import { styleSheet } from '../../server/core/drawing/styleSheet.ts';
import type { SheetGlance, SheetPicture } from '../../server/editor/protocol.ts';
import { createGauges } from './gauges.ts';
import { listenToHands } from './hands.ts';
import type { FromPanel, PanelMemory, PanelNames, ToPanel } from './messages.ts';
import { oneAtATime } from './oneAtATime.ts';
import { createPictures } from './pictures.ts';

declare function acquireVsCodeApi(): {
  postMessage(message: FromPanel): void;
  getState(): PanelMemory | undefined;
  setState(memory: PanelMemory): void;
};

const editor = acquireVsCodeApi();
const part = <T extends HTMLElement>(id: string): T => document.getElementById(id) as T;
const [verdict, words, said, pictureHost] = [part('verdict'), part('words'), part('said'), part('pictures')];
const namesButton = part('names');
const [offer, choice, take] = [part('offer'), part<HTMLSelectElement>('choice'), part<HTMLButtonElement>('take')];
const proposed = part('proposed');

const drawings = new CSSStyleSheet();
drawings.replaceSync(styleSheet);
document.adoptedStyleSheets = [...document.adoptedStyleSheets, drawings];

const legend = part('legend');
const gauges = createGauges(part('gauges'), path => editor.postMessage({ kind: 'reveal', path }));
const pictures = createPictures(pictureHost, ids => editor.postMessage({ kind: 'seen', pictures: ids }));
let sheet: Extract<ToPanel, { kind: 'sheet' }> | null = null;
/** Where the page was when it was last seen; given up once it is there again. */
let scroll = editor.getState()?.scroll ?? null;
let names: PanelNames = editor.getState()?.names ?? 'few';
let width = pictureHost.clientWidth;
let drag = 0;
let isHeld = false;

const previews = oneAtATime<{ readonly path: string; readonly metres: number }>(wish =>
  editor.postMessage({ kind: 'preview', drag, ...wish }),
);

interface Shown {
  readonly pictures: readonly SheetPicture[];
  readonly isWhole: boolean;
  readonly words: string;
  readonly glance: SheetGlance;
}

function show(shown: Shown): void {
  if (shown.isWhole) pictures.show(shown.pictures);
  else pictures.showSome(shown.pictures);
  tell(shown);
}

function tell(told: Pick<Shown, 'words' | 'glance'>): void {
  const { verdict: said, gauges: strip, legend: signs } = told.glance;
  put(words, told.words);
  put(verdict, said.words);
  if (verdict.className !== said.state) verdict.className = said.state;
  gauges.show(strip);
  put(legend, signs);
}

/** The same words again are no news to a screen reader. */
function put(element: HTMLElement, text: string): void {
  if (element.textContent !== text) element.textContent = text;
}

const receive: { readonly [K in ToPanel['kind']]: (message: Extract<ToPanel, { kind: K }>) => void } = {
  sheet(message) {
    sheet = message;
    document.body.classList.remove('empty');
    // While a part is held, what it would be goes before what is.
    if (!isHeld) {
      pictures.carry(null);
      show({ ...message, words: '' });
    }
    if (message.isWhole) offerProposals(message);
    else openOffer(false);
    if (scroll !== null) window.scrollTo(0, scroll);
    scroll = null;
    remember();
  },
  preview(message) {
    if (message.drag !== drag) return;
    if (!isHeld || message.pictures.length === 0) return previews.answered();
    tell(message);
    pictures.showHeld(message.pictures, message.metres, previews.answered);
  },
  light: ({ path }) => pictures.light(path),
  say(message) {
    said.textContent = message.words;
  },
  nothing(message) {
    sheet = null;
    document.body.classList.add('empty');
    show({ pictures: [], isWhole: true, words: '', glance: nothingToSee(message.words) });
    offer.hidden = true;
    proposed.hidden = true;
  },
};
const hear = <K extends ToPanel['kind']>(message: Extract<ToPanel, { kind: K }>): void =>
  receive[message.kind as K](message);

function offerProposals({ proposals, chosen }: Extract<ToPanel, { kind: 'sheet' }>): void {
  openOffer(true);
  offer.hidden = proposals.length === 0;
  choice.replaceChildren(...proposals.map((title, i) => new Option(title, String(i), false, i === chosen)));
  choice.title = proposals[chosen] ?? '';
  proposed.textContent = choice.title;
  showWholeProposal();
}

/** A closed list cuts off what it has no room for: then the proposal stands under it as well, in as many lines as it takes. */
function showWholeProposal(): void {
  const pen = document.createElement('canvas').getContext('2d');
  if (!pen) return;
  pen.font = getComputedStyle(choice).font;
  proposed.hidden = offer.hidden || pen.measureText(choice.title).width + LIST_SIGN < choice.clientWidth;
}

/** The room that a closed list takes for its sign and edges, px. */
const LIST_SIGN = 30;

/** What was proposed for a text before this one is not to be taken into this one. */
function openOffer(isOpen: boolean): void {
  offer.ariaBusy = String(!isOpen);
  take.disabled = !isOpen;
}

function remember(): void {
  if (sheet) editor.setState({ uri: sheet.uri, scroll: window.scrollY, names });
}

/** So that a page that is pulled wider is not drawn anew at each pixel. */
const stepped = (room: number): number => Math.floor(room / 20) * 20;

function tellRoom(): void {
  namesButton.ariaPressed = String(names === 'all');
  remember();
  editor.postMessage({ kind: 'room', width, names });
}

const nothingToSee = (why: string): SheetGlance => ({
  verdict: { state: 'unknown', words: why },
  gauges: [],
  legend: '',
});

function endDrag(): void {
  isHeld = false;
  drag += 1;
  previews.forget();
}

const takeProposal = (): void => editor.postMessage({ kind: 'take', proposal: sheet?.chosen ?? 0 });

listenToHands(pictureHost, {
  reveal: path => editor.postMessage({ kind: 'reveal', path }),
  take: takeProposal,
  nudge: (path, marks) => editor.postMessage({ kind: 'nudge', path, marks }),
  hold(path, metres) {
    isHeld = true;
    pictures.carry({ path, metres });
    previews.want({ path, metres });
  },
  drop(path, metres) {
    endDrag();
    // It lies there until the text has it there.
    pictures.carry({ path, metres });
    editor.postMessage({ kind: 'drop', path, metres });
  },
  letGo() {
    endDrag();
    pictures.carry(null);
    if (sheet) show({ ...sheet, words: '' });
  },
});
take.addEventListener('click', takeProposal);
part('print').addEventListener('click', () => editor.postMessage({ kind: 'print' }));
choice.addEventListener('change', () => editor.postMessage({ kind: 'choose', proposal: choice.selectedIndex }));
window.addEventListener('scroll', remember, { passive: true });
window.addEventListener('message', ({ data }: MessageEvent<ToPanel>) => hear(data));
namesButton.addEventListener('click', () => {
  names = names === 'few' ? 'all' : 'few';
  tellRoom();
});
new ResizeObserver(() => {
  showWholeProposal();
  const room = stepped(pictureHost.clientWidth);
  if (room === width || room === 0) return;
  width = room;
  tellRoom();
}).observe(pictureHost);
width = stepped(width);
namesButton.ariaPressed = String(names === 'all');
editor.postMessage({ kind: 'ready', width, names });
