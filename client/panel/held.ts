import { acrossPicture, scaleOf } from './drag.ts';
import { howItLies } from './placed.ts';
import { ADDED } from './renew.ts';

/** A part that a hand holds. */
export interface HeldPart {
  readonly path: string;
  /** m aft of where it is in the file. */
  readonly metres: number;
}

/**
 * Puts a held part where the hand has it, in a picture that was drawn with it `drawnAt` m aft of where it is in the file: the
 * picture itself comes later, with the figures. Null lets every part lie where it is drawn.
 */
export function carryPart(drawing: HTMLElement, held: HeldPart | null, drawnAt: number): void {
  const picture = drawing.querySelector('svg');
  const scale = scaleOf(picture?.dataset.scale, picture?.dataset.trim);
  if (!picture || !scale) return;
  const path = held && CSS.escape(held.path);
  const carried = path === null ? [] : [...picture.querySelectorAll(`[data-path="${path}"], [${ADDED}="${path}"]`)];
  for (const one of picture.querySelectorAll('.carried')) if (!carried.includes(one)) putDown(one);
  if (!held) return;
  const way = acrossPicture(held.metres - drawnAt, scale);
  for (const one of carried) {
    const { a, b, c, d } = howItLies(one);
    const { x, y } = new DOMMatrix([a, b, c, d, 0, 0]).inverse().transformPoint(way);
    one.classList.add('carried');
    one.setAttribute('transform', `translate(${x.toFixed(2)} ${y.toFixed(2)})`);
  }
}

function putDown(one: Element): void {
  one.classList.remove('carried');
  one.removeAttribute('transform');
}
