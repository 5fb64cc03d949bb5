/** What the page and its worker say to each other. */
import type { DrawnAdvice } from './answer.ts';
import type { PoolDay } from './day.ts';
import type { PoolBoat } from './poolBoat.ts';
import type { PoolView } from './view.ts';

export type ToWorker =
  | { readonly kind: 'boat'; readonly boat: Pick<PoolBoat, 'text' | 'meshes'> }
  /** Asks anew; what is still being worked out for an earlier turn is given up. */
  | { readonly kind: 'day'; readonly turn: number; readonly day: PoolDay };

export type FromWorker =
  | { readonly kind: 'view'; readonly turn: number; readonly view: PoolView }
  | { readonly kind: 'advice'; readonly turn: number; readonly advice: DrawnAdvice | null }
  | { readonly kind: 'failed'; readonly turn: number; readonly reason: string };
