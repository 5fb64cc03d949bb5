import { boxInPicture } from './placed.ts';
import { ADDED } from './renew.ts';

/** Names in the pictures of what one points at, has in the keyboard's focus, or has the cursor in: others have no label. */

const SVG = 'http://www.w3.org/2000/svg';
type Why = 'pointed' | 'lit';

/** Room between a name and the edge of its picture, user units. */
const EDGE = 4;

/** Shows names on the element around the pictures. */
export function listenForNames(host: HTMLElement): void {
  const show = (event: Event): void => {
    const entry = event.target instanceof Element ? event.target.closest<SVGElement>('.entry[data-path]') : null;
    clear(host, 'pointed');
    if (entry) tagFor(entry, 'pointed');
  };
  const hide = (): void => clear(host, 'pointed');
  host.addEventListener('pointerover', show);
  host.addEventListener('pointerleave', hide);
  host.addEventListener('focusin', show);
  host.addEventListener('focusout', hide);
}

/** Names the lit entries of a picture that bear no label; those that were lit before lose theirs. */
export function nameLit(drawing: HTMLElement): void {
  clear(drawing, 'lit');
  for (const entry of drawing.querySelectorAll<SVGElement>('.entry.lit')) tagFor(entry, 'lit');
}

function clear(host: HTMLElement, why: Why): void {
  for (const tag of host.querySelectorAll(`.name-tag.${why}`)) tag.remove();
}

/** The name over an entry, moved into its picture where it would stand out of it; nothing for one that has its label. */
function tagFor(entry: SVGElement, why: Why): void {
  const picture = entry.ownerSVGElement;
  const words = nameOf(entry);
  const path = entry.dataset.path;
  if (!(picture && entry instanceof SVGGraphicsElement) || words === '') return;
  if (path !== undefined && picture.querySelector(`[data-of="${CSS.escape(path)}"]`)) return;
  const { x, y, width, height } = boxInPicture(entry);
  const tag = document.createElementNS(SVG, 'text');
  tag.setAttribute('class', `name-tag ${why}`);
  tag.setAttribute('aria-hidden', 'true');
  tag.setAttribute(ADDED, path ?? '');
  tag.setAttribute('text-anchor', 'middle');
  tag.textContent = words;
  picture.append(tag);
  const half = tag.getComputedTextLength() / 2 + EDGE;
  const most = picture.viewBox.baseVal.width;
  tag.setAttribute('x', String(Math.min(Math.max(x + width / 2, half), Math.max(half, most - half))));
  tag.setAttribute('y', String(y > 24 ? y - 6 : y + height + 16));
}

/** What comes before the colon of its words: "battery: 318 g, …". */
const nameOf = (entry: SVGElement): string => /^(.*?): /.exec(entry.getAttribute('aria-label') ?? '')?.[1] ?? '';
