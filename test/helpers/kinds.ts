import type { Correction } from '../../server/core/corrections/correction.ts';
import type { Change } from '../../server/core/findings/finding.ts';

/** Moves a part: nothing goes in, nothing comes out. */
export const isMove = ({ pieces, changes }: Correction): boolean =>
  pieces.length === 0 && changes.every(({ kind }) => kind === 'replace' || kind === 'add-key');

/** Cuts loose pieces of the file anew, or takes them out. */
export const isRecut = (correction: Correction): boolean =>
  !isMove(correction) && correction.changes.some(({ kind }) => kind !== 'append');

/** Puts an entry into the payload. */
export const inserts = ({ changes }: { readonly changes: readonly Change[] }): boolean =>
  changes.some(change => change.kind === 'append' && change.path[0] === 'payload');
