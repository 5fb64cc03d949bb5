import { alongBoat, isDrag, marksOfKey, type PictureScale, type Point, scaleOf } from './drag.ts';

/** What hands do to the pictures, by pointer or by key. */
export interface Deeds {
  reveal(path: string): void;
  /** Takes what is proposed. */
  take(): void;
  /** Marks of the tape, aft positive. */
  nudge(path: string, marks: number): void;
  /** A part is held `metres` aft of where it is in the file. */
  hold(path: string, metres: number): void;
  drop(path: string, metres: number): void;
  /** A drag was given up. */
  letGo(): void;
}

/** A part on its way. */
interface Hold {
  readonly path: string;
  readonly pointer: number;
  /** Where on the page it was taken up, and in its picture. */
  readonly page: Point;
  readonly from: Point;
  /** From the page into the picture as it was then: redrawn, it may be of another size. */
  readonly intoPicture: DOMMatrix;
  readonly scale: PictureScale;
  metres: number | null;
}

/** Listens to pointer and keyboard on the element around the pictures. */
export function listenToHands(host: HTMLElement, deeds: Deeds): void {
  let hold: Hold | null = null;
  const letGo = (): void => {
    if (hold?.metres !== null && hold?.metres !== undefined) deeds.letGo();
    hold = null;
    host.classList.remove('holding');
  };

  host.addEventListener('pointerdown', event => {
    const entry = entryAt(event.target, '[data-drag="station"][data-path]');
    if (!entry || event.button !== 0) return;
    hold = takeUp(entry, event);
    if (!hold) return;
    // The picture is redrawn on the way: what is around it keeps the pointer.
    host.setPointerCapture(event.pointerId);
    event.preventDefault();
    entry.focus({ preventScroll: true });
  });
  host.addEventListener('pointermove', event => {
    if (hold?.pointer !== event.pointerId) return;
    const page = { x: event.clientX, y: event.clientY };
    if (hold.metres === null && !isDrag(hold.page, page)) return;
    hold.metres = alongBoat(hold.from, hold.intoPicture.transformPoint(page), hold.scale);
    host.classList.add('holding');
    deeds.hold(hold.path, hold.metres);
  });
  host.addEventListener('pointerup', event => {
    if (hold?.pointer !== event.pointerId) return;
    const { path, metres } = hold;
    hold = null;
    host.classList.remove('holding');
    if (metres === null) deeds.reveal(path);
    else deeds.drop(path, metres);
  });
  host.addEventListener('pointercancel', letGo);

  host.addEventListener('click', event => {
    const entry = entryAt(event.target, '[data-path], [data-of], [data-correction]');
    if (entry?.dataset.correction !== undefined) deeds.take();
    else if (entry?.dataset.of !== undefined) deeds.reveal(entry.dataset.of);
    // What can be dragged was heard of when the pointer went up.
    else if (entry?.dataset.path !== undefined && entry.dataset.drag === undefined) deeds.reveal(entry.dataset.path);
  });
  window.addEventListener('keydown', event => {
    if (event.key === 'Escape') letGo();
  });
  host.addEventListener('keydown', event => {
    const entry = entryAt(event.target, '[data-path], [data-correction]');
    if (!entry || event.ctrlKey || event.metaKey || event.altKey) return;
    const { path, correction, drag } = entry.dataset;
    const marks = marksOfKey(event.key, event.shiftKey);
    if (event.key === 'Enter' || event.key === ' ') {
      if (correction !== undefined) deeds.take();
      else if (path !== undefined) deeds.reveal(path);
    } else if (marks !== null && drag === 'station' && path !== undefined) deeds.nudge(path, marks);
    else return;
    event.preventDefault();
  });
}

function takeUp(entry: SVGElement, { pointerId, clientX, clientY }: PointerEvent): Hold | null {
  const svg = entry.ownerSVGElement;
  const matrix = svg?.getScreenCTM()?.inverse();
  const scale = svg && scaleOf(svg.dataset.scale, svg.dataset.trim);
  const path = entry.dataset.path;
  if (!matrix || !scale || path === undefined) return null;
  const page = { x: clientX, y: clientY };
  const intoPicture = DOMMatrix.fromMatrix(matrix);
  return { path, pointer: pointerId, page, from: intoPicture.transformPoint(page), intoPicture, scale, metres: null };
}

const entryAt = (target: EventTarget | null, selector: string): SVGElement | null =>
  target instanceof Element ? target.closest<SVGElement>(selector) : null;
