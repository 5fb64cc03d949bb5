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
  /** That uncertainty, SI. */
  readonly sigma: number;
}

/** Every figure that is told, held against the true boat. */
export function hold(stage: Stage, analysis: Analysis, truth: Floated): readonly Calibration[] {
  return [...toldBy(analysis)].flatMap(([figure, { value, sigma }]) => {
    const real = figureOf(truth, figure);
    return real === null || sigma <= 0 ? [] : [{ stage, figure, off: (value - real) / sigma, sigma }];
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
  /** How likely it was to come nearer, by what it was known to before and after, 0..1. */
  readonly expected: number;
}

/** Every figure that was told both before the trials and with them. */
export const nearings = (calibration: readonly Calibration[]): readonly Nearing[] =>
  calibration
    .filter(({ stage }) => stage === 'with trials')
    .flatMap(({ figure, sigma, off }) => {
      const before = calibration.find(other => other.stage === 'before any trial' && other.figure === figure);
      if (!before) return [];
      const isNearer = Math.abs(off * sigma) < Math.abs(before.off * before.sigma);
      return [{ isNearer, isNear: isNearer || Math.abs(off) <= AS_NEAR, expected: chanceToNear(before.sigma, sigma) }];
    });

/**
 * How likely the error of what readings have narrowed from one uncertainty to another is the smaller, where both are normal and
 * the readings are used to the full: error before and what the readings shift it by hang together such that before less after and
 * before more after are of one sign with the chance 1/2 + arcsin(r)/π, r their correlation (the orthant of two normals: Sheppard,
 * 1899; from memory).
 */
export function chanceToNear(before: number, after: number): number {
  const shift = Math.max(0, before ** 2 - after ** 2);
  return 0.5 + Math.asin(Math.sqrt(shift / (shift + 4 * after ** 2))) / Math.PI;
}
