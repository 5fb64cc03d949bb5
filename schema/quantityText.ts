import { bareUnitName, expectation, type Wanted } from './quantityExamples.ts';
import { bad, good, type Read } from './slip.ts';

const whole = { start: 0, end: 0 };

/** No figure with its unit, its tolerance and the words round it is longer, characters. */
export const LONGEST_FIGURE = 200;

/** The text to read a quantity from: a scalar of the file. Whatever else YAML may give is a slip of the whole value. */
export function textOf(raw: unknown, wanted: Wanted): Read<string> {
  if (typeof raw === 'string' && raw.trim() !== '')
    return raw.length > LONGEST_FIGURE ? bad(tooLong(raw, wanted), whole) : good(raw);
  if (typeof raw === 'number') return good(String(raw));
  const expected = expectation(wanted);
  const listed = Array.isArray(raw) ? listAsText(raw, wanted) : undefined;
  if (listed !== undefined) return bad(`${expected}, but this is a list. Write ${listed}.`, whole, listed);
  return bad(`${expected}, but ${whatItIs(raw)}.`, whole);
}

const tooLong = (raw: string, wanted: Wanted): string =>
  `${expectation(wanted)}, but this has ${raw.length} characters. Is a quote or a line end missing?`;

function whatItIs(raw: unknown): string {
  if (raw === null || raw === undefined || typeof raw === 'string') return 'nothing is given';
  if (typeof raw === 'boolean') return `this says ${raw}`;
  if (raw instanceof Date) return 'this is a date';
  if (Array.isArray(raw)) return 'this is a list';
  return 'this is a group of keys';
}

/** `[120, 480]` where a range, section or taper is wanted: the same in the format's own way. */
function listAsText(list: readonly unknown[], { way, dimension, units }: Wanted): string | undefined {
  const isPair = list.length === 2 && list.every(item => typeof item === 'number');
  const unit = bareUnitName(dimension, units);
  if (!isPair || way === 'one' || unit === null) return undefined;
  return `${list[0]} ${way === 'section' ? 'x' : 'to'} ${list[1]} ${unit}`;
}

/** A YAML number has no text of its own to point into: its slips mark and replace the whole value. */
export function placeSlip<T>(raw: unknown, text: string, read: Read<T>): Read<T> {
  if (read.ok || typeof raw === 'string') return read;
  const { message, start, end, replacement } = read.slip;
  return bad(message, whole, replacement && text.slice(0, start) + replacement + text.slice(end));
}
