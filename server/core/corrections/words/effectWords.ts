import type { FileUnits } from '../../../../schema/units.ts';
import type { Part } from '../../boat/boat.ts';
import { lengthText, percentText } from '../../wording/numbers.ts';
import type { FigureChange } from '../balance/partEffects.ts';
import type { RowName } from '../balance/program.ts';

/** What balances are about, for people. */
export const FIGURE_NAMES: Readonly<Record<RowName, string>> = {
  'surfaced draft': 'surfaced draft',
  'surfaced trim': 'surfaced trim',
  'surfaced heel': 'surfaced heel',
  'surfaced metacentric height': 'metacentric height',
  'submerged trim': 'submerged trim',
  'submerged heel': 'submerged heel',
  'neutral fill': 'neutral fill',
  'submerged stiffness in trim': 'B above G, trimming',
  'submerged stiffness in heel': 'B above G, heeling',
};

/** How much a little more is. */
export function littleWords({ material }: Part, { mass }: FileUnits): string {
  const isImperial = mass === 'oz' || mass === 'lb';
  if (material === 'foam') return isImperial ? 'a tenth of a cubic inch more' : 'one ml more';
  return isImperial ? 'a tenth of an ounce more' : 'one gram more';
}

/** A change in a figure, with the way that it goes: "0.18° bow up"; "no change" below what anybody could see. */
export function effectWords({ name, change }: FigureChange, units: FileUnits): string {
  const [more, less] = WAYS[name];
  const size = sizeText(name, Math.abs(change), units);
  return /[1-9]/.test(size) ? `${size} ${change > 0 ? more : less}` : 'no change';
}

const WAYS: Readonly<Record<RowName, readonly [more: string, less: string]>> = {
  'surfaced draft': ['deeper', 'higher'],
  'surfaced trim': ['bow up', 'bow down'],
  'surfaced heel': ['to starboard', 'to port'],
  'surfaced metacentric height': ['more', 'less'],
  'submerged trim': ['bow up', 'bow down'],
  'submerged heel': ['to starboard', 'to port'],
  'neutral fill': ['fuller', 'emptier'],
  'submerged stiffness in trim': ['more', 'less'],
  'submerged stiffness in heel': ['more', 'less'],
};

/** Less than this of an angle is nothing to anybody, degrees. */
const UNSEEN = 5e-3;

function sizeText(name: RowName, size: number, units: FileUnits): string {
  if (name === 'neutral fill') return percentText(size);
  if (!name.endsWith(' trim') && !name.endsWith(' heel')) return lengthText(size, units);
  if (name.startsWith('submerged stiffness')) return lengthText(size, units);
  const degrees = (size * 180) / Math.PI;
  return `${degrees < UNSEEN ? 0 : Number(degrees.toPrecision(2))}°`;
}
