import { countedAt } from '../../../schema/places.ts';
import { type FileUnits, fromSi, unitNamed } from '../../../schema/units.ts';
import { INCH, inchText, mixedInches, poundText } from './imperial.ts';
import { inUnit, plainNumber } from './inUnit.ts';

/**
 * Figures for people, from SI: in the file's own units (or the finer or coarser one beside it where that reads
 * better), with the digits that a tape and a kitchen scale are good for. What has a dimension of the boat file reads
 * back as a quantity there. Nothing ever says "-0".
 */

/** A length in m: "6.2 mm", "3 11/16 in"; `finer` adds digits where the usual ones hide what matters. */
export function lengthText(metres: number, units: FileUnits, finer = 0): string {
  const unit = lengthUnit(metres, units.length);
  return unit === 'in' ? inchText(metres, finer) : inUnit(metres, 'length', unit, { finer });
}

const isSmall = (si: number, limit: number): boolean => Math.abs(si) < limit;

function lengthUnit(metres: number, unit: FileUnits['length']): string {
  if (unit === 'm' && isSmall(metres, 1)) return 'mm';
  if ((unit === 'mm' || unit === 'cm') && !isSmall(metres, 10)) return 'm';
  if (unit === 'ft' && isSmall(metres, 0.3048)) return 'in';
  if (unit === 'in' && !isSmall(metres, 30.48)) return 'ft';
  return unit;
}

/** The smallest length that one marks on a tape, m: 1 mm, or 1/16 in. */
export const tapeStep = (units: FileUnits): number => (isImperial(units) ? INCH / 16 : 0.001);

/**
 * A length in m to be marked with a tape, to the nearest 1 mm or 1/16 in: "142 mm", "5 1/4 in". One unit whatever the
 * size: the file's own, inches where that is feet.
 */
export function tapeText(metres: number, units: FileUnits): string {
  if (units.length !== 'in' && units.length !== 'ft') {
    return inUnit(Math.round(metres * 1000) / 1000, 'length', units.length, { decimals: 3 });
  }
  return `${mixedInches(metres / INCH, 16)} in`;
}

/** A mass in kg: "96 g", "3.4 oz", "1 lb 9.5 oz". Builders weigh in grams up to 10 kg. */
export function massText(kilograms: number, units: FileUnits, finer = 0): string {
  if (units.mass === 'oz' || units.mass === 'lb') return poundText(kilograms, finer);
  const isInKilograms = units.mass === 'g' ? !isSmall(kilograms, 10) : !isSmall(kilograms, 1);
  return inUnit(kilograms, 'mass', isInKilograms ? 'kg' : 'g', { finer });
}

/** A volume in m3: "360 ml", "12.4 in³"; in the unit that the file has for its tanks, where it gives one. */
export function volumeText(cubicMetres: number, units: FileUnits): string {
  const unit = units.volume ?? (isImperial(units) ? 'in3' : isSmall(cubicMetres, 0.01) ? 'ml' : 'l');
  return inUnit(cubicMetres, 'volume', unit === 'ml' && !isSmall(cubicMetres, 0.01) ? 'l' : unit);
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
  return `${grouped(plainNumber(moment, isImperial(units) ? 1 : 0))} ${kilogrammes.name}·${metres.name}`;
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
  const degrees = plainNumber(fromSi(Math.abs(angle), unitNamed('°', 'angle')!), 1 + finer);
  return degrees === '0' ? none : `${degrees}° ${angle > 0 ? positive : negative}`;
}

/** An offset in m, + starboard: "4 mm to port", "on the centreline". */
export const offsetWords = (offset: number, units: FileUnits): string =>
  placeWords(offset, units, 'on the centreline', ['to starboard', 'to port']);

/** A station in m, + aft of the bow tip, as the file counts it: "310 mm aft of the bow tip". */
export function stationWords(station: number, units: FileUnits): string {
  const counted = countedAt(station, 'station', units);
  switch (units.origin?.stations ?? 'bow') {
    case 'bow':
      return placeWords(counted, units, 'at the bow tip', ['aft of the bow tip', 'ahead of the bow tip']);
    case 'stern':
      return placeWords(counted, units, 'at the stern', ['forward of the stern', 'aft of the stern']);
    case 'aft of midships':
      return placeWords(counted, units, 'at midships', ['aft of midships', 'forward of midships']);
    case 'forward of midships':
      return placeWords(counted, units, 'at midships', ['forward of midships', 'aft of midships']);
  }
}

function placeWords(
  at: number,
  units: FileUnits,
  none: string,
  [positive, negative]: readonly [string, string],
): string {
  const distance = lengthText(Math.abs(at), units);
  return /^0 /.test(distance) ? none : `${distance} ${at > 0 ? positive : negative}`;
}
