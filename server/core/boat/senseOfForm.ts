import { GREATEST_LENGTH } from '../../../schema/quantitySize.ts';
import { lengthText } from '../wording/numbers.ts';
import { AXES, type Placed } from './placed.ts';
import { type Setting, tell } from './readingContext.ts';

/** A speck of lead that a kitchen scale cannot see has a thousand times as much, m3; below it sums are all rounding. */
const LEAST_VOLUME = 1e-12;
/** A square micrometre, m2. */
const LEAST_AREA = 1e-12;
/** Dust in a hull twenty metres long would still be summed to a few digits. */
const LEAST_SHARE = 1e-14;

/**
 * The form, if it is one that a boat can have: no longer than any model, and enclosing something. Sizes that follow from
 * mass and density, and meshes, can be anything, whatever bounds there are on the figures that they follow from; a form that
 * is nothing would make every figure of the boat no number.
 */
export function withSense(placed: Placed, setting: Setting): Placed | null {
  const sizes = ([0, 1, 2] as const).map(axis => placed.to[axis] - placed.from[axis]);
  const long = sizes.findIndex(size => !(size <= GREATEST_LENGTH));
  const far = [...placed.from, ...placed.to].findIndex(place => !(Math.abs(place) <= 2 * GREATEST_LENGTH));
  if (long >= 0 || far >= 0) {
    const { units } = setting.around;
    const what = long >= 0 ? `comes out ${lengthText(sizes[long]!, units)} long` : 'comes to lie';
    const along = `along the “${AXES[long >= 0 ? long : far % 3]!}”`;
    return tell(
      setting,
      'form-size',
      [],
      `This ${what} ${along}, beyond any model of a submarine (${lengthText(GREATEST_LENGTH, units)}). Check its units, its sizes, and its mass and density where a size follows from them.`,
    );
  }
  if (placed.form === null || isSomething(placed, sizes, setting)) return placed;
  return tell(
    setting,
    'form-size',
    [],
    'This form encloses nothing: it is as thin as a line or a sheet. Check its sizes, or the mesh that it is drawn by.',
  );
}

function isSomething({ form }: Placed, sizes: readonly number[], { around, use, endsClosed }: Setting): boolean {
  const { shapes } = around;
  if (use === 'wall') return shapes.wallOf(form!, endsClosed).area >= LEAST_AREA;
  const greatest = Math.max(...sizes);
  return shapes.solidOf(form!).volume >= Math.max(LEAST_VOLUME, LEAST_SHARE * greatest ** 3);
}
