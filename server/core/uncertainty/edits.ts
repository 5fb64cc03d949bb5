import { isRange } from '../../../schema/forms.ts';
import type { PartEntry } from '../../../schema/hull.ts';
import type { InWaterEntry } from '../../../schema/inWater.ts';
import type { Quantity, Range } from '../../../schema/quantity.ts';
import { AXES, type PlacedEntry, type PlacedForm } from '../boat/placed.ts';

/** What an entry of any list may have that an input changes. */
export type Editable = PlacedEntry & {
  readonly mass?: Quantity | undefined;
  readonly density?: Quantity | undefined;
  readonly balance?: PartEntry['balance'];
  readonly fill?: Quantity | undefined;
  readonly outside?: boolean | undefined;
  readonly sides?: 'both' | 'one' | undefined;
  readonly aside?: number;
  readonly capacity?: Quantity | undefined;
  readonly inWater?: InWaterEntry | undefined;
};

/** A checked entry with an input changed `by` so much (SI). Every other figure stays as it is. */
export type Edit = <T extends Editable>(entry: T, by: number) => T;

export type Axis = 0 | 1 | 2;
type Sole = 'mass' | 'density' | 'volume' | 'ball' | 'fill' | 'capacity';

export const plain = (value: number): Quantity => ({ value, sigma: null, unit: null });
const plus = (quantity: Quantity, by: number): Quantity => ({ ...quantity, value: quantity.value + by });

/** One figure more or less. */
export const editOf =
  (key: Exclude<Sole, 'ball' | 'volume'>): Edit =>
  (entry, by) => {
    const old = entry[key];
    return old ? { ...entry, [key]: plus(old, by) } : entry;
  };

/** What the spring balance showed under water. */
export const inWaterEdit: Edit = (entry, by) =>
  entry.inWater ? { ...entry, inWater: { ...entry.inWater, reads: plus(entry.inWater.reads, by) } } : entry;

/** The density of the water that a thing hung in, given as its own. */
export const waterOfWeighingEdit =
  (taken: number): Edit =>
  (entry, by) =>
    entry.inWater ? { ...entry, inWater: { ...entry.inWater, water: { density: plain(taken + by) } } } : entry;

/** The density that an entry takes from elsewhere, given to it as its own. */
export const densityEdit =
  (taken: number): Edit =>
  (entry, by) => ({ ...entry, density: plain(taken + by) });

export const balanceEdit =
  (axis: Axis): Edit =>
  (entry, by) => {
    const old = entry.balance?.[AXES[axis]];
    return old ? { ...entry, balance: { ...entry.balance, [AXES[axis]]: plus(old, by) } } : entry;
  };

/** The whole entry, all its forms, moved along an axis; its balance point, measured by itself, stays. */
export const shiftEdit =
  (axis: Axis): Edit =>
  (entry, by) =>
    entry.forms
      ? { ...entry, forms: entry.forms.map(form => shifted(form, axis, by)) }
      : { ...entry, ...shifted(entry, axis, by) };

/** The two of a pair moved athwart together: one comes nearer to the centreline, the other goes further off. */
export const asideEdit: Edit = (entry, by) => ({ ...entry, aside: (entry.aside ?? 0) + by });

function shifted<T extends PlacedForm>(form: T, axis: Axis, by: number): T {
  const { profile, sections, mesh } = form;
  if (mesh) {
    const at = mesh.at ?? [plain(0), plain(0), plain(0)];
    return { ...form, mesh: { ...mesh, at: at.map((q, i) => (i === axis ? plus(q, by) : q)) } };
  }
  if (profile && axis === 0) {
    return { ...form, profile: profile.map(([station, radius]) => [plus(station, by), radius]) };
  }
  if (sections && axis !== 1) {
    const rows = sections.map(({ station, outline }) => ({
      station: axis === 0 ? plus(station, by) : station,
      outline: axis === 0 ? outline : outline.map(([half, height]) => [half, plus(height, by)]),
    }));
    return { ...form, sections: rows };
  }
  const key = AXES[axis];
  return { ...form, [key]: shiftedExtent(form[key], by) };
}

function shiftedExtent(extent: Quantity | Range | undefined, by: number): Quantity | Range {
  if (!extent) return plain(by);
  return isRange(extent) ? { ...extent, from: extent.from + by, to: extent.to + by } : plus(extent, by);
}

/** A change to the entry's only form, or to one among its `forms`. */
export const formEdit =
  (index: number | null, change: <F extends PlacedForm>(form: F, by: number) => F): Edit =>
  (entry, by) =>
    index === null
      ? change(entry, by)
      : { ...entry, forms: entry.forms?.map((form, i) => (i === index ? change(form, by) : form)) };

/** A range longer about its middle. */
export const stretch =
  (axis: Axis) =>
  <F extends PlacedForm>(form: F, by: number): F => {
    const key = AXES[axis];
    const extent = form[key];
    if (!extent || !isRange(extent)) return form;
    return { ...form, [key]: { ...extent, from: extent.from - by / 2, to: extent.to + by / 2 } };
  };

export const resize =
  (key: 'ball' | 'volume') =>
  <F extends PlacedForm>(form: F, by: number): F => {
    const old = form[key];
    return old ? { ...form, [key]: plus(old, by) } : form;
  };

/** The first size of two, the second, or both alike. */
export const widen =
  (key: 'round' | 'box', which: 'first' | 'second' | 'both') =>
  <F extends PlacedForm>(form: F, by: number): F => {
    const old = form[key];
    if (!old) return form;
    const first = which === 'second' ? old.first : old.first + by;
    const second = which === 'first' ? old.second : old.second + by;
    return { ...form, [key]: { ...old, first, second } };
  };

/**
 * A drawn form with its greatest breadth `by` wider and all else across in proportion: the radii of a profile, breadths
 * and heights (from the lowest) of a table of offsets. A mesh grows all over from its bow, its middle and its keel,
 * `fixed` in boat axes.
 */
export const grow =
  (breadth: number, fixed: readonly [number, number, number]) =>
  <F extends PlacedForm>(form: F, by: number): F => {
    const factor = (breadth + by) / breadth;
    const { profile, sections, mesh } = form;
    if (profile) {
      return { ...form, profile: profile.map(([station, radius]) => [station, plain(radius.value * factor)]) };
    }
    if (sections) {
      const lowest = Math.min(...sections.flatMap(({ outline }) => outline.map(([, height]) => height.value)));
      const rows = sections.map(({ station, outline }) => ({
        station,
        outline: outline.map(([half, height]) => [
          plain(half.value * factor),
          plain(lowest + (height.value - lowest) * factor),
        ]),
      }));
      return { ...form, sections: rows };
    }
    if (!mesh) return form;
    const at = fixed.map((point, i) => plain(point + ((mesh.at?.[i]?.value ?? 0) - point) * factor));
    return { ...form, mesh: { ...mesh, at }, grown: factor };
  };
