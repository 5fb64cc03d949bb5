import type { Counted } from './places.ts';
import { exampleOf, nounOf, type Wanted } from './quantityExamples.ts';
import type { Amount, Written } from './quantityGrammar.ts';
import type { Meant } from './quantityMeaning.ts';
import type { Sense } from './quantitySense.ts';
import { bad, type Read } from './slip.ts';
import type { Dimension } from './units.ts';

/** What a value must be; masses, volumes, densities, salinities and pressures are never negative anyway. */
export interface QuantityOptions {
  readonly positive?: boolean;
  readonly nonNegative?: boolean;
  /** It may be less than nothing although its kind never is: a weight in water of what floats. */
  readonly signed?: boolean;
  /** The words that may say its sign. */
  readonly sense?: Sense;
  /** It is a place, counted from the file's own origin; it comes in boat axes, and has the words of that origin. */
  readonly counted?: Counted;
}

/** A quantity with what is needed to judge and mend it. */
export interface JudgedSize {
  readonly text: string;
  readonly written: Written;
  readonly meant: Meant;
  readonly wanted: Wanted;
}

/** Of anything on board, m. */
export const GREATEST_LENGTH = 20;

/**
 * What a model submarine can have, SI and in words; beyond it a unit is wrong or a digit too many. Less than the
 * least is as good as nothing, and nothing is written 0; no division by it may go out of all bounds.
 */
const sane: Readonly<Record<Dimension, { least: number; leastWords: string; most: number; mostWords: string }>> = {
  length: { least: 1e-6, leastWords: '0.001 mm', most: GREATEST_LENGTH, mostWords: '20 m' },
  mass: { least: 1e-6, leastWords: '1 mg', most: 1000, mostWords: '1000 kg' },
  volume: { least: 1e-10, leastWords: '0.1 mm3', most: 1, mostWords: '1000 l' },
  // Aerogels are near 1 kg/m3; osmium, the densest metal, is 22 590 kg/m3.
  density: { least: 0.5, leastWords: '0.5 kg/m3', most: 23_000, mostWords: '23000 kg/m3' },
  temperature: { least: 0, leastWords: '', most: 150, mostWords: '150 °C' },
  angle: { least: 1e-6, leastWords: '0.0001°', most: 2 * Math.PI, mostWords: '360°' },
  fraction: { least: 1e-6, leastWords: '0.0001 %', most: 1, mostWords: '100 %' },
  // The Dead Sea has about 340 g/kg.
  salinity: { least: 1e-6, leastWords: '0.000001 g/kg', most: 350, mostWords: '350 g/kg' },
  pressure: { least: 1, leastWords: '1 Pa', most: 1e7, mostWords: '100 bar' },
};

const neverNegative: ReadonlySet<Dimension> = new Set([
  'mass',
  'volume',
  'density',
  'fraction',
  'salinity',
  'pressure',
]);

/** A value of the wrong sign or beyond all sense, or two that do not go together. */
export function faultOfSize(judged: JudgedSize, options: QuantityOptions): Read<never> | null {
  const { written, meant } = judged;
  for (const [i, value] of meant.values.entries()) {
    const fault = faultOfValue(judged, written.amounts[i]!, value, options);
    if (fault) return fault;
  }
  return faultOfTolerance(judged) ?? faultOfTwo(judged);
}

/** The finest tolerance, as a share of the least value: laboratory scales and comparators are a little finer than boats. */
const FINEST = 1e-3;

function faultOfTolerance({ written, meant, wanted }: JudgedSize): Read<never> | null {
  const { least, most, mostWords } = sane[wanted.dimension];
  if (meant.sigma === null) return null;
  if (meant.sigma > most) return bad(`A tolerance of more than ${mostWords}: is the unit right?`, written.tolerance!);
  if (meant.sigma === 0 || meant.sigma >= FINEST * least) return null;
  return bad('A tolerance finer than anything can be read: is the unit right?', written.tolerance!);
}

function faultOfValue(judged: JudgedSize, at: Amount, value: number, options: QuantityOptions): Read<never> | null {
  const { text, wanted } = judged;
  const { dimension } = wanted;
  const { least, leastWords, most, mostWords } = sane[dimension];
  const noun = nounOf[dimension];
  const example = exampleOf(wanted);
  const mayBeNegative = !options.positive && !options.nonNegative && (options.signed || !neverNegative.has(dimension));
  if (value < 0 && !mayBeNegative) {
    const bare = text.slice(at.start, at.end).replace(/^[-−]\s*/, '');
    return bad(`Expected ${noun.one} that is not negative, e.g. ${example}.`, at, bare);
  }
  if (options.positive && value === 0) return bad(`Expected ${noun.one} of more than zero, e.g. ${example}.`, at);
  if (value !== 0 && Math.abs(value) < least) {
    return bad(`Smaller than any ${noun.bare} of a model (${leastWords}): is the unit right? E.g. ${example}.`, at);
  }
  if (dimension === 'fraction' && value > 1) return faultOfMoreThanWhole(text, at, value);
  if (Math.abs(value) <= most) return null;
  return bad(`More than any ${noun.bare} of a model (${mostWords}): is the unit right? E.g. ${example}.`, at);
}

function faultOfMoreThanWhole(text: string, at: Amount, value: number): Read<never> {
  const isBare = at.terms[0].unit === null;
  if (!isBare || value < 2 || value > 100) return bad('A fraction is at most the whole: 100 % or 1.', at);
  const percent = `${text.slice(at.start, at.end)} %`;
  return bad(`A bare fraction lies between 0 and 1. Write ${percent}, or ${value / 100}.`, at, percent);
}

function faultOfTwo({ text, written, meant, wanted }: JudgedSize): Read<never> | null {
  const [first, second] = written.amounts;
  const [from, to] = meant.values;
  if (second === undefined || to === undefined || from === undefined) {
    if (wanted.way !== 'taper' || from !== 0) return null;
    return bad(`Expected a diameter of more than zero, e.g. ${exampleOf(wanted)}.`, first);
  }
  const both = { start: first.start, end: second.end };
  if (wanted.way === 'taper' && from === 0 && to === 0) {
    return bad(`One of the two diameters must be more than zero, e.g. ${exampleOf(wanted)}.`, both);
  }
  if (wanted.way !== 'range' && wanted.way !== 'extent') return null;
  if (Math.abs(to - from) < sane[wanted.dimension].least || from === to) {
    const one = text.slice(second.start, second.end);
    if (wanted.way === 'range') return bad(`Both ends are the same. Write a range like ${exampleOf(wanted)}.`, both);
    return bad(`Both ends are the same. For one place write ${one}.`, both, one);
  }
  if (from < to) return null;
  const lesserEnd = first.terms[0].unit === null ? second.terms[0].numberEnd : second.end;
  const swapped = `${text.slice(second.start, lesserEnd)} to ${withUnitOf(text, first, second)}`;
  return bad(`A range goes from the lesser to the greater: write ${swapped}.`, both, swapped);
}

/** An amount as written, with the unit that it borrows from its neighbour where it has none of its own. */
function withUnitOf(text: string, amount: Amount, neighbour: Amount): string {
  const written = text.slice(amount.start, amount.end);
  const lent = amount.terms[0].unit === null ? neighbour.terms[0].unit : null;
  if (lent === null) return written;
  return written + text.slice(neighbour.terms[0].numberEnd, lent.end);
}
