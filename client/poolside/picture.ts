/** The boat as a picture as broad as the phone, and an end of it close by; the words of a drawing are beside it, not in it. */
import { boxInPicture } from '../panel/placed.ts';
import { h } from './dom.ts';

/** Room about the boat, user units. */
const MARGIN = 10;
/** Part of the boat's length that is seen near a mark, and how tall that picture is to its breadth. */
const NEAR = 0.3;
const TALL = 0.42;

/** `svg` is markup of our own drawing room: it escapes whatever stands in the boat file. */
export function pictureIn(host: HTMLElement, { svg, words }: { readonly svg: string; readonly words: string }): void {
  if (host.dataset.drawn === svg) return;
  host.dataset.drawn = svg;
  host.innerHTML = svg;
  const picture = host.querySelector('svg');
  if (!picture) return;
  picture.setAttribute('aria-label', words);
  picture.removeAttribute('id');
  const box = boatBox(picture);
  if (!box) return;
  const [x, y] = [box.x - MARGIN, box.y - 2 * MARGIN];
  picture.setAttribute('viewBox', `${x} ${y} ${box.width + 2 * MARGIN} ${box.height + 4 * MARGIN}`);
}

/** The end of the boat where the water is read, its station marked: `station` m from the bow tip. */
export function nearPicture(host: HTMLElement, svg: string, station: number): void {
  const drawn = `${station} ${svg}`;
  if (host.dataset.drawn === drawn) return;
  host.dataset.drawn = drawn;
  host.innerHTML = svg;
  const picture = host.querySelector('svg');
  const box = picture && boatBox(picture);
  if (!picture || !box) return;
  picture.removeAttribute('id');
  picture.setAttribute('aria-hidden', 'true');
  const scale = Number(picture.dataset.scale);
  const at = box.x + station * scale * Math.cos(Number(picture.dataset.trim ?? 0));
  const broad = NEAR * box.width;
  const left = Math.min(Math.max(at - broad / 2, box.x - 2 * MARGIN), box.x + box.width + 2 * MARGIN - broad);
  const tall = Math.max(TALL * broad, box.height + MARGIN);
  const top = box.y + box.height / 2 - tall / 2;
  picture.setAttribute('viewBox', `${left} ${top} ${broad} ${tall}`);
  const line = document.createElementNS('http://www.w3.org/2000/svg', 'path');
  line.setAttribute('class', 'station');
  line.setAttribute('d', `M${at} ${top}V${top + tall}`);
  picture.append(line);
}

/** Where the boat is in its picture: about all its entries, the marks of the water excepted. */
function boatBox(picture: SVGSVGElement): DOMRect | null {
  const boxes = [...picture.querySelectorAll<SVGGElement>('.entry:not(.bay)')].map(boxInPicture);
  const [first, ...more] = boxes.filter(({ width, height }) => width > 0 || height > 0);
  if (!first) return null;
  let [left, top, right, bottom] = [first.x, first.y, first.x + first.width, first.y + first.height];
  for (const { x, y, width, height } of more) {
    left = Math.min(left, x);
    top = Math.min(top, y);
    right = Math.max(right, x + width);
    bottom = Math.max(bottom, y + height);
  }
  return new DOMRect(left, top, right - left, bottom - top);
}

/** A frame for a picture. */
export const frame = (kind: string): HTMLElement => h('figure', { class: kind });
