import type { FileUnits } from '../../../schema/units.ts';
import type { Boat } from '../boat/boat.ts';
import type { FloatingState } from '../conditions/float.ts';
import {
  type InCondition,
  type LoadingCondition,
  SUBMERGED,
  SURFACED,
  whereIn,
} from '../conditions/loadingCondition.ts';
import { beyondLimit } from '../wording/beyondLimit.ts';
import { capital } from '../wording/capital.ts';
import type { Figure } from './figure.ts';
import { boundOf, type Limit, limitText, marginOf } from './limit.ts';

/** A figure of the boat in one condition, and how it stands to its limit there. */
export interface Figured {
  readonly figure: Figure;
  readonly condition: LoadingCondition;
  readonly units: FileUnits;
  /** SI. */
  readonly value: number;
  /** The same from what it is held against; null where the boat has no such mark. */
  readonly off: number | null;
  readonly limit: Limit | null;
  /** From `off` to the nearer end of the limit, SI, negative outside; null where no limit binds. */
  readonly margin: number | null;
  /** False for a boat that does not stay where the figure was read. */
  readonly stays: boolean;
  /** What stands in brackets beside it; null for nothing. */
  readonly beside: string | null;
}

/** Figures that mean something in a condition. */
export const figuresOf = (condition: LoadingCondition, figures: readonly Figure[]): readonly Figure[] =>
  figures.filter(({ where }) => where === whereIn(condition));

/** The limit that a condition sets a figure. */
export const limitIn = (figure: Figure, condition: LoadingCondition, { limits }: Pick<Boat, 'limits'>): Limit | null =>
  figure.limit?.(condition.asked(limits)) ?? null;

/** Every figure that can be had of the boat in a condition; none where it does not come to rest there. */
export function figuredIn(
  boat: Boat,
  { condition, state }: InCondition,
  figures: readonly Figure[],
): readonly Figured[] {
  const states = statesOf(state);
  if (!states) return [];
  return figuresOf(condition, figures).flatMap((figure): readonly Figured[] => {
    const floating = states[figure.readOff];
    const value = figure.of(floating, boat);
    if (value === null) return [];
    const aim = figure.aim ? figure.aim(boat) : 0;
    const off = aim === null ? null : value - aim;
    const limit = limitIn(figure, condition, boat);
    return [
      {
        figure,
        condition,
        units: boat.units,
        value,
        off,
        limit,
        margin: limit && off !== null ? marginOf(limit, off) : null,
        stays: states.level === states.rest || figure.readOff === 'level',
        beside: figure.beside?.(value, boat, floating) ?? null,
      },
    ];
  });
}

/** What figures are read off: the boat at rest, and held level where it does not stay so. */
export function statesOf(
  state: InCondition['state'],
): { readonly rest: FloatingState; readonly level: FloatingState } | null {
  if (state.status === 'afloat') return { rest: state.floating, level: state.floating };
  return state.status === 'neutral' ? { rest: state.floating, level: state.judged } : null;
}

/** It keeps its limit; so does one that has none. */
export const isKept = ({ margin }: Figured): boolean => margin === null || margin >= 0;

/** What it is called in a list of figures of all conditions. */
export const rowNameIn = (condition: LoadingCondition, figure: Figure): string =>
  (isBuiltIn(condition.id) && figure.tellsCondition && figure.heading) || capital(nameIn(condition, figure));

const isBuiltIn = (id: string): boolean => id === SURFACED.id || id === SUBMERGED.id;

/** "surfaced trim"; of a figure whose name tells the condition, that alone. */
export const nameIn = ({ id }: LoadingCondition, { words, tellsCondition }: Figure): string =>
  tellsCondition && isBuiltIn(id) ? words : withCondition(id, words);

/** "awash trim"; a condition that is called in several words stands behind: "trim “without the mast”". */
export const withCondition = (id: string, words: string): string =>
  /\s/.test(id) ? `${words} “${id}”` : `${id} ${words}`;

/** What the limit binds, in the digits of every day: "3 mm deep", "0.8° bow up". */
export const offText = (figured: Figured): string => offWords(figured, 0);

/** The same with as many digits as it takes to read that its limit is not kept. */
export function offBeyond(figured: Figured): string {
  const { off, limit } = figured;
  return limit && off !== null && !isKept(figured)
    ? beyondLimit(finer => offWords(figured, finer), boundText(figured), boundOf(limit, off).way)
    : offText(figured);
}

function offWords({ figure: { kind, difference }, units, off, value }: Figured, finer: number): string {
  if (!difference) return kind.show(off ?? value, units, finer);
  if (off === null) return kind.show(value, units, finer);
  const size = kind.show(Math.abs(off), units, finer);
  const [more, less] = difference.ways;
  return Number.parseFloat(size) === 0 ? difference.none : `${size} ${off > 0 ? more : less}`;
}

/** The end of the limit that the figure is nearer to, or past. */
export const boundText = ({ limit, off, figure: { kind }, units }: Figured): string =>
  limit && off !== null ? kind.size(boundOf(limit, off).bound, units) : '';

/** The whole limit, without what it is counted from. */
export const limitWords = ({ limit, figure: { kind }, units }: Figured): string | null =>
  limit && limitText(limit, kind, units);

/** The figure in the digits of every day. */
export const plainText = (figured: Figured): string =>
  figured.figure.difference ? figured.figure.kind.show(figured.value, figured.units) : offText(figured);

/** The figure as tables have it: where its difference has words of its own, they stand beside it. */
export const mainText = (figured: Figured): string =>
  figured.figure.difference ? figured.figure.kind.show(figured.value, figured.units) : offBeyond(figured);

/** What stands in brackets beside it there. */
export const besideText = (figured: Figured): string | null =>
  (figured.figure.difference && figured.off !== null ? offBeyond(figured) : figured.beside) || null;
