import type { FileUnits } from '../../../schema/units.ts';
import type { Asked } from '../conditions/loadingCondition.ts';
import type { Kind } from './kind.ts';

/** A limit of a figure and how it binds, SI. */
export type Limit =
  /** To either side of what is aimed at. */
  | { readonly binds: 'within'; readonly most: number }
  | { readonly binds: 'at least'; readonly least: number }
  | { readonly binds: 'between'; readonly least: number; readonly most: number };

/** What limit a condition sets a figure; null where it asks nothing of it. */
export interface Limiting {
  (asked: Asked): Limit | null;
  /** The word under `limits:` in the file; none for one that the file does not set. */
  readonly key?: string;
}

const under = (key: string, limiting: (asked: Asked) => Limit | null): Limiting => Object.assign(limiting, { key });

const number = (asked: Asked, key: string): number | null => {
  const value = asked[key];
  return typeof value === 'number' ? value : null;
};

export const within = (key: string): Limiting =>
  under(key, asked => {
    const most = number(asked, key);
    return most === null ? null : { binds: 'within', most };
  });

export const atLeast = (key: string): Limiting =>
  under(key, asked => {
    const least = number(asked, key);
    return least === null ? null : { binds: 'at least', least };
  });

export const between = (key: string): Limiting =>
  under(key, asked => {
    const range = asked[key];
    return range === undefined || typeof range === 'number'
      ? null
      : { binds: 'between', least: range[0], most: range[1] };
  });

/** From the figure to the nearer end of its limit, SI; negative outside. */
export function marginOf(limit: Limit, figure: number): number {
  switch (limit.binds) {
    case 'within':
      return limit.most - Math.abs(figure);
    case 'at least':
      return figure - limit.least;
    case 'between':
      return Math.min(figure - limit.least, limit.most - figure);
  }
}

/** The end of the limit that the figure is nearer to, or past, and the side that is out. */
export function boundOf(limit: Limit, figure: number): { readonly bound: number; readonly way: 'over' | 'under' } {
  switch (limit.binds) {
    case 'within':
      return { bound: limit.most, way: 'over' };
    case 'at least':
      return { bound: limit.least, way: 'under' };
    case 'between':
      return figure - limit.least < limit.most - figure
        ? { bound: limit.least, way: 'under' }
        : { bound: limit.most, way: 'over' };
  }
}

/** A limit of nothing counts as this much when a miss is told in limits: any angle, draft or fill, and any height. */
const LEAST_LIMIT = 1e-9;
const LEAST_HEIGHT = 1e-3;

/** How far a figure is outside its limit, in limits; 0 inside. */
export function outsideBy(limit: Limit, figure: number): number {
  switch (limit.binds) {
    case 'within':
      return Math.max(0, Math.abs(figure) / Math.max(limit.most, LEAST_LIMIT) - 1);
    case 'at least':
      return Math.max(0, limit.least - figure) / Math.max(limit.least, LEAST_HEIGHT);
    case 'between': {
      const middle = (limit.least + limit.most) / 2;
      return outsideBy({ binds: 'within', most: limit.most - middle }, figure - middle);
    }
  }
}

/** "1°", "3 mm at least", "40 % to 85 %". */
export function limitText(limit: Limit, kind: Kind, units: FileUnits): string {
  switch (limit.binds) {
    case 'within':
      return kind.size(limit.most, units);
    case 'at least':
      return `${kind.size(limit.least, units)} at least`;
    case 'between':
      return `${kind.size(limit.least, units)} to ${kind.size(limit.most, units)}`;
  }
}
