import type { Boat } from '../boat/boat.ts';
import type { LoadingCondition } from '../conditions/loadingCondition.ts';
import type { Figure } from './figure.ts';
import { figuresOf, limitIn } from './figured.ts';
import type { Limit } from './limit.ts';
import { FIGURES } from './table.ts';

/** What a limit leaves a figure, from its aim, SI; infinite where nothing binds. */
export interface Allowed {
  readonly least: number;
  readonly most: number;
}

const ANYTHING: Allowed = { least: Number.NEGATIVE_INFINITY, most: Number.POSITIVE_INFINITY };

/** The figure of a condition, by its id. */
export const figureById = (id: string, condition: LoadingCondition): Figure | undefined =>
  figuresOf(condition, FIGURES).find(figure => figure.id === id);

/** What a condition allows a figure of the boat there, by the figure's id. */
export function allowedIn(id: string, condition: LoadingCondition, boat: Pick<Boat, 'limits'>): Allowed {
  const figure = figureById(id, condition);
  return allowedBy(figure ? limitIn(figure, condition, boat) : null);
}

export function allowedBy(limit: Limit | null): Allowed {
  if (!limit) return ANYTHING;
  switch (limit.binds) {
    case 'within':
      return { least: -limit.most, most: limit.most };
    case 'at least':
      return { ...ANYTHING, least: limit.least };
    case 'between':
      return { least: limit.least, most: limit.most };
  }
}

/** The boat asked to hang with this much of B above G under water, m, and with its limits else as they are. */
export const askedToBeStiff = (boat: Boat, least: number): Boat => ({
  ...boat,
  limits: { ...boat.limits, submerged: { ...boat.limits.submerged, bg: least } },
});

/** The boat with what is asked of another. */
export const askedLike = (boat: Boat, other: Boat): Boat => ({ ...boat, limits: other.limits });
