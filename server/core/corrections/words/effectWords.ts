import type { FileUnits } from '../../../../schema/units.ts';
import type { Part } from '../../boat/boat.ts';
import { nameIn } from '../../figures/figured.ts';
import type { FigureChange } from '../balance/partEffects.ts';

/** How much a little more is. */
export function littleWords({ material }: Part, { mass }: FileUnits): string {
  const isImperial = mass === 'oz' || mass === 'lb';
  if (material === 'foam') return isImperial ? 'a tenth of a cubic inch more' : 'one ml more';
  return isImperial ? 'a tenth of an ounce more' : 'one gram more';
}

/** "submerged trim". */
export const changedName = ({ figure, condition }: FigureChange): string => nameIn(condition, figure);

/** A change in a figure, with the way that it goes: "0.18° bow up"; "no change" below what anybody could see. */
export function effectWords({ figure: { kind, effect }, change }: FigureChange, units: FileUnits): string {
  const size = kind.change(Math.abs(change), units);
  const [more, less] = effect ?? kind.ways;
  return /[1-9]/.test(size) ? `${size} ${change > 0 ? more : less}` : 'no change';
}
