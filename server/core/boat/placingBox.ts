import { boxForm } from '../geometry/form/box.ts';
import type { Vec3 } from '../geometry/form/vector.ts';
import { placeByVolume } from './fitted.ts';
import {
  AXES,
  type AxisName,
  centreOf,
  type Extents,
  LIES,
  lengthOf,
  lengthUnknown,
  type Placed,
  type PlacedForm,
  SAME_SIZE,
} from './placed.ts';
import { type Setting, tell } from './readingContext.ts';

/** A rectangular block; sizes that the entry leaves out follow from the volume, where that is known. */
export function placeBox(entry: PlacedForm, extents: Extents, volume: number | null, setting: Setting): Placed | null {
  const sizes: (number | null)[] = extents.map(lengthOf);
  if (entry.box) {
    const along = LIES[entry.axis ?? 'fore-aft'];
    const across = ([0, 1, 2] as const).filter(i => i !== along);
    for (const [k, i] of across.entries()) {
      const wanted = k === 0 ? entry.box.first : entry.box.second;
      const given = sizes[i] ?? null;
      if (given !== null && Math.abs(given - wanted) > SAME_SIZE * wanted) {
        return tell(
          setting,
          'size-twice',
          [AXES[i]],
          `The box already gives this size; give one figure for the middle of its “${AXES[i]}”, not a range.`,
        );
      }
      sizes[i] = wanted;
    }
    if (sizes[along] === null && volume === null) return lengthUnknown(along, 'box', setting);
  }
  const missing = ([0, 1, 2] as const).filter(i => sizes[i] === null);
  const solved: (readonly [AxisName, number])[] = [];
  if (missing.length > 0 && volume !== null) {
    if (missing.length === 3) return placeByVolume(extents, volume, setting);
    const known = sizes.reduce<number>((product, size) => product * (size ?? 1), 1);
    const each = missing.length === 1 ? volume / known : Math.sqrt(volume / known);
    for (const i of missing) {
      sizes[i] = each;
      solved.push([AXES[i], each]);
    }
  }
  const centre = centreOf(extents);
  const reach = (i: 0 | 1 | 2) => (sizes[i] ?? 0) / 2;
  const from: Vec3 = [centre[0] - reach(0), centre[1] - reach(1), centre[2] - reach(2)];
  const to: Vec3 = [centre[0] + reach(0), centre[1] + reach(1), centre[2] + reach(2)];
  const whole = sizes.every(size => size !== null && size > 0);
  const form = whole ? boxForm(from, to) : null;
  return { form, centre, from, to, measured: missing.length === 0, solved, words: [] };
}
