import type { Analysis, Working } from '../service/service.ts';
import { takeLongTurn } from './turn.ts';

/**
 * What is made of a file in steps for one request; begun anew where the file was analysed anew meanwhile. A step is a turn
 * of it, all where that is short: somebody waits for it.
 */
export function makingOf<P, M>(
  make: (analysis: Analysis, params: P) => Working<M>,
  now: () => number,
): (analysis: Analysis, params: P) => Working<M> {
  let under: { readonly analysis: Analysis; readonly work: Working<M> } | null = null;
  return (analysis, params) => {
    if (under?.analysis !== analysis) under = { analysis, work: make(analysis, params) };
    const { work } = under;
    return { ...work, step: () => takeLongTurn(work.step, now) };
  };
}
