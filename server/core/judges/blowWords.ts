import type { FileUnits } from '../../../schema/units.ts';
import type { Blow } from '../conditions/blowing.ts';
import { lengthText, massText, pressureText, volumeText } from '../wording/numbers.ts';

/** What it takes to blow a tank, in a line: "at 2 m takes 0.2 bar and 358 ml of gas, ...". */
export function blowWords({ depth, gauge, water, free, mass, times }: Blow, units: FileUnits): string {
  const gas = mass === null ? '' : ` (${massText(mass, units)})`;
  const needs = `to blow ${volumeText(water, units)} out at a depth of ${depthText(depth, units)} takes ${pressureText(gauge, units)} over the air outside at least, and ${volumeText(free, units)} of gas${gas}, measured at the surface`;
  return times === null ? needs : `${needs}; the charge gives ${timesText(times)}`;
}

/** Depths of pools and ponds are told in metres or feet. */
const depthText = (depth: number, units: FileUnits): string =>
  lengthText(depth, { ...units, length: units.length === 'in' || units.length === 'ft' ? 'ft' : 'm' });

const timesText = (times: number): string => {
  const figure = times < 10 ? Number(times.toFixed(1)) : Math.round(times);
  return `${figure} ${figure === 1 ? 'blow' : 'blows'}`;
};

/** What goes with gas under pressure. */
export const BLOW_CAUTION =
  'Bottles and cartridges are pressure vessels: keep to their maker’s rating and to local rules, leave filling to people who are qualified, keep them cool, and test them away from faces and in the open.';
