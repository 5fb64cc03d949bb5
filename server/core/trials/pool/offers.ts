import { isRange } from '../../../../schema/forms.ts';
import { countedAt } from '../../../../schema/places.ts';
import type { Quantity, Range } from '../../../../schema/quantity.ts';
import type { FileUnits } from '../../../../schema/units.ts';
import { freeName } from '../../boat/arrangement.ts';
import type { AxisName } from '../../boat/placed.ts';
import type { BoatSource } from '../../boat/source.ts';
import type { Reading, Trial } from '../../boat/trial.ts';
import type { Change, EntryText } from '../../findings/finding.ts';
import { capital } from '../../wording/capital.ts';
import { lengthText, massText } from '../../wording/numbers.ts';
import { endsCounted, stationsCount } from '../../wording/places.ts';
import { toleranced } from '../../wording/toleranced.ts';
import { plusMinus } from '../../wording/withUncertainty.ts';
import type { Estimate } from './estimate.ts';
import { readingName, readingText } from './readingWords.ts';
import { supposedWeight } from './suppose.ts';
import { type ReadingSlip, slipsOf, type Told, toldOf } from './told.ts';
import { factOf, itemOf, oddsText, toldWords, WAYS } from './words.ts';

/** What the trials teach, as an edit. Nothing that they say changes when it is made. */
export interface Offer {
  readonly title: string;
  /** What else the title has no room for, a line each. */
  readonly details: readonly string[];
  readonly changes: readonly Change[];
  /** 0..1. */
  readonly odds: number;
  /** The reading that it strikes out; null where it is about the boat. */
  readonly strikesOut: Reading | null;
}

/** The file as it is, and as it was before anything was learned; what the trials say of it. */
export interface Taught {
  readonly source: BoatSource;
  readonly untaught: BoatSource;
  readonly trials: readonly Trial[];
  readonly estimate: Estimate;
}

/** The file as it is is at least this likely: then nothing is offered to be put into it. */
const GOOD_FILE = 0.5;
/** Less likely explanations are not offered. */
const LEAST_OFFERED = 0.05;
/** Of the odds of what has nothing to write. */
const AS_LIKELY = 0.5;
/** A reading that is less likely a slip is not offered to be struck out, for that is for good. */
const SURE_SLIP = 0.9;

/** What the trials teach, slips first, then what may be wrong with the boat, the likeliest first. */
export function offersOf(taught: Taught): readonly Offer[] {
  const told = toldOf(taught.estimate);
  const asFiled = told.find(({ causes }) => causes.length === 0)?.odds ?? 0;
  // What is much less likely is not offered in the place of what has nothing to write.
  const [first] = told;
  const least = first && !hasWriting(first) ? Math.max(LEAST_OFFERED, AS_LIKELY * first.odds) : LEAST_OFFERED;
  const ofBoat =
    asFiled >= GOOD_FILE
      ? []
      : told
          .filter(({ odds, causes }) => odds > least && causes.length > 0)
          .flatMap(each => offerOf(each, taught) ?? []);
  const slips = slipsOf(taught.estimate)
    .filter(({ odds }) => odds > SURE_SLIP)
    .flatMap(slip => strikeOut(slip, taught) ?? []);
  return [...slips, ...ofBoat];
}

function strikeOut({ reading, odds, expected, sigma }: ReadingSlip, { source, trials }: Taught): Offer | null {
  const trial = trials.find(({ readings }) => readings.some(({ path }) => path.join(' ') === reading.path.join(' ')));
  if (!trial) return null;
  const { units } = source.boat;
  const entry = reading.path.slice(0, -1);
  const key = String(reading.path.at(-1));
  const struck = trial.readings.filter(({ isSlip, path }) => isSlip && path.length === trial.path.length + 1);
  const names = [...struck.map(({ path }) => String(path.at(-1))), key];
  const change: Change =
    entry.length > trial.path.length
      ? { kind: 'add-key', path: entry, key: 'slip', text: 'true' }
      : struck.length === 0
        ? { kind: 'add-key', path: trial.path, key: 'slips', text: `[${key}]` }
        : { kind: 'replace', place: { on: 'value', path: [...trial.path, 'slips'] }, text: `[${names.join(', ')}]` };
  const should =
    reading.of === 'mark' || reading.of === 'freeboard'
      ? ` By all others it should have been ${plusMinus(readingText(reading, expected, units), lengthText(sigma, units))}.`
      : '';
  return {
    title: `Strike out ${readingName(reading, units)} as a slip`,
    details: [`A slip in ${oddsText(odds)}.${should}`],
    changes: [change],
    odds,
    strikesOut: reading,
  };
}

/** What one explanation has to write; null where it has nothing that can be written, or nothing that is new. */
function offerOf(told: Told, taught: Taught): Offer | null {
  const parts = told.causes.map((_, n) => writing(told, n, taught));
  if (parts.some(part => part === null)) return null;
  const known = taught.source.payload.filter(({ checked }) => checked.learned);
  const kept = new Set(parts.map(part => part!.path?.join(' ')));
  const others = known.filter(({ entry }) => !kept.has(entry.path.join(' ')));
  // One of several explanations stands in the file: what another one wrote goes with it.
  if (others.some(({ checked }) => checked.written)) return null;
  const changes = [
    ...parts.flatMap(part => part!.changes),
    ...others.map(({ entry }): Change => ({ kind: 'remove', path: entry.path })),
  ];
  if (changes.length === 0) return null;
  const { units } = taught.source.boat;
  return {
    title: capital(parts.map(part => part!.title).join(', and ')),
    details: [`${capital(oddsText(told.odds))}: ${toldWords(told, units)}.`],
    changes,
    odds: told.odds,
    strikesOut: null,
  };
}

interface Writing {
  readonly title: string;
  readonly changes: readonly Change[];
  /** The entry that has it already; null where it is new. */
  readonly path: BoatSource['payload'][number]['entry']['path'] | null;
}

const hasWriting = ({ causes }: Told): boolean =>
  causes.every(({ kind }) => kind === 'elsewhere' || kind === 'unlisted');

function writing(told: Told, n: number, taught: Taught): Writing | null {
  const cause = told.causes[n]!;
  if (cause.kind === 'elsewhere') return moveInFile(told, n, taught);
  return cause.kind === 'unlisted' ? insertWeight(told, cause.inside, taught) : null;
}

/** The entry that nobody wrote; nothing where the file has it. */
function insertWeight({ explanation }: Told, inside: string | null, { source }: Taught): Writing | null {
  const { boat } = source;
  const weight = supposedWeight(explanation, boat.water.density);
  if (!weight) return null;
  const known = source.payload.find(
    ({ checked }) => checked.learned && !checked.written && (checked.in ?? null) === inside,
  );
  const { units } = boat;
  const isImperial = units.length === 'in' || units.length === 'ft';
  const text = (key: keyof typeof weight, dimension: 'mass' | 'volume' | 'length', unit: string) =>
    toleranced(
      [key === 'station' || key === 'height' ? countedAt(weight[key], key, units) : weight[key]],
      factOf(explanation, key).sigma,
      dimension,
      unit,
      units,
    );
  const name = freeName('unlisted weight', [
    ...boat.shells,
    ...boat.compartments,
    ...boat.tanks,
    ...boat.payload,
    ...boat.ashore,
  ]);
  const entry: EntryText = {
    fields: [
      ['name', name],
      ['mass', text('mass', 'mass', units.mass)],
      inside === null ? ['volume', text('volume', 'volume', isImperial ? 'in3' : 'ml')] : ['in', inside],
      ['station', text('station', 'length', units.length)],
      ['offset', text('offset', 'length', units.length)],
      ['height', text('height', 'length', units.length)],
      ['learned', 'true'],
    ],
    comment: 'by the trials: look for it, weigh it, and write down what it is',
  };
  return {
    title: `insert “${name}”: ${massText(weight.mass, units)} about ${lengthText(countedAt(weight.station, 'station', units), units)} ${stationsCount(units)} that nobody wrote down`,
    changes: known ? [] : [{ kind: 'append', path: ['payload'], entry }],
    path: known?.entry.path ?? null,
  };
}

/** A part put where the trials have it; where it was written to lie is kept beside, for the trials are weighed from there. */
function moveInFile({ causes, explanation }: Told, n: number, { source, untaught }: Taught): Writing | null {
  const cause = causes[n]!;
  if (cause.kind !== 'elsewhere') return null;
  const { input, axis } = cause;
  const was = untaught.payload.find(({ entry }) => entry.path.join(' ') === input.entry.join(' '));
  if (!was || input.path.join(' ') !== [...was.entry.path, axis].join(' ')) return null;
  const now = source.payload.find(({ entry }) => entry.path.join(' ') === was.entry.path.join(' '))!;
  const at = explanation.items.findIndex(item => item.cause === cause);
  const { value, sigma } = itemOf(explanation, at);
  const written = was.checked[axis];
  const { units } = source.boat;
  const unit = written ? written.unit : units.length;
  const figures = !written ? [0] : isRange(written) ? [written.from, written.to] : [written.value];
  // Two ends known each by itself have their middle known better than either.
  const open = written && isRange(written) ? sigma * Math.SQRT2 : sigma;
  const moved = toleranced(
    asCounted(
      figures.map(figure => figure + value),
      axis,
      units,
    ),
    open,
    'length',
    unit,
    units,
  );
  const path = [...was.entry.path, axis];
  const place: Change = written
    ? { kind: 'replace', place: { on: 'value', path }, text: moved }
    : { kind: 'add-key', path: was.entry.path, key: axis, text: moved };
  const kept = `{ ${axis}: ${written ? asItStands(written, asCounted(figures, axis, units), units) : '0'} }`;
  const far = lengthText(Math.abs(value), units);
  const [more, less] = WAYS[axis];
  return {
    title: `write “${input.entryName}” ${far} further ${value > 0 ? more : less}, where the trials have it`,
    changes: now.checked.written
      ? []
      : [
          place,
          { kind: 'add-key', path: was.entry.path, key: 'written', text: kept },
          { kind: 'add-key', path: was.entry.path, key: 'learned', text: 'true' },
        ],
    path: was.entry.path,
  };
}

/** Places along an axis as the file counts them, m. */
function asCounted(places: readonly number[], axis: AxisName, units: FileUnits): readonly number[] {
  if (axis === 'offset') return places;
  const [first, last] = [places[0]!, places.at(-1)!];
  return places.length === 1 ? [countedAt(first, axis, units)] : endsCounted([first, last], axis, units);
}

/** A figure as it stands in the file, with its tolerance if it has one. */
function asItStands(written: Quantity | Range, figures: readonly number[], units: FileUnits): string {
  const text = toleranced(figures, written.sigma ?? FINE, 'length', written.unit, units);
  return written.sigma === null ? text.split(' ±')[0]! : text;
}

/** Written to the hundredth of a millimetre. */
const FINE = 1e-5;
