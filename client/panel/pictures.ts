import type { SheetPicture } from '../../server/editor/protocol.ts';
import { listenForNames, nameLit } from './nameTag.ts';
import { joined, patchesFor } from './patch.ts';
import { readSvg } from './svgDocument.ts';

/** The pictures on the page. */
export interface Pictures {
  /** Shows these pictures and no others; whatever is the same stays as it is, and so do scroll and keyboard focus. */
  show(pictures: readonly SheetPicture[]): void;
  /** Shows these pictures; others that are there wait, out of date. */
  showSome(pictures: readonly SheetPicture[]): void;
  /** Lights the entry at a path in every picture; null for none. */
  light(path: string | null): void;
}

/** @param onSeen hears which pictures can be seen, wholly or in part, whenever that changes */
export function createPictures(host: HTMLElement, onSeen: (ids: readonly string[]) => void): Pictures {
  let shown: readonly SheetPicture[] = [];
  let lit: string | null = null;
  const figures = new Map<string, Figure>();
  const inView = new Set<Element>();
  listenForNames(host);
  const watcher = new IntersectionObserver(changes => {
    for (const { target, isIntersecting } of changes) {
      if (isIntersecting) inView.add(target);
      else inView.delete(target);
    }
    onSeen([...figures].flatMap(([id, { root }]) => (inView.has(root) ? [id] : [])));
  });
  const lightIn = (figure: Figure): void => {
    for (const entry of figure.drawing.querySelectorAll<SVGElement>('[data-path]')) {
      const isLit = entry.dataset.path === lit;
      entry.classList.toggle('lit', isLit);
      if (isLit) entry.setAttribute('aria-current', 'true');
      else entry.removeAttribute('aria-current');
    }
    for (const label of figure.drawing.querySelectorAll<SVGElement>('[data-of]')) {
      label.classList.toggle('lit', label.dataset.of === lit);
    }
    nameLit(figure.drawing);
  };
  const showAll = (pictures: readonly SheetPicture[], outdated: readonly string[]): void => {
    const { gone, patches } = patchesFor(shown, pictures);
    for (const id of gone) {
      const root = figures.get(id)?.root;
      figures.delete(id);
      if (!root) continue;
      root.remove();
      watcher.unobserve(root);
      inView.delete(root);
    }
    patches.forEach((patch, i) => {
      const id = patch.kind === 'keep' ? patch.id : patch.picture.id;
      const figure = figures.get(id) ?? createFigure();
      figures.set(id, figure);
      if (patch.kind === 'add') watcher.observe(figure.root);
      if (patch.kind !== 'keep') tell(figure, patch.picture);
      if (patch.kind === 'add' || patch.kind === 'redraw') {
        redraw(figure, patch.picture, host.clientWidth);
        lightIn(figure);
      }
      if (host.children[i] !== figure.root) host.insertBefore(figure.root, host.children[i] ?? null);
    });
    for (const [id, { root }] of figures) root.setAttribute('aria-busy', String(outdated.includes(id)));
    shown = pictures;
  };
  return {
    show: pictures => showAll(pictures, []),
    showSome(pictures) {
      const page = joined(shown, pictures);
      showAll(page.pictures, page.outdated);
    },
    light(path) {
      lit = path;
      for (const figure of figures.values()) lightIn(figure);
    },
  };
}

interface Figure {
  readonly root: HTMLElement;
  readonly words: HTMLElement;
  readonly drawing: HTMLElement;
}

function createFigure(): Figure {
  const root = document.createElement('figure');
  const drawing = document.createElement('div');
  const words = document.createElement('figcaption');
  // The drawing carries its own heading; these words are for those who do not see it.
  words.className = 'unseen';
  root.append(words, drawing);
  return { root, words, drawing };
}

const tell = ({ root, words }: Figure, { id, title, description }: SheetPicture): void => {
  root.dataset.picture = id;
  words.textContent = `${title}. ${description}`;
};

function redraw({ root: figure, drawing }: Figure, { svg }: SheetPicture, room: number): void {
  const root = readSvg(svg);
  if (!root) {
    drawing.textContent = 'This picture could not be drawn.';
    return;
  }
  figure.style.setProperty('--share', String(shareOf(root.viewBox.baseVal.width, room)));
  // An image would hide its parts from a screen reader.
  root.setAttribute('role', 'group');
  for (const entry of root.querySelectorAll<SVGElement>('[data-path], [data-correction]')) {
    entry.setAttribute('tabindex', '0');
    entry.setAttribute('role', 'button');
    entry.setAttribute('aria-describedby', describing(entry));
  }
  const focused = document.activeElement;
  const key = focused instanceof SVGElement && drawing.contains(focused) ? selectorOf(focused) : null;
  drawing.replaceChildren(document.adoptNode(root));
  if (key !== null) drawing.querySelector<SVGElement>(key)?.focus({ preventScroll: true });
}

/** The part of the page's width that a picture takes: all of it, a half or a quarter, what is nearest to its own. */
const shareOf = (picture: number, room: number): number =>
  room > 0 ? ([1, 0.5, 0.25].find(share => picture > 0.75 * share * room) ?? 0.25) : 1;

/** Which of the page's explanations of its keys goes with an entry. */
function describing({ dataset }: SVGElement): string {
  if (dataset.correction !== undefined) return 'keys-ghost';
  return dataset.drag === 'station' ? 'keys-part' : 'keys-entry';
}

const selectorOf = ({ dataset }: SVGElement): string =>
  dataset.path === undefined
    ? `[data-correction="${CSS.escape(dataset.correction ?? '')}"]`
    : `[data-path="${CSS.escape(dataset.path)}"]`;
