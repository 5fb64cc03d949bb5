import { type Dimension, type FileUnits, fromSi, unitNamed } from '../../../schema/units.ts';

/**
 * Figures for people, from SI: in the file's own units (or the finer or coarser one beside it where that reads
 * better), with the digits that a tape and a kitchen scale are good for. What has a dimension of the boat file reads
 * back as a quantity there. Nothing ever says "-0".
 */

/** How many decimals a figure in a unit gets, by its size: the first row whose limit it is below. */
type Digits = readonly (readonly [below: number, decimals: number])[];

const digitsOf: Readonly<Record<string, Digits>> = {
  mm: [
    [1, 2],
    [100, 1],
    [Infinity, 0],
  ],
  cm: [
    [1, 3],
    [10, 2],
    [Infinity, 1],
  ],
  m: [[Infinity, 3]],
  in: [
    [0.1, 3],
    [10, 2],
    [Infinity, 1],
  ],
  ft: [[Infinity, 2]],
  g: [
    [1, 2],
    [10, 1],
    [Infinity, 0],
  ],
  kg: [
    [10, 3],
    [Infinity, 2],
  ],
  oz: [
    [1, 2],
    [Infinity, 1],
  ],
  lb: [[Infinity, 2]],
  ml: [
    [10, 1],
    [Infinity, 0],
  ],
  l: [[Infinity, 2]],
  in3: [
    [10, 2],
    [100, 1],
    [Infinity, 0],
  ],
  'kg/m3': [
    [1000, 1],
    [Infinity, 0],
  ],
  '°': [
    [1, 2],
    [Infinity, 1],
  ],
  '%': [
    [10, 1],
    [Infinity, 0],
  ],
  bar: [[Infinity, 2]],
  psi: [[Infinity, 1]],
};

/** A length in m: "6.2 mm", "0.24 in"; `finer` adds decimals where the usual ones hide what matters. */
export const lengthText = (metres: number, units: FileUnits, finer = 0): string =>
  inUnit(metres, 'length', lengthUnit(metres, units.length), { finer });

const isSmall = (si: number, limit: number): boolean => Math.abs(si) < limit;

function lengthUnit(metres: number, unit: FileUnits['length']): string {
  if (unit === 'm' && isSmall(metres, 1)) return 'mm';
  if (unit === 'ft' && isSmall(metres, 0.3048)) return 'in';
  return unit;
}

/** The smallest length that one marks on a tape, m: 1 mm, or 1/16 in. */
export const tapeStep = (units: FileUnits): number => (isImperial(units) ? 0.0254 / 16 : 0.001);

/**
 * A length in m to be marked with a tape, to the nearest 1 mm or 1/16 in: "142 mm", "5 1/4 in". One unit whatever the
 * size: the file's own, inches where that is feet.
 */
export function tapeText(metres: number, units: FileUnits): string {
  if (units.length !== 'in' && units.length !== 'ft') {
    return inUnit(Math.round(metres * 1000) / 1000, 'length', units.length, { decimals: 3 });
  }
  const sixteenths = Math.round(fromSi(metres, unitNamed('in', 'length')!) * 16);
  const whole = Math.floor(Math.abs(sixteenths) / 16);
  const rest = Math.abs(sixteenths) % 16;
  const parts = [...(whole > 0 || rest === 0 ? [String(whole)] : []), ...(rest > 0 ? [fraction(rest, 16)] : [])];
  return `${sixteenths < 0 ? '-' : ''}${parts.join(' ')} in`;
}

const fraction = (top: number, bottom: number): string =>
  top % 2 === 0 ? fraction(top / 2, bottom / 2) : `${top}/${bottom}`;

/** A mass in kg: "96 g", "3.4 oz". Builders weigh in grams up to 10 kg. */
export const massText = (kilograms: number, units: FileUnits, finer = 0): string =>
  inUnit(kilograms, 'mass', massUnit(kilograms, units.mass), { finer });

function massUnit(kilograms: number, unit: FileUnits['mass']): string {
  if (unit === 'g' && !isSmall(kilograms, 10)) return 'kg';
  if (unit === 'kg' && isSmall(kilograms, 1)) return 'g';
  if (unit === 'oz' && !isSmall(kilograms, 4.5359237)) return 'lb';
  if (unit === 'lb' && isSmall(kilograms, 0.45359237)) return 'oz';
  return unit;
}

/** A volume in m3: "360 ml", "12.4 in³". */
export function volumeText(cubicMetres: number, units: FileUnits): string {
  if (isImperial(units)) return inUnit(cubicMetres, 'volume', 'in3');
  return inUnit(cubicMetres, 'volume', isSmall(cubicMetres, 0.01) ? 'ml' : 'l');
}

/** "998.2 kg/m³". */
export const densityText = (kgPerCubicMetre: number): string => inUnit(kgPerCubicMetre, 'density', 'kg/m3');

/** An angle in rad: "0.8°". */
export const angleText = (radians: number): string => inUnit(radians, 'angle', '°');

/** A fraction 0..1: "63 %". */
export const percentText = (part: number, finer = 0): string => inUnit(part, 'fraction', '%', { finer });

/** A pressure in Pa: "0.34 bar", "4.9 psi". */
export const pressureText = (pascals: number, units: FileUnits): string =>
  inUnit(pascals, 'pressure', isImperial(units) ? 'psi' : 'bar');

/** A mass moment in kg·m, whole g·mm or tenths of oz·in, long ones in groups of three: "12 437 g·mm", "17.3 oz·in". */
export function momentText(kilogramMetres: number, units: FileUnits): string {
  const kilogrammes = unitNamed(isImperial(units) ? 'oz' : 'g', 'mass')!;
  const metres = unitNamed(isImperial(units) ? 'in' : 'mm', 'length')!;
  const moment = fromSi(fromSi(kilogramMetres, kilogrammes), metres);
  return `${grouped(plain(moment, isImperial(units) ? 1 : 0))} ${kilogrammes.name}·${metres.name}`;
}

/** Groups of three before the point with narrow no-break spaces, from five digits on as ISO 80000-1 has it. */
export function grouped(figure: string): string {
  const [, sign, whole, rest] = /^(-?)(\d{5,})(?!\d)(.*)$/.exec(figure) ?? [];
  if (sign === undefined || whole === undefined || rest === undefined) return figure;
  const groups = Array.from({ length: Math.ceil(whole.length / 3) }, (_, i) =>
    whole.slice(Math.max(0, whole.length - 3 * i - 3), whole.length - 3 * i),
  );
  return `${sign}${groups.reverse().join('\u202f')}${rest}`;
}

const isImperial = (units: FileUnits): boolean => units.length === 'in' || units.length === 'ft';

/** Trim in rad, + bow up: "0.8° bow up"; "level" below what a spirit level shows. */
export const trimWords = (trim: number, finer = 0): string => tiltWords(trim, 'level', ['bow up', 'bow down'], finer);

/** Heel in rad, + starboard down: "1.2° to starboard", "upright". */
export const heelWords = (heel: number, finer = 0): string =>
  tiltWords(heel, 'upright', ['to starboard', 'to port'], finer);

function tiltWords(
  angle: number,
  none: string,
  [positive, negative]: readonly [string, string],
  finer: number,
): string {
  const degrees = plain(fromSi(Math.abs(angle), unitNamed('°', 'angle')!), 1 + finer);
  return degrees === '0' ? none : `${degrees}° ${angle > 0 ? positive : negative}`;
}

/** An offset in m, + starboard: "4 mm to port", "on the centreline". */
export const offsetWords = (offset: number, units: FileUnits): string =>
  placeWords(offset, units, 'on the centreline', ['to starboard', 'to port']);

/** A station in m, + aft of the bow tip: "310 mm aft of the bow tip". */
export const stationWords = (station: number, units: FileUnits): string =>
  placeWords(station, units, 'at the bow tip', ['aft of the bow tip', 'ahead of the bow tip']);

function placeWords(
  at: number,
  units: FileUnits,
  none: string,
  [positive, negative]: readonly [string, string],
): string {
  const distance = lengthText(Math.abs(at), units);
  return /^0 /.test(distance) ? none : `${distance} ${at > 0 ? positive : negative}`;
}

/** How exact a figure is: by its size and `finer` digits more, or with `decimals` whatever its size. */
interface Exactness {
  readonly finer?: number;
  readonly decimals?: number;
}

/** An SI value as a figure in a unit that is known to exist. */
function inUnit(si: number, dimension: Dimension, name: string, { finer = 0, decimals }: Exactness = {}): string {
  const reading = fromSi(si, unitNamed(name, dimension)!);
  const figure = plain(reading, decimals ?? decimalsFor(reading, digitsOf[name]!) + finer);
  return name === '°' ? figure + name : `${figure} ${name.replace(/3$/, '³')}`;
}

const decimalsFor = (reading: number, digits: Digits): number =>
  digits.find(([below]) => Math.abs(reading) < below)?.[1] ?? 0;

/** Rounded, without trailing zeros or a negative nought. */
function plain(value: number, decimals: number): string {
  const written = value.toFixed(decimals);
  const trimmed = written.includes('.') ? written.replace(/(?<!0)0+$/, '').replace(/\.$/, '') : written;
  return trimmed === '-0' ? '0' : trimmed;
}
