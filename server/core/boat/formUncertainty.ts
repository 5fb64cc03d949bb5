import { isRange } from '../../../schema/forms.ts';
import type { Pair } from '../../../schema/quantity.ts';
import { usualUncertainties } from '../../../schema/usualUncertainties.ts';
import { AXES, LIES, type Placed, type PlacedEntry, type PlacedForm } from './placed.ts';

/**
 * One standard uncertainty of the volume (m3) of a form by its sizes, as written or as a tape usually has them: to first
 * order, sizes taken as independent (GUM 5.1.2). Of several forms the least known stands for all.
 */
export function formVolumeSigma(entry: PlacedEntry, placed: Placed, volume: number): number {
  const forms: readonly PlacedForm[] = entry.forms ?? [entry];
  return volume * Math.max(...forms.map(form => relative(form, placed)));
}

function relative(form: PlacedForm, { from, to }: Placed): number {
  const { round, box, ball, profile, sections, mesh } = form;
  const size = (value: number, sigma: number | null) => (sigma ?? usualUncertainties.size.of(value)) / value;
  // Radii or half-breadths off together count twice; a mesh is off along the boat too, but by less than it is broad.
  if (profile || sections || mesh) return 2 * size(Math.max(to[1] - from[1], to[2] - from[2]), null);
  if (ball) return 3 * size(ball.value, ball.sigma);
  const along = LIES[form.axis ?? 'fore-aft'];
  const across = (pair: Pair) =>
    round
      ? [2 * size((pair.first + pair.second) / 2, pair.sigma)]
      : [pair.first, pair.second].map(s => size(s, pair.sigma));
  const pair = round ?? box;
  const ranges = ([0, 1, 2] as const).filter(axis => !pair || axis === along);
  return Math.hypot(...(pair ? across(pair) : []), ...ranges.map(axis => rangeShare(form, axis)));
}

function rangeShare(form: PlacedForm, axis: 0 | 1 | 2): number {
  const extent = form[AXES[axis]];
  if (!extent || !isRange(extent)) return 0;
  const length = extent.to - extent.from;
  const usual = axis === 0 ? usualUncertainties.length : usualUncertainties.size;
  return (extent.sigma === null ? usual.of(length) : extent.sigma * Math.SQRT2) / length;
}
