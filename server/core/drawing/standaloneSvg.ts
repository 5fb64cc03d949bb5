import { element, type Markup } from './markup.ts';
import type { Picture } from './picture.ts';
import { styleSheet } from './styleSheet.ts';

/** A picture as a file of its own, its look inside it. */
export function standaloneSvg({ svg }: Picture): string {
  const end = svg.indexOf('>') + 1;
  return `${svg.slice(0, end)}${element('style', {}, styleSheet as Markup)}${svg.slice(end)}\n`;
}
