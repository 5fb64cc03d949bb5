import type { SheetPicture } from '../../server/editor/protocol.ts';
import { eachFrame, inTwo } from './eachFrame.ts';
import { carryPart, type HeldPart } from './held.ts';
import { listenForNames, nameLit } from './nameTag.ts';
import { joined, patchesFor } from './patch.ts';
import { renew } from './renew.ts';
import { SAME, withoutSame } from './same.ts';
import { watchSight } from './sight.ts';
import { readSvg } from './svgDocument.ts';

/** The pictures on the page. */
export interface Pictures {
  /** Shows these pictures and no others; whatever is the same stays as it is, and so do scroll and keyboard focus. */
  show(pictures: readonly SheetPicture[]): void;
  /** Shows these pictures; others that are there wait, out of date. */
  showSome(pictures: readonly SheetPicture[]): void;
  /** Puts a held part where the hand has it, at once; null lets go of it, and of the pictures of it that still wait. */
  carry(held: HeldPart | null): void;
  /**
   * Shows pictures in which the held part is `metres` aft of where it is in the file; others wait. Each is read in one frame
   * and shown in the next, so that the hand waits for neither.
   */
  showHeld(pictures: readonly SheetPicture[], metres: number, onShown: () => void): void;
  /** Lights the entry at a path in every picture; null for none. */
  light(path: string | null): void;
}

/** @param onSeen hears which pictures can be seen, wholly or in part, whenever that changes */
export function createPictures(host: HTMLElement, onSeen: (ids: readonly string[]) => void): Pictures {
  let shown: readonly SheetPicture[] = [];
  let lit: string | null = null;
  let held: HeldPart | null = null;
  const frames = eachFrame();
  const figures = new Map<string, Figure>();
  listenForNames(host);
  const sight = watchSight(() => {
    carry();
    onSeen([...figures].flatMap(([id, { root }]) => (sight.isSeen(root) ? [id] : [])));
  });
  const carry = (some: Iterable<Figure> = figures.values()): void => {
    // What cannot be seen is not laid out anew at each move.
    for (const { root, drawing, drawnAt } of some) if (!held || sight.isSeen(root)) carryPart(drawing, held, drawnAt);
  };
  const draw = (figure: Figure, picture: SheetPicture, drawnAt: number, next = readNew(figure, picture)): void => {
    redraw(figure, picture, next, { room: host.clientWidth, lit });
    figure.drawnAt = drawnAt;
    if (held) carry([figure]);
  };
  const showAll = (pictures: readonly SheetPicture[], outdated: readonly string[]): void => {
    frames.stop();
    const { gone, patches } = patchesFor(shown, pictures);
    for (const id of gone) {
      const root = figures.get(id)?.root;
      figures.delete(id);
      root?.remove();
      if (root) sight.forget(root);
    }
    patches.forEach((patch, i) => {
      const id = patch.kind === 'keep' ? patch.id : patch.picture.id;
      const figure = figures.get(id) ?? createFigure();
      figures.set(id, figure);
      if (patch.kind === 'add') sight.watch(figure.root);
      if (patch.kind !== 'keep') tell(figure, patch.picture);
      if (patch.kind === 'add' || patch.kind === 'redraw') draw(figure, patch.picture, 0);
      if (host.children[i] !== figure.root) host.insertBefore(figure.root, host.children[i] ?? null);
    });
    tellBusy(figures, outdated);
    shown = pictures;
  };
  return {
    show: pictures => showAll(pictures, []),
    showSome(pictures) {
      const page = joined(shown, pictures);
      showAll(page.pictures, page.outdated);
    },
    carry(next) {
      held = next;
      if (!held) frames.stop();
      carry();
    },
    showHeld(pictures, metres, onShown) {
      const next = pictures.filter(({ id }) => figures.has(id));
      tellBusy(figures, joined(shown, next).outdated);
      const steps = next.flatMap(picture => {
        const figure = figures.get(picture.id)!;
        const show = (read: SVGSVGElement | null): void => {
          tell(figure, picture);
          draw(figure, picture, metres, read);
          shown = joined(shown, [picture]).pictures;
        };
        return inTwo(() => readNew(figure, picture), show);
      });
      frames.take(steps, onShown);
    },
    light(path) {
      lit = path;
      for (const { drawing } of figures.values()) {
        lightIn(drawing, lit);
        nameLit(drawing);
      }
    },
  };
}

function tellBusy(figures: ReadonlyMap<string, Figure>, outdated: readonly string[]): void {
  for (const [id, { root }] of figures) {
    const isBusy = String(outdated.includes(id));
    if (root.getAttribute('aria-busy') !== isBusy) root.setAttribute('aria-busy', isBusy);
  }
}

interface Figure {
  readonly root: HTMLElement;
  readonly words: HTMLElement;
  readonly drawing: HTMLElement;
  /** Where a held part is in the picture: m aft of where it is in the file. */
  drawnAt: number;
  /** The markup that it shows; empty where none is. */
  markup: string;
}

function createFigure(): Figure {
  const root = document.createElement('figure');
  const drawing = document.createElement('div');
  const words = document.createElement('figcaption');
  // The drawing carries its own heading; these words are for those who do not see it.
  words.className = 'unseen';
  root.append(words, drawing);
  return { root, words, drawing, drawnAt: 0, markup: '' };
}

const tell = ({ root, words }: Figure, { id, title, description }: SheetPicture): void => {
  root.dataset.picture = id;
  const said = `${title}. ${description}`;
  if (words.textContent !== said) words.textContent = said;
};

interface Look {
  /** Width of the page, px. */
  readonly room: number;
  readonly lit: string | null;
}

/** What is new in a picture, ready to be shown in place of the one that is shown now; null where it cannot be read. */
function readNew({ markup }: Figure, { svg }: SheetPicture): SVGSVGElement | null {
  const next = readSvg(withoutSame(svg, markup));
  if (!next) return null;
  // An image would hide its parts from a screen reader.
  next.setAttribute('role', 'group');
  for (const entry of next.querySelectorAll<SVGElement>(`:is([data-path], [data-correction]):not([${SAME}])`)) {
    entry.setAttribute('tabindex', '0');
    entry.setAttribute('role', 'button');
    entry.setAttribute('aria-describedby', describing(entry));
  }
  return next;
}

function redraw(shownIn: Figure, { svg }: SheetPicture, next: SVGSVGElement | null, { room, lit }: Look): void {
  const { root: figure, drawing } = shownIn;
  shownIn.markup = next ? svg : '';
  if (!next) {
    drawing.textContent = 'This picture could not be drawn.';
    return;
  }
  const { width } = next.viewBox.baseVal;
  put(figure.style, '--share', String(shareOf(width, room)));
  put(figure.style, '--drawn', `${width}px`);
  lightIn(next, lit);
  const shown = drawing.querySelector('svg');
  if (shown) renew(shown, next);
  else drawing.replaceChildren(document.adoptNode(next));
  nameLit(drawing);
}

/** All that is in the figure takes its style anew when one of these is written. */
function put(style: CSSStyleDeclaration, name: string, value: string): void {
  if (style.getPropertyValue(name) !== value) style.setProperty(name, value);
}

function lightIn(drawing: Element, lit: string | null): void {
  for (const entry of drawing.querySelectorAll<SVGElement>('[data-path]')) {
    const isLit = entry.dataset.path === lit;
    entry.classList.toggle('lit', isLit);
    if (isLit) entry.setAttribute('aria-current', 'true');
    else entry.removeAttribute('aria-current');
  }
  for (const label of drawing.querySelectorAll<SVGElement>('[data-of]')) {
    label.classList.toggle('lit', label.dataset.of === lit);
  }
}

/** The part of the page's width that a picture takes: all of it, a half or a quarter, what is nearest to its own. */
const shareOf = (picture: number, room: number): number =>
  room > 0 ? ([1, 0.5, 0.25].find(share => picture > 0.75 * share * room) ?? 0.25) : 1;

/** Which of the page's explanations of its keys goes with an entry. */
function describing({ dataset }: SVGElement): string {
  if (dataset.correction !== undefined) return 'keys-ghost';
  return dataset.drag === 'station' ? 'keys-part' : 'keys-entry';
}
