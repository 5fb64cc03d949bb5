/** Which way the sign of a quantity goes, in words; the program prints it in these words and reads them back. */
export type Sense = 'trim' | 'heel' | 'side' | 'station' | 'height';

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
  height: {
    plus: ['above the baseline', 'above the keel', 'above baseline', 'high', 'up'],
    minus: ['below the baseline', 'below the keel', 'below baseline'],
    none: ['on the baseline'],
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
