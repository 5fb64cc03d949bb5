import { isRange } from '../../../schema/forms.ts';
import type { PartEntry } from '../../../schema/hull.ts';
import type { Quantity, Range } from '../../../schema/quantity.ts';
import type { Bounds } from '../geometry/cut/solids.ts';
import type { Form } from '../geometry/form/form.ts';
import type { Vec3 } from '../geometry/form/vector.ts';
import { type Setting, tell } from './readingContext.ts';

/** The keys that place one form, as the schema read them. */
export type PlacedForm = Pick<
  PartEntry,
  | 'station'
  | 'offset'
  | 'height'
  | 'round'
  | 'axis'
  | 'box'
  | 'ball'
  | 'profile'
  | 'sections'
  | 'faired'
  | 'mesh'
  | 'volume'
> & {
  /** A factor on the size of its mesh; no key of the file, but what if the mesh were larger. */
  readonly grown?: number;
};

/** The keys that place a thing and give its form or its forms. */
export type PlacedEntry = PlacedForm & Pick<PartEntry, 'forms'>;

/** A thing's form, or what is known of the room that it takes up. SI, boat axes. */
export interface Placed {
  /** Null when the entry does not tell enough of it. */
  readonly form: Form | null;
  /** Middle of its extents, m. */
  readonly centre: Vec3;
  readonly from: Vec3;
  readonly to: Vec3;
  /** The form follows from sizes alone, not from mass and density. */
  readonly measured: boolean;
  /** Sizes that were worked out from the volume: [axis, m]. */
  readonly solved: readonly (readonly [AxisName, number])[];
  /** What else there is to say of the form, for people. */
  readonly words: readonly string[];
}

export type AxisName = 'station' | 'offset' | 'height';
export const AXES = ['station', 'offset', 'height'] as const;
export const LIES: Readonly<Record<'fore-aft' | 'athwart' | 'vertical', 0 | 1 | 2>> = {
  'fore-aft': 0,
  athwart: 1,
  vertical: 2,
};

/** Sizes that disagree by less than this (relative) are one size: what a tape reads. */
export const SAME_SIZE = 0.02;
/** Less than this sticking out or overlapping is the tape's doing, m. */
export const TAPE = 0.0005;

export type Extents = readonly [Quantity | Range, Quantity | Range, Quantity | Range];

export const middle = (extent: Quantity | Range): number =>
  isRange(extent) ? (extent.from + extent.to) / 2 : extent.value;
export const lengthOf = (extent: Quantity | Range): number | null => (isRange(extent) ? extent.to - extent.from : null);
export const centreOf = (extents: Extents): Vec3 => [middle(extents[0]), middle(extents[1]), middle(extents[2])];

/** A form that follows from sizes alone. */
export const measuredForm = (form: Form, { from, to }: Bounds, words: readonly string[] = []): Placed => ({
  form,
  centre: [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2, (from[2] + to[2]) / 2],
  from,
  to,
  measured: true,
  solved: [],
  words,
});

const EXAMPLES = { station: '200 to 680 mm', offset: '-20 to 20 mm', height: '12 to 60 mm' } as const;

export function lengthUnknown(along: 0 | 1 | 2, form: string, setting: Setting): null {
  const axis = AXES[along];
  return tell(
    setting,
    'length-unknown',
    [axis],
    `How long this ${form} is cannot be told. Give a range, such as “${axis}: ${EXAMPLES[axis]}”, or its mass and material.`,
  );
}

/** Keys of the place that a form with a place of its own has no use for. */
export function tellUnused(
  entry: PlacedForm,
  keys: readonly (keyof PlacedForm)[],
  why: string,
  setting: Setting,
): void {
  for (const key of keys) {
    if (entry[key] !== undefined) {
      tell(setting, 'key-without-use', [key], `“${key}” changes nothing here: ${why}`, { severity: 'warning' });
    }
  }
}
