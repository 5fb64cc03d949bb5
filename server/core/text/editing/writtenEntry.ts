import { isList, isMap } from '../../../../schema/fields.ts';
import type { Path } from '../../../../schema/path.ts';
import type { EntryText } from '../../findings/finding.ts';
import { quoteScalar } from '../reading/quoteScalar.ts';
import type { Syntax } from '../reading/syntax.ts';
import { valueAt } from '../reading/values.ts';

/** An entry of the file as it would be written again elsewhere: what stands below a key goes between brackets. */
export function writtenEntry(syntax: Syntax, path: Path): EntryText | null {
  const value = valueAt(syntax, path);
  if (!isMap(value)) return null;
  return {
    fields: Object.entries(value).map(([key, field]) => [key, isPlain(field) ? String(field) : flowText(field)]),
  };
}

const isPlain = (value: unknown): value is string | number | boolean =>
  typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean';

/** Plain data between brackets, on one line. */
export function flowText(value: unknown): string {
  if (isList(value)) return `[${value.map(flowText).join(', ')}]`;
  if (isMap(value)) {
    const pairs = Object.entries(value).map(([key, field]) => `${key}: ${flowText(field)}`);
    return `{ ${pairs.join(', ')} }`;
  }
  return value === null || value === undefined ? '' : quoteScalar(String(value), true);
}
