import type { Range } from 'vscode-languageserver-types';
import { type Path, pathKey } from '../../../schema/path.ts';
import type { Analysis } from '../../core/analysis/analysis.ts';
import { locate } from '../../core/text/reading/locate.ts';
import { pathAt } from '../../core/text/reading/pathAt.ts';
import { rangeOf } from '../../core/text/reading/rangeOf.ts';
import { lspRange } from './lspRange.ts';

/** The list entry that an offset is in, as the pictures name it; null outside of every entry. */
export function entryKeyAt({ syntax }: Analysis, offset: number): string | null {
  const { path } = pathAt(syntax, offset);
  const index = path.findIndex(step => typeof step === 'number');
  return index < 0 ? null : pathKey(path.slice(0, index + 1));
}

/** The name of the entry that the pictures name so; null where there is none. */
export function rangeOfKey({ syntax }: Analysis, key: string): Range | null {
  const path = pathOfKey(key);
  return path && locate(syntax, path) ? lspRange(syntax, rangeOf(syntax, { on: 'entry', path })) : null;
}

/** The path that a key was made from; null of anything else. */
export function pathOfKey(key: string): Path | null {
  try {
    const path: unknown = JSON.parse(key);
    return Array.isArray(path) && path.every(isStep) ? path : null;
  } catch {
    return null;
  }
}

const isStep = (step: unknown): step is string | number => typeof step === 'string' || typeof step === 'number';
