import { bareUnitName, exampleOf, nounOf, type Wanted, withUnit } from './quantityExamples.ts';
import type { Amount, Term, UnitWord, Written } from './quantityGrammar.ts';
import { bad, good, type Read } from './slip.ts';
import { type Dimension, knownUnits, nearestUnit, spanToSi, toSi, type Unit, unitNamed } from './units.ts';

/** The values of a written quantity in SI. */
export interface Meant {
  readonly values: readonly number[];
  /** One standard uncertainty of each value, or null when none is written. */
  readonly sigma: number | null;
  /** The finest unit written, null for bare numbers. */
  readonly unit: string | null;
  /** The unit that a bare number was given by its size; null where the file's own, or a written one, serves. */
  readonly guessed: string | null;
}

/** Amounts that carry units of the wanted dimension: all but a tolerance in percent of the value. */
const amountsWithUnits = ({ amounts, tolerance }: Written, { dimension }: Wanted): readonly Amount[] =>
  tolerance === null || isPercentOfValue(tolerance, dimension) ? amounts : [...amounts, tolerance];

/** A unit that is unknown or of another dimension, or terms that do not add up. */
export function faultOfUnits(text: string, written: Written, wanted: Wanted): Read<never> | null {
  for (const amount of amountsWithUnits(written, wanted)) {
    const fault = faultOfAmount(text, amount, wanted);
    if (fault) return fault;
  }
  return null;
}

/** Turns a written quantity whose units are in order into SI; bare numbers take the unit that serves them. */
export function giveMeaning(text: string, written: Written, wanted: Wanted): Read<Meant> {
  const { amounts, tolerance } = written;
  const withUnits = amountsWithUnits(written, wanted);
  const isRelative = tolerance !== null && !withUnits.includes(tolerance);
  const percentFault = faultOfLonePercent(text, written, wanted);
  if (percentFault) return percentFault;

  const served: Served[] = [];
  for (const [i, amount] of withUnits.entries()) {
    const unit = unitForBare(text, withUnits, i, wanted);
    if (!unit.ok) return unit;
    served.push({ amount, bareUnit: unit.value });
  }
  const values = served.slice(0, amounts.length).map(siOf);
  const guessed = served[0]!.bareUnit.guessed ?? null;
  const finest = finestUnit(amounts.at(-1)!) ?? finestUnit(amounts[0]);
  const unit = finest?.unit?.name ?? served[0]!.bareUnit.written;
  if (tolerance === null) return good({ values, sigma: null, unit, guessed });
  if (!isRelative) return good({ values, sigma: spanOf(served.at(-1)!), unit, guessed });
  if (values.length > 1 || wanted.dimension === 'temperature') {
    return bad(`A percentage of what? Write the tolerance with its own unit, ± ${withUnit('1', wanted)}.`, tolerance);
  }
  return good({ values, sigma: (Math.abs(values[0]!) * tolerance.terms[0].number) / 100, unit, guessed });
}

/** `± 2 %` of a mass is a share of the mass; of a fraction or salinity it is so many hundredths. */
function isPercentOfValue({ terms }: Amount, dimension: Dimension): boolean {
  return terms.length === 1 && terms[0].unit?.unit?.name === '%' && unitNamed('%', dimension) === null;
}

/** `0.63 ± 3 %`: the sign may belong to both numbers or to the second alone. */
function faultOfLonePercent(text: string, { amounts, tolerance }: Written, { dimension }: Wanted): Read<never> | null {
  const isPercent =
    tolerance !== null && finestUnit(tolerance)?.unit?.name === '%' && unitNamed('%', dimension) !== null;
  if (!isPercent || amounts.some(amount => amount.terms[0].unit !== null)) return null;
  if (dimension === 'fraction' && amounts.every(amount => amount.terms[0].number > 1)) return null;
  const first = text.slice(amounts[0].start, amounts[0].end);
  return bad(`Does the % belong to “${first}” as well? Write a unit after each number.`, {
    start: amounts[0].start,
    end: tolerance.end,
  });
}

function faultOfAmount(text: string, amount: Amount, wanted: Wanted): Read<never> | null {
  for (const { unit } of amount.terms) {
    if (unit && unit.unit?.dimension !== wanted.dimension) return faultOfUnit(unit, wanted);
  }
  for (const [i, term] of amount.terms.entries()) {
    const before = amount.terms[i - 1];
    const fault = before && faultOfMixed(text, before, term, wanted);
    if (fault) return fault;
  }
  return null;
}

function faultOfUnit(at: UnitWord, wanted: Wanted): Read<never> {
  const { dimension } = wanted;
  const noun = nounOf[dimension];
  const example = exampleOf(wanted);
  const near = nearestUnit(at.word, dimension) ?? undefined;
  const meant = near === undefined ? '' : ` Did you mean ${near}?`;
  if (/^gal(lons?)?$/i.test(at.word) && dimension === 'volume') {
    return bad('Which gallon: “US gal” (3.785 l) or “imp gal” (4.546 l)?', at, near);
  }
  if (at.unit !== null) {
    const other = nounOf[at.unit.dimension].bare;
    return bad(`Expected ${noun.one}, e.g. ${example}, but “${at.word}” is a unit of ${other}.${meant}`, at, near);
  }
  const known = knownUnits(dimension).join(', ');
  return bad(`“${at.word}” is not a unit of ${noun.bare}.${meant} Known are ${known}; e.g. ${example}.`, at, near);
}

/** What is wrong with two terms that shall add up, like `1 lb 3 oz`. */
function faultOfMixed(text: string, before: Term, after: Term, wanted: Wanted): Read<never> | null {
  const both = { start: before.start, end: after.end };
  const written = text.slice(after.start, after.end);
  if (wanted.dimension === 'temperature') {
    return bad(`Expected one temperature, e.g. ${exampleOf(wanted)}.`, both);
  }
  if (after.unit === null) return bad(`“${written}” needs its own unit, as in 2 ft 3 in or 1 lb 3 oz.`, after);
  const falls = spanToSi(1, after.unit.unit!) < spanToSi(1, before.unit!.unit!);
  if (falls) return null;
  return bad(
    `Two values one after the other add up, the larger unit first, as in 1 lb 3 oz; “${text.slice(both.start, both.end)}” does not read so.`,
    both,
  );
}

/** An amount with the unit that its number has when it stands bare. */
interface Served {
  readonly amount: Amount;
  readonly bareUnit: BareUnit;
}

interface BareUnit {
  readonly unit: Unit | null;
  /** The unit's name where the file says it in a neighbouring amount, null for the file's own. */
  readonly written: string | null;
  readonly guessed?: string;
}

/** Nothing on board weighs less than this in kg/m3 but lead does in g/ml: 11.34. Foams begin at 12. */
const LEAST_BARE_DENSITY = 12;

/** A bare number takes the unit of what follows (`120 to 480 mm`), else of what goes before, else the file's own. */
function unitForBare(text: string, all: readonly Amount[], index: number, wanted: Wanted): Read<BareUnit> {
  const amount = all[index]!;
  if (amount.terms[0].unit !== null) return good({ unit: null, written: null });
  const hasUnit = (a: Amount) => a.terms[0].unit !== null;
  const lender =
    all.length > 1 ? (all.slice(index + 1).find(hasUnit) ?? all.slice(0, index).reverse().find(hasUnit)) : undefined;
  const number = text.slice(amount.start, amount.end);
  if (lender && lender.terms.length > 1) {
    const finest = finestUnit(lender)?.unit?.name;
    return bad(`Which unit has “${number}”? Write it out, e.g. ${number} ${finest}.`, amount);
  }
  const lent = lender?.terms[0].unit?.unit;
  if (lent) return good({ unit: lent, written: lent.name });
  if (wanted.dimension === 'density' && all[0]!.terms[0].number < LEAST_BARE_DENSITY)
    return good({ unit: unitNamed('g/ml', 'density'), written: null, guessed: 'g/ml' });
  const own = bareUnitName(wanted.dimension, wanted.units);
  if (own !== null) return good({ unit: unitNamed(own, wanted.dimension), written: null });
  if (wanted.dimension === 'pressure') {
    return bad(`A pressure needs its unit: ${knownUnits('pressure').join(', ')}.`, amount, `${number} bar`);
  }
  return good({ unit: null, written: null });
}

const signOf = ({ negative }: Amount): number => (negative ? -1 : 1);

/** SI value: the sign belongs to the reading, before a temperature scale's zero is taken off. No negative zero. */
function siOf({ amount, bareUnit }: Served): number {
  const { terms } = amount;
  if (terms.length > 1) return signOf(amount) * sumOf(terms) + 0;
  const reading = signOf(amount) * terms[0].number;
  const unit = terms[0].unit?.unit ?? bareUnit.unit;
  return (unit ? toSi(reading, unit) : reading) + 0;
}

/** SI width of a tolerance. */
function spanOf({ amount, bareUnit }: Served): number {
  const { terms } = amount;
  if (terms.length > 1) return sumOf(terms);
  const unit = terms[0].unit?.unit ?? bareUnit.unit;
  return unit ? spanToSi(terms[0].number, unit) : terms[0].number;
}

const sumOf = (terms: readonly Term[]): number =>
  terms.reduce((sum, { number, unit }) => sum + spanToSi(number, unit!.unit!), 0);

const finestUnit = (amount: Amount): UnitWord | null => amount.terms.at(-1)?.unit ?? null;
