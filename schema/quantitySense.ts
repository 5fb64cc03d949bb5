import type { Counted, FileOrigin } from './places.ts';
import type { FileUnits } from './units.ts';

/** Which way the sign of a quantity goes, in words; the program prints it in these words and reads them back. */
export type Sense =
  | 'trim'
  | 'heel'
  | 'side'
  | 'station'
  | 'stern'
  | 'aft of midships'
  | 'forward of midships'
  | 'height'
  | 'waterline';

interface SenseWords {
  readonly plus: readonly string[];
  readonly minus: readonly string[];
  /** Said instead of a figure of nothing. */
  readonly none: readonly string[];
}

// What the program prints comes first in each list; the others are trade use.
const senses: Readonly<Record<Sense, SenseWords>> = {
  trim: {
    plus: ['bow up', 'stern down', 'by the stern', 'nose up'],
    minus: ['bow down', 'stern up', 'by the bow', 'by the head', 'nose down'],
    none: ['level'],
  },
  heel: { plus: ['to starboard', 'starboard'], minus: ['to port', 'port'], none: ['upright'] },
  side: {
    plus: ['to starboard', 'starboard'],
    minus: ['to port', 'port'],
    none: ['on the centreline', 'on the centerline', 'centreline', 'centerline'],
  },
  station: {
    plus: ['aft of the bow tip', 'aft of the bow', 'from the bow tip', 'from the bow', 'aft'],
    minus: ['ahead of the bow tip', 'ahead of the bow', 'forward of the bow tip', 'forward of the bow'],
    none: ['at the bow tip', 'at the bow'],
  },
  stern: {
    plus: ['forward of the stern', 'ahead of the stern', 'from the stern', 'forward'],
    minus: ['aft of the stern'],
    none: ['at the stern'],
  },
  'aft of midships': {
    plus: ['aft of midships', 'aft'],
    minus: ['forward of midships', 'ahead of midships', 'forward'],
    none: ['at midships', 'midships'],
  },
  'forward of midships': {
    plus: ['forward of midships', 'ahead of midships', 'forward'],
    minus: ['aft of midships', 'aft'],
    none: ['at midships', 'midships'],
  },
  height: {
    plus: ['above the baseline', 'above the keel', 'above baseline', 'high', 'up'],
    minus: ['below the baseline', 'below the keel', 'below baseline'],
    none: ['on the baseline'],
  },
  waterline: {
    plus: ['above the waterline', 'above', 'up'],
    minus: ['below the waterline', 'under the waterline', 'below', 'down'],
    none: ['on the waterline', 'at the waterline'],
  },
};

const pattern = (words: readonly string[]): RegExp =>
  new RegExp(`^(?:${words.map(word => word.replace(/ /g, '\\s+')).join('|')})(?![\\p{L}])`, 'iu');

const patterns = Object.fromEntries(
  Object.entries(senses).map(([sense, { plus, minus, none }]) => [
    sense,
    { plus: pattern(plus), minus: pattern(minus), none: pattern(none) },
  ]),
) as Readonly<Record<Sense, Readonly<Record<keyof SenseWords, RegExp>>>>;

/** The words of a sense at the start of a text, and what they say; null where there are none. */
export function senseAt(
  text: string,
  sense: Sense,
): { readonly says: keyof SenseWords; readonly length: number } | null {
  for (const says of ['plus', 'minus', 'none'] as const) {
    const found = patterns[sense][says].exec(text);
    if (found) return { says, length: found[0].length };
  }
  return null;
}

/** The words that may stand after a place, by where the file counts from. */
export function senseOf(counted: Counted, { origin }: FileUnits): Sense {
  if (counted === 'height') return origin?.heights === 'waterline' ? 'waterline' : 'height';
  const from: FileOrigin['stations'] = origin?.stations ?? 'bow';
  return from === 'bow' ? 'station' : from;
}
