import type { Analysis } from './analysis.ts';

/** Why a boat is not held against its limits; null where it is. */
export function waitingWords({ boat, file }: Pick<Analysis, 'boat' | 'file'>): string | null {
  if (file.isWhole) return null;
  const missing = boat.leftOut.map(name => `“${name}”`).join(', ');
  const without = missing === '' ? 'Not all of the file could be read' : `Figured without ${missing}`;
  return `${without}: limits and corrections wait until that is fixed.`;
}
