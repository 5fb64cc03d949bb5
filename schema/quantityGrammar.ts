import { bad, good, type Read, type SlipSpan } from './slip.ts';
import { type Dimension, dimensions, type Unit, unitAt } from './units.ts';

/**
 * How a quantity is written, before it means anything:
 *
 *     quantity  = amount [joint amount] [± tolerance]      240 g ± 5 g    120 to 480 mm    40 x 12 mm
 *     amount    = [sign] term {term}                       1 lb 3 oz
 *     term      = number [unit]                            7/16 in    5 1/4 in    5-1/4 in    5¼ in    .5    1e3 g
 */
export interface Written {
  readonly amounts: readonly [Amount] | readonly [Amount, Amount];
  /** What stands between two amounts. */
  readonly joint: Joint | null;
  readonly tolerance: Amount | null;
}

export interface Amount extends SlipSpan {
  readonly terms: readonly [Term, ...Term[]];
  readonly negative: boolean;
}

/** A number without its sign, and its unit. */
export interface Term extends SlipSpan {
  readonly number: number;
  readonly numberEnd: number;
  readonly unit: UnitWord | null;
}

export interface UnitWord extends SlipSpan {
  readonly word: string;
  /** A unit of the wanted dimension where the word has that meaning, else of any; null when it is none. */
  readonly unit: Unit | null;
}

interface Joint extends SlipSpan {
  readonly meaning: 'to' | 'x';
  /** Written as the format wants it; a dash or dots between two numbers are understood but not right. */
  readonly isRight: boolean;
}

/** The text being read and how far it has been. */
interface Cursor {
  readonly text: string;
  readonly dimension: Dimension;
  /** An example of right, for messages. */
  readonly example: string;
  at: number;
}

/** Takes a text apart; `example` finishes the messages. */
export function takeApart(text: string, dimension: Dimension, example: string): Read<Written> {
  const cursor: Cursor = { text, dimension, example, at: 0 };
  const first = readAmount(cursor);
  if (!first.ok) return first;
  const joint = readJoint(cursor);
  const second = joint && readAmount(cursor);
  if (second?.ok === false) return second;
  const tolerance = readTolerance(cursor);
  if (tolerance?.ok === false) return tolerance;
  const rest = checkEnd(cursor, { hasTolerance: tolerance !== null, hasTwo: second !== null });
  if (!rest.ok) return rest;
  return good({
    amounts: second ? [first.value, second.value] : [first.value],
    joint,
    tolerance: tolerance?.value ?? null,
  });
}

/** Moves over a match at the cursor, after any space. */
function take(cursor: Cursor, pattern: RegExp): (SlipSpan & { readonly match: RegExpExecArray }) | null {
  skipSpace(cursor);
  const match = pattern.exec(cursor.text.slice(cursor.at));
  if (match === null) return null;
  const start = cursor.at;
  cursor.at += match[0].length;
  return { start, end: cursor.at, match };
}

function skipSpace(cursor: Cursor): void {
  cursor.at += /^\s*/.exec(cursor.text.slice(cursor.at))![0].length;
}

/** The word at the cursor, or the end of the text, to be marked. */
function nextWord(cursor: Cursor): SlipSpan {
  skipSpace(cursor);
  const length = /^\S*/.exec(cursor.text.slice(cursor.at))![0].length;
  return { start: cursor.at, end: cursor.at + length };
}

const startsNumber = /^[\d½¼¾⅓⅔⅛⅜⅝⅞]|^\.\d/;

function readAmount(cursor: Cursor): Read<Amount> {
  const sign = take(cursor, /^(?:[-−+](?!\/)|–)/);
  if (sign?.match[0] === '–') return bad('This dash is too long for a minus sign: write “-”.', sign, '-');
  const first = readTerm(cursor);
  if (!first.ok) return first;
  const terms: [Term, ...Term[]] = [first.value];
  // Ends: each round takes a term off the text.
  for (;;) {
    skipSpace(cursor);
    if (!startsNumber.test(cursor.text.slice(cursor.at))) break;
    const next = readTerm(cursor);
    if (!next.ok) return next;
    const fault = faultBetween(cursor, terms.at(-1)!, next.value);
    if (fault) return fault;
    terms.push(next.value);
  }
  const negative = sign !== null && sign.match[0] !== '+';
  return good({ terms, negative, start: sign?.start ?? first.value.start, end: terms.at(-1)!.end });
}

/** What is wrong with one term right after another, e.g. `1 200 mm` or `5 m2`. */
function faultBetween({ text, example }: Cursor, before: Term, after: Term): Read<never> | null {
  const both = { start: before.start, end: after.numberEnd };
  const written = text.slice(both.start, both.end);
  if (before.unit === null) {
    if (/^\d{1,3}\s+\d{3}(?:\.\d*)?$/.test(written)) {
      const joined = written.replace(/\s+/g, '');
      return bad(`A number is written without spaces inside: ${joined}.`, both, joined);
    }
    return bad(`Two numbers without a unit or a word between them: “${written}”. Write it like ${example}.`, both);
  }
  if (after.unit === null && after.start === before.unit.end && /\p{L}$/u.test(before.unit.word)) {
    const word = { start: before.unit.start, end: after.numberEnd };
    return bad(
      `“${text.slice(word.start, word.end)}” is not a unit that is expected here. Write it like ${example}.`,
      word,
    );
  }
  return null;
}

function readTerm(cursor: Cursor): Read<Term> {
  const number = readNumber(cursor);
  if (!number.ok) return number;
  const { value, start, end } = number.value;
  const unit = readUnit(cursor);
  return good({ number: value, start, numberEnd: end, end: unit?.end ?? end, unit });
}

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

function readNumber(cursor: Cursor): Read<SlipSpan & { readonly value: number }> {
  const comma = take(cursor, /^\d*,\d[\d.,]*/);
  if (comma) return faultOfComma(comma, comma.match[0]);
  const vulgar = take(cursor, /^(\d*)\s*([½¼¾⅓⅔⅛⅜⅝⅞])/);
  if (vulgar) return good({ ...vulgar, value: Number(vulgar.match[1]) + vulgarFractions[vulgar.match[2]!]! });
  const fraction = take(cursor, /^(?:(\d+)(?:\s+|-))?(\d+)\s*[/⁄]\s*(\d+)(?![\d.,])/);
  if (fraction) return readFraction(fraction, fraction.match);
  const decimal = take(cursor, /^(?:\d+(?:\.(?!\.)\d*)?|\.\d+)(?:e[-−+]?\d+)?/i);
  if (decimal === null) return faultOfNoNumber(cursor);
  const tail = /^(?:[.,](?!\.)|[/⁄])[\d.,/⁄]*/.exec(cursor.text.slice(cursor.at));
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

function readFraction(at: SlipSpan, match: RegExpExecArray): Read<SlipSpan & { readonly value: number }> {
  const [written, whole, top, bottom] = match;
  if (Number(bottom) === 0) return bad(`“${written}” divides by zero. A fraction looks like 7/16.`, at);
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

const jointWord = /^(?:(?:to|x|by)(?![\p{L}])|×)/iu;

function readUnit(cursor: Cursor): UnitWord | null {
  skipSpace(cursor);
  const { text, at, dimension } = cursor;
  if (jointWord.test(text.slice(at))) return null;
  for (const candidate of [dimension, ...dimensions]) {
    const found = unitAt(text, at, candidate);
    if (found === null) continue;
    cursor.at = found.end;
    return { unit: found.unit, word: text.slice(at, found.end), start: at, end: found.end };
  }
  const unknown = take(cursor, /^[\p{L}°º˚%‰"'″′”’][\p{L}\d°º˚%‰/^²³]*/u);
  return unknown && { unit: null, word: unknown.match[0], start: unknown.start, end: unknown.end };
}

function readJoint(cursor: Cursor): Joint | null {
  const found = take(cursor, jointWord) ?? take(cursor, /^(?:[-−–—*…]|\.{2,})/);
  if (found === null) return null;
  const { start, end, match } = found;
  const written = match[0].toLowerCase();
  const meaning = /^(?:x|×|\*|by)$/.test(written) ? 'x' : 'to';
  return { start, end, meaning, isRight: /^(?:x|×|to)$/.test(written) };
}

function readTolerance(cursor: Cursor): Read<Amount> | null {
  const mark = take(cursor, /^(?:±|\+\s*\/\s*[-−–]|\+[-−–])/);
  if (mark === null) return null;
  const amount = readAmount(cursor);
  if (amount.ok && amount.value.negative) {
    const bare = cursor.text.slice(amount.value.start, amount.value.end).replace(/^[-−]\s*/, '');
    return bad('A tolerance has no sign of its own.', amount.value, bare);
  }
  return amount;
}

/** Nothing may be left over; says what the rest looks like. */
function checkEnd(cursor: Cursor, had: { readonly hasTolerance: boolean; readonly hasTwo: boolean }): Read<null> {
  const rest = nextWord(cursor);
  if (rest.start === rest.end) return good(null);
  const toEnd = { start: rest.start, end: cursor.text.trimEnd().length };
  const joint = readJoint(cursor);
  if (joint && had.hasTolerance) return bad('The tolerance goes last, after both values.', toEnd);
  if (joint && had.hasTwo) return bad(`There are two values already. Write it like ${cursor.example}.`, toEnd);
  const written = cursor.text.slice(rest.start, rest.end);
  return bad(`“${written}” is not understood here. Write it like ${cursor.example}.`, rest);
}
