import type { FileUnits } from '../../../schema/units.ts';
import { angleText, heelWords, lengthText, massText, percentText, trimWords } from '../wording/numbers.ts';

/** A kind of quantity: how its figures are said, and how they stand in the report for machines. */
export interface Kind {
  /** The figure itself, from SI, with its sign in words: "0.8° bow up"; `finer` adds digits. */
  readonly show: (value: number, units: FileUnits, finer?: number) => string;
  /** A size without a way: a limit, an uncertainty. */
  readonly size: (value: number, units: FileUnits) => string;
  /** A small change: angles in two digits, however small. */
  readonly change: (value: number, units: FileUnits) => string;
  /** From SI to mm, g, degrees or a fraction. */
  readonly factor: number;
  /** What a change of it is called either way, more first: "0.8° bow up". */
  readonly ways: readonly [more: string, less: string];
}

const DEGREES = 180 / Math.PI;

/** Less than this of an angle is nothing to anybody, degrees. */
const UNSEEN = 5e-3;

function fineAngle(angle: number): string {
  const degrees = angle * DEGREES;
  return `${degrees < UNSEEN ? 0 : Number(degrees.toPrecision(2))}°`;
}

export const LENGTH: Kind = {
  show: lengthText,
  size: lengthText,
  change: lengthText,
  factor: 1e3,
  ways: ['more', 'less'],
};

/** A height that may fall the other way, in words instead of a sign. */
export const HEIGHT: Kind = {
  ...LENGTH,
  show: (height, units, finer) =>
    height < 0 ? `below by ${lengthText(-height, units)}` : lengthText(height, units, finer),
};

export const MASS: Kind = { show: massText, size: massText, change: massText, factor: 1e3, ways: ['more', 'less'] };

export const FILL: Kind = {
  show: (part, _, finer) => percentText(part, finer),
  size: part => percentText(part),
  change: part => percentText(part),
  factor: 1,
  ways: ['fuller', 'emptier'],
};

export const TRIM: Kind = {
  show: (angle, _, finer) => trimWords(angle, finer),
  size: angle => angleText(angle),
  change: fineAngle,
  factor: DEGREES,
  ways: ['bow up', 'bow down'],
};

export const HEEL: Kind = {
  show: (angle, _, finer) => heelWords(angle, finer),
  size: angle => angleText(angle),
  change: fineAngle,
  factor: DEGREES,
  ways: ['to starboard', 'to port'],
};
