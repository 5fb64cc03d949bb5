import { withoutFullSize } from '../../../schema/fullSize.ts';
import type { Path } from '../../../schema/path.ts';
import { readExtent } from '../../../schema/quantity.ts';
import type { Analysis } from '../../core/analysis/analysis.ts';
import { valueAt } from '../../core/text/reading/values.ts';
import { lengthText } from '../../core/wording/numbers.ts';

/** What a length in full size is on the model; null for any other value. */
export function fullSizeHover({ syntax, boat: { units, scale } }: Analysis, path: Path): string | null {
  const raw = valueAt(syntax, path);
  if (scale === null || typeof raw !== 'string' || !withoutFullSize(raw).isFullSize) return null;
  const read = readExtent(raw, 'length', { ...units, scale });
  if (!read.ok) return null;
  const sizes = 'from' in read.value ? [read.value.from, read.value.to] : [read.value.value];
  return `On the model, 1:${Number((1 / scale).toPrecision(6))}: ${sizes.map(size => lengthText(size, units)).join(' to ')}.`;
}
