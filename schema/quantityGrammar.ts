import { type Cursor, type Expected, nextWord, skipSpace, take } from './quantityCursor.ts';
import { readNumber } from './quantityNumber.ts';
import { senseAt } from './quantitySense.ts';
import { faultOfRest, faultOfTrimmings } from './quantityTrimmings.ts';
import { bad, good, type Read, type SlipSpan } from './slip.ts';
import { dimensions, type Unit, unitAt } from './units.ts';

/**
 * How a quantity is written, before it means anything:
 *
 *     quantity  = amount [joint amount] [± tolerance]      240 g ± 5 g    120 to 480 mm    40 x 12 mm
 *     amount    = [sign] term {term} [sense] | nothing     1 lb 3 oz    2° bow up    upright
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

/** Most figures of a table are but a number. */
const PLAIN = /^-?\d+(?:\.\d+)?$/;

/** Takes a text apart. */
export function takeApart(text: string, expected: Expected): Read<Written> {
  if (PLAIN.test(text)) return good({ amounts: [plainAmount(text)], joint: null, tolerance: null });
  const trimmings = faultOfTrimmings(text);
  if (trimmings) return trimmings;
  const cursor: Cursor = { text, ...expected, at: 0 };
  const first = readAmount(cursor);
  if (!first.ok) return first;
  const joint = /^\s*-\s*\+/.test(text.slice(cursor.at)) ? null : readJoint(cursor);
  const second = joint && readAmount(cursor);
  if (second?.ok === false) return second;
  const tolerance = readTolerance(cursor);
  if (tolerance?.ok === false) return tolerance;
  const last = tolerance?.value ?? second?.value ?? first.value;
  const rest = checkEnd(cursor, {
    hasTolerance: tolerance !== null,
    hasTwo: second !== null,
    lastUnit: last.terms.at(-1)!.unit?.word ?? null,
  });
  if (!rest.ok) return rest;
  return good({
    amounts: second ? [first.value, second.value] : [first.value],
    joint,
    tolerance: tolerance?.value ?? null,
  });
}

/** What the way through the grammar makes of a number without anything else, at once. */
function plainAmount(text: string): Amount {
  const end = text.length;
  const negative = text.startsWith('-');
  const start = negative ? 1 : 0;
  const number = Number(text.slice(start));
  return { terms: [{ number, start, numberEnd: end, end, unit: null }], negative, start: 0, end };
}

const startsNumber = /^[\d½¼¾⅓⅔⅛⅜⅝⅞]|^\.\d/;

function readAmount(cursor: Cursor): Read<Amount> {
  const sign = take(cursor, /^(?:[-−+](?!\/)|–)/);
  if (sign?.match[0] === '–') return bad('This dash is too long for a minus sign: write “-”.', sign, '-');
  const nothing = sign ? null : takeNothing(cursor);
  if (nothing) return good(nothing);
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
  const span = { start: sign?.start ?? first.value.start, end: terms.at(-1)!.end };
  const said = takeSense(cursor);
  if (said && sign) {
    const word = cursor.text.slice(said.start, said.end);
    return bad(`Both the sign and “${word}” say which way. Leave the sign out.`, sign, '');
  }
  const negative = said ? said.says === 'minus' : sign !== null && sign.match[0] !== '+';
  return good({ terms, negative, ...span });
}

/** The words at the cursor that say which way a figure goes. */
function takeSense(cursor: Cursor) {
  if (cursor.sense === null) return null;
  const { length: space } = /^\s*/.exec(cursor.text.slice(cursor.at))![0];
  const start = cursor.at + space;
  const found = senseAt(cursor.text.slice(start), cursor.sense);
  if (found === null || found.says === 'none') return null;
  cursor.at = start + found.length;
  return { says: found.says, start, end: cursor.at };
}

/** “upright” and its like, for a figure of nothing. */
function takeNothing(cursor: Cursor): Amount | null {
  skipSpace(cursor);
  const found = cursor.sense && senseAt(cursor.text.slice(cursor.at), cursor.sense);
  if (found?.says !== 'none') return null;
  const start = cursor.at;
  cursor.at += found.length;
  const span = { start, end: cursor.at };
  return { terms: [{ number: 0, numberEnd: span.end, unit: null, ...span }], negative: false, ...span };
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
  const found =
    take(cursor, jointWord) ?? take(cursor, /^(?:(?:till|until|thru|through|and)(?![\p{L}])|->|→|[-−–—*…/]|\.{2,})/iu);
  if (found === null) return null;
  const { start, end, match } = found;
  const written = match[0].toLowerCase();
  const meaning = /^(?:x|×|\*|by)$/.test(written) ? 'x' : 'to';
  return { start, end, meaning, isRight: /^(?:x|×|to)$/.test(written) };
}

function readTolerance(cursor: Cursor): Read<Amount> | null {
  const mark = take(cursor, /^(?:±|\+\s*(?:\/\s*)?[-−–])/);
  const other = mark ? null : take(cursor, /^(?:plus\s*(?:(?:or|\/|and)\s*)?minus|[-−]\s*\+|\+\s*\/)/i);
  if (other) return bad('A tolerance goes behind “±”, as in 310 g ± 5 g.', other, '±');
  if (mark === null) return null;
  const amount = readAmount(cursor);
  if (amount.ok && amount.value.negative) {
    const bare = cursor.text.slice(amount.value.start, amount.value.end).replace(/^[-−]\s*/, '');
    return bad('A tolerance has no sign of its own.', amount.value, bare);
  }
  return amount;
}

/** What was read already. */
interface Had {
  readonly hasTolerance: boolean;
  readonly hasTwo: boolean;
  readonly lastUnit: string | null;
}

/** Nothing may be left over; says what the rest looks like. */
function checkEnd(cursor: Cursor, had: Had): Read<null> {
  const rest = nextWord(cursor);
  if (rest.start === rest.end) return good(null);
  const toEnd = { start: rest.start, end: cursor.text.trimEnd().length };
  const joint = readJoint(cursor);
  if (joint && had.hasTolerance) return bad('The tolerance goes last, after both values.', toEnd);
  if (joint && had.hasTwo) return bad(`There are two values already. Write it like ${cursor.example}.`, toEnd);
  return faultOfRest(cursor.text, rest, had.lastUnit, cursor.example);
}
