import { type Cursor, nextWord, take } from './quantityCursor.ts';
import { bad, good, type Read, type SlipSpan } from './slip.ts';

const vulgarFractions: Readonly<Record<string, number>> = {
  '½': 1 / 2,
  '¼': 1 / 4,
  '¾': 3 / 4,
  '⅓': 1 / 3,
  '⅔': 2 / 3,
  '⅛': 1 / 8,
  '⅜': 3 / 8,
  '⅝': 5 / 8,
  '⅞': 7 / 8,
};

/** A number as it is written in the trade: with a point, as a fraction, or both. */
export function readNumber(cursor: Cursor): Read<SlipSpan & { readonly value: number }> {
  const comma = take(cursor, /^\d*,\d[\d.,]*/);
  if (comma) return faultOfComma(comma, comma.match[0]);
  const mixed = take(cursor, /^(\d+)\s*(?:and|&|\s-\s)\s*(\d+\/\d+)/i);
  if (mixed) {
    const joined = `${mixed.match[1]} ${mixed.match[2]}`;
    return bad(`A fraction stands right behind its whole number: ${joined}.`, mixed, joined);
  }
  const slash = take(cursor, /^\d+(?:\s+\d+)?\s*\\\s*\d+/);
  if (slash) {
    const right = withStroke(slash.match[0], '/');
    return bad(`The stroke of a fraction leans the other way: ${right}.`, slash, right);
  }
  const vulgar = take(cursor, /^(\d*)\s*([½¼¾⅓⅔⅛⅜⅝⅞])/);
  if (vulgar) return good({ ...vulgar, value: Number(vulgar.match[1]) + vulgarFractions[vulgar.match[2]!]! });
  const fraction = take(cursor, /^(?:(\d+)(?:\s+|-))?(\d+)\s*[/⁄]\s*(\d+)(?![\d.,])/);
  if (fraction) {
    const isMetric = /^\s*(?:[cmk]?m|k?g|ml)(?![\p{L}])/u.test(cursor.text.slice(fraction.end));
    return readFraction(fraction, fraction.match, isMetric);
  }
  const decimal = take(cursor, /^(?:\d+(?:\.(?!\.)\d*)?|\.\d+)(?:e[-−+]?\d+)?/i);
  if (decimal === null) return faultOfNoNumber(cursor);
  const tail = /^(?:[.,](?=[\d,/⁄])|[/⁄])[\d.,/⁄]*/.exec(cursor.text.slice(cursor.at));
  if (tail) {
    const whole = { start: decimal.start, end: decimal.end + tail[0].length };
    const written = cursor.text.slice(whole.start, whole.end);
    return bad(`“${written}” is not a number. Write it like ${cursor.example}.`, whole);
  }
  const value = Number(decimal.match[0].replace('−', '-'));
  if (!Number.isFinite(value)) return bad(`This number is too large. Write it like ${cursor.example}.`, decimal);
  return good({ ...decimal, value });
}

function faultOfComma(at: SlipSpan, written: string): Read<never> {
  const right = written.replace(/,/g, '.');
  if (/^[1-9]\d{0,2}(?:,\d{3})+$/.test(written)) {
    const whole = written.replace(/,/g, '');
    const fine = /,.*,/.test(written) ? '' : ` or, if the comma is a decimal one, ${right}`;
    return bad(`A comma can be read in two ways: write ${whole}${fine}.`, at);
  }
  if (!/^\d*\.\d+$/.test(right)) return bad(`“${written}” is not a number: use one decimal point and no commas.`, at);
  return bad(`The decimal sign is a point: write ${right}.`, at, right);
}

/** A fraction with something else for its stroke and the blanks round it. */
const withStroke = (written: string, other: string): string =>
  written
    .split(/[\\/⁄]/)
    .map(part => part.trim())
    .join(other);

/** No tape has finer parts of an inch. */
const MOST_PARTS = 128;

function readFraction(
  at: SlipSpan,
  match: RegExpExecArray,
  isMetric: boolean,
): Read<SlipSpan & { readonly value: number }> {
  const [written, whole, top, bottom] = match;
  if (Number(bottom) === 0) return bad(`“${written}” divides by zero. A fraction looks like 7/16.`, at);
  if (Number(bottom) > MOST_PARTS)
    return bad(`“${written}” is a fraction. Between two ends write “to”.`, at, withStroke(written, ' to '));
  // `12 / 16 cm`: no metric tape has parts of sixteen.
  if (isMetric && /\d\s+[/⁄]\s+\d/.test(written))
    return bad(`“${written}” is a fraction. Between two ends write “to”.`, at, withStroke(written, ' to '));
  if (whole !== undefined && Number(top) >= Number(bottom)) {
    return bad(`After a whole number the fraction must be less than one, as in 5 1/4: “${written}”.`, at);
  }
  return good({ ...at, value: Number(whole ?? 0) + Number(top) / Number(bottom) });
}

function faultOfNoNumber(cursor: Cursor): Read<never> {
  const word = nextWord(cursor);
  if (word.start === word.end) return bad(`A number is missing here. Write it like ${cursor.example}.`, word);
  const written = cursor.text.slice(word.start, word.end);
  return bad(`Expected a number, but this says “${written}”. Write it like ${cursor.example}.`, word);
}
