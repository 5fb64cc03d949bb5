import type { Change } from '../../server/core/findings/finding.ts';

/** Puts an entry into the payload. */
export const inserts = ({ changes }: { readonly changes: readonly Change[] }): boolean =>
  changes.some(change => change.kind === 'append' && change.path[0] === 'payload');
