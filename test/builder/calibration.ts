import type { Analysis } from '../../server/core/analysis/analysis.ts';
import { toldBy } from './desk.ts';
import { type Figure, type Floated, figureOf } from './figures.ts';

export const STAGES = ['before any trial', 'with trials', 'after the offer'] as const;
export type Stage = (typeof STAGES)[number];

/** How far one figure was from the truth when it was told. */
export interface Calibration {
  readonly stage: Stage;
  readonly figure: Figure;
  /** Of its own uncertainty. */
  readonly off: number;
}

/** Every figure that is told, held against the true boat. */
export function hold(stage: Stage, analysis: Analysis, truth: Floated): readonly Calibration[] {
  return [...toldBy(analysis)].flatMap(([figure, { value, sigma }]) => {
    const real = figureOf(truth, figure);
    return real === null || sigma <= 0 ? [] : [{ stage, figure, off: (value - real) / sigma }];
  });
}
