/** What the page and its worker say to each other. */
import type { DrawnAdvice } from '../../server/core/poolside/answer.ts';
import type { PoolDay } from '../../server/core/poolside/day.ts';
import type { PoolBoat } from '../../server/core/poolside/poolBoat.ts';
import type { PoolView } from '../../server/core/poolside/view.ts';

export type ToWorker =
  | { readonly kind: 'boat'; readonly boat: Pick<PoolBoat, 'text' | 'meshes'> }
  /** Asks anew; what is still being worked out for an earlier turn is given up. */
  | { readonly kind: 'day'; readonly turn: number; readonly day: PoolDay };

export type FromWorker =
  | { readonly kind: 'view'; readonly turn: number; readonly view: PoolView }
  | { readonly kind: 'advice'; readonly turn: number; readonly advice: DrawnAdvice | null }
  | { readonly kind: 'failed'; readonly turn: number; readonly reason: string };
