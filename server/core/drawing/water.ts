import type { DrawnState } from './drawnState.ts';
import { element, type Markup } from './markup.ts';

/** The water outside as a wash, from its surface (user units; null for none in the picture) down. */
export function waterBody(
  { water }: DrawnState,
  surface: number | null,
  { width, from, to }: { readonly width: number; readonly from: number; readonly to: number },
): Markup | null {
  const top = water === 'everywhere' ? from : surface === null ? null : Math.max(from, surface);
  if (top === null || top >= to) return null;
  return element('rect', { class: 'water', x: 0, y: top, width, height: to - top });
}

/** The surface across the picture, with the triangle that stands on it in drawings; null where it is out of the picture. */
export function surfaceLine(
  y: number | null,
  { width, from, to }: { readonly width: number; readonly from: number; readonly to: number },
): Markup | null {
  if (y === null || y < from || y > to) return null;
  const x = 12;
  return element(
    'g',
    { class: 'surface-group' },
    element('path', { class: 'surface', d: `M0 ${y.toFixed(2)}H${width}` }),
    element('path', {
      class: 'surface-mark',
      d: `M${x} ${y.toFixed(2)}l-7 -11h14zM${x - 8} ${(y + 4).toFixed(2)}h16M${x - 5} ${(y + 7).toFixed(2)}h10`,
    }),
  );
}
