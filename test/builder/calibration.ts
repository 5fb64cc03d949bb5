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
  /** The same, SI. */
  readonly error: number;
}

/** Every figure that is told, held against the true boat. */
export function hold(stage: Stage, analysis: Analysis, truth: Floated): readonly Calibration[] {
  return [...toldBy(analysis)].flatMap(([figure, { value, sigma }]) => {
    const real = figureOf(truth, figure);
    return real === null || sigma <= 0 ? [] : [{ stage, figure, off: (value - real) / sigma, error: value - real }];
  });
}

/** As near to the truth as anybody can tell: this part of its own uncertainty away (no source). */
const AS_NEAR = 1 / 3;

/** How a figure came out with the trials, against what it was before them. */
export interface Nearing {
  /** It is nearer to the truth. */
  readonly isNearer: boolean;
  /** It is, or it is as near as anybody can tell. */
  readonly isNear: boolean;
}

/** Every figure that was told both before the trials and with them. */
export const nearings = (calibration: readonly Calibration[]): readonly Nearing[] =>
  calibration
    .filter(({ stage }) => stage === 'with trials')
    .flatMap(({ figure, error, off }) => {
      const before = calibration.find(other => other.stage === 'before any trial' && other.figure === figure);
      if (!before) return [];
      const isNearer = Math.abs(error) < Math.abs(before.error);
      return [{ isNearer, isNear: isNearer || Math.abs(off) <= AS_NEAR }];
    });
