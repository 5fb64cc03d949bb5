import { element, type Markup } from './markup.ts';

/** What things are made of, told by pattern: lead by a close hatch, foam by dots, tank water by level strokes. */
export type PatternName = 'lead' | 'foam' | 'part' | 'ballast';

/** Patterns of one picture; their names are its own, so that many pictures may stand on one page. */
export const patternsFor = (id: string): Markup =>
  element(
    'defs',
    {},
    pattern(id, 'lead', 5, element('path', { class: 'hatch', d: 'M-1 6L6 -1M-1 1L1 -1M4 6L6 4' })),
    pattern(
      id,
      'foam',
      6,
      element('circle', { class: 'dot', cx: 1.5, cy: 1.5, r: 0.8 }),
      element('circle', { class: 'dot', cx: 4.5, cy: 4.5, r: 0.8 }),
    ),
    pattern(id, 'part', 6, element('path', { class: 'tape', d: 'M-1 -1L7 7' })),
    pattern(id, 'ballast', 6, element('path', { class: 'ripple', d: 'M0 3H4' })),
  );

const pattern = (id: string, name: PatternName, size: number, ...lines: readonly Markup[]): Markup =>
  element(
    'pattern',
    { id: `${id}-${name}`, width: size, height: size, patternUnits: 'userSpaceOnUse' },
    element('rect', { class: name === 'ballast' ? 'soft' : 'plain', width: size, height: size }),
    ...lines,
  );

export const fillOf = (id: string, name: PatternName): string => `url(#${id}-${name})`;
