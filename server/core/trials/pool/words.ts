import { countedAt } from '../../../../schema/places.ts';
import type { FileUnits } from '../../../../schema/units.ts';
import type { AxisName } from '../../boat/placed.ts';
import { lengthText, massText, percentText } from '../../wording/numbers.ts';
import { stationsCount } from '../../wording/places.ts';
import { figureText, plusMinus } from '../../wording/withUncertainty.ts';
import type { Item } from './causes.ts';
import { supposedWeight } from './suppose.ts';
import type { Told } from './told.ts';
import type { Explanation } from './weigh.ts';
import { FACTS, type Fact } from './weights.ts';

/** "8 in 10"; what is surer than that, or less sure, in hundredths. */
export function oddsText(odds: number): string {
  if (odds > 0.995) return 'more than 99 in 100';
  if (odds < 0.005) return 'less than 1 in 100';
  return odds >= 0.95 || odds < 0.095 ? `${Math.round(100 * odds)} in 100` : `${Math.round(10 * odds)} in 10`;
}

/** A figure that an explanation tells, and how well, SI. */
export interface FactFigure {
  readonly value: number;
  readonly sigma: number;
}

/** Kg/m3; a weight's mass and place do not ask for it. */
const ANY_WATER = 1000;

/** What an explanation tells of its weight: where the likeliest boat has it, the uncertainty counted about that. */
export function factOf(explanation: Explanation, fact: Fact): FactFigure {
  const { mean, covariance } = explanation.facts;
  const k = FACTS.indexOf(fact);
  const weight = fact === 'volume' ? null : supposedWeight(explanation, ANY_WATER);
  const value = weight?.[fact] ?? mean[k]!;
  return { value, sigma: Math.hypot(Math.sqrt(covariance[k]![k]!), value - mean[k]!) };
}

/** How far the n-th item of an explanation is off, SI: of a part how far it lies from where it was written to. */
export function itemOf({ items, known }: Explanation, n: number): FactFigure {
  const { size } = items[n]!;
  return { value: size * known.w.mean[n]!, sigma: size * Math.sqrt(known.w.covariance[n]![n]!) };
}

export const WAYS: Readonly<Record<AxisName, readonly [string, string]>> = {
  station: ['aft', 'forward'],
  offset: ['to starboard', 'to port'],
  height: ['up', 'down'],
};

const pairText = ({ value, sigma }: FactFigure, text: (value: number) => string): string =>
  plusMinus(text(value), text(Number(sigma.toPrecision(2))));

/** What may be wrong with the boat, as the rest of a sentence: "the battery lies 24 mm further aft than written". */
export const toldWords = ({ causes, explanation }: Told, units: FileUnits): string =>
  causes.length === 0
    ? 'the file as it is, its figures off by no more than their own uncertainties'
    : causes.map(cause => causeWords(cause, explanation, units)).join(', and ');

function causeWords(cause: Told['causes'][number], explanation: Explanation, units: FileUnits): string {
  const length = (metres: number) => lengthText(metres, units);
  const mass = () => pairText(factOf(explanation, 'mass'), kilograms => massText(kilograms, units));
  switch (cause.kind) {
    case 'elsewhere': {
      const n = explanation.items.findIndex(item => item.cause === cause);
      const { value, sigma } = itemOf(explanation, n);
      const [more, less] = WAYS[cause.axis];
      const far = pairText({ value: Math.abs(value), sigma }, length);
      return `“${cause.input.entryName}” lies ${far} further ${value > 0 ? more : less} than written`;
    }
    case 'displaces': {
      const n = explanation.items.findIndex(item => item.cause === cause);
      const { value, sigma } = itemOf(explanation, n);
      const far = plusMinus(percentText(Math.abs(value)), percentText(sigma));
      const [shift, ...others] = explanation.items[n]!.shifts;
      const how = shift && others.length === 0 ? asFigure(shift, explanation.known.w.mean[n]!, units) : '';
      return `“${cause.what}” displaces ${far} ${value > 0 ? 'more' : 'less'} than written${how}`;
    }
    case 'unlisted': {
      const where = cause.inside === null ? 'in the water' : `in “${cause.inside}”`;
      const { value, sigma } = factOf(explanation, 'station');
      const station = pairText({ value: countedAt(value, 'station', units), sigma }, length);
      return `something of ${mass()} that is not written down, about ${station} ${stationsCount(units)}, ${where}`;
    }
    case 'soaked':
      return `“${cause.shell}” has taken up ${mass()} of water`;
    case 'held':
      return `“${cause.shell}” holds ${mass()} of water above the surface`;
    case 'several':
      return 'more than two things at once, which these readings do not tell apart';
  }
}

/** What can be measured to find out: " (diameter 71.6 mm, written as 73.8 mm)". */
function asFigure({ input, by }: Item['shifts'][number], z: number, units: FileUnits): string {
  const { noun, value, dimension } = input;
  return ` (${noun} ${figureText(value + z * by, dimension, units)}, written as ${figureText(value, dimension, units)})`;
}

/** Rivals that are less likely are left unsaid. */
const WORTH_SAYING = 0.05;
const MOST_RIVALS = 3;

/** The likeliest explanation in words with its odds, and its rivals, a sentence each. */
export function verdict(told: readonly Told[], units: FileUnits): readonly string[] {
  return told
    .filter(({ odds }, rank) => rank === 0 || odds > WORTH_SAYING)
    .slice(0, 1 + MOST_RIVALS)
    .map((one, rank) => `${rank === 0 ? 'Most likely' : 'Or'} (${oddsText(one.odds)}): ${toldWords(one, units)}.`);
}
