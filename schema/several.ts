import { quantity, wholeNumber, word } from './fields.ts';
import type { FileUnits } from './units.ts';

/** Port and starboard, or several in a row, of one entry. */
export const severalKeys = (units: FileUnits) => ({
  sides: word(['both', 'one'], {
    description:
      'both: there are two of it, one to starboard at its “offset” and the mirror image to port. One unless given. Masses and volumes of the entry are of each, unless “weighed” says together.',
    examples: ['both'],
  }).optional(),
  count: wholeNumber({
    description:
      'So many of the same in a row fore and aft, “spacing” apart; “station” is that of the foremost. With “sides: both” so many to each side.',
    examples: [4],
  }).optional(),
  spacing: quantity(
    units,
    'length',
    { description: 'From the middle of one in the row to the middle of the next.', examples: ['40 mm'] },
    { positive: true },
  ).optional(),
  weighed: word(['each', 'together'], {
    description:
      'Of a pair or a row: whether mass, volume, capacity and weight in water are those of each (unless given) or of all together.',
    examples: ['together'],
  }).optional(),
});
