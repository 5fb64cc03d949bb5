import type { InWaterEntry } from '../../../schema/inWater.ts';
import type { Quantity } from '../../../schema/quantity.ts';
import type { Form } from '../geometry/form/form.ts';
import { mirroredForm, movedForm } from '../geometry/form/moved.ts';
import type { Vec3 } from '../geometry/form/vector.ts';
import { lengthText } from '../wording/numbers.ts';
import type { WrittenPlace } from './boat.ts';
import { TAPE } from './placed.ts';
import { type Setting, tell } from './readingContext.ts';

/** The keys of a pair or a row, and what is theirs to share out. */
interface SeveralEntry {
  readonly sides?: 'both' | 'one' | undefined;
  readonly count?: number | undefined;
  readonly spacing?: Quantity | undefined;
  readonly weighed?: 'each' | 'together' | undefined;
  readonly mass?: Quantity | undefined;
  readonly volume?: Quantity | undefined;
  readonly capacity?: Quantity | undefined;
  readonly inWater?: InWaterEntry | undefined;
  /** How far to starboard the middle of a pair lies, m; no key of the file, but what if it lay there. */
  readonly aside?: number;
}

/** How many of one thing there are, and where. */
interface Copies {
  readonly number: number;
  readonly inRow: number;
  /** From one in the row to the next, m. */
  readonly spacing: number;
  readonly isPaired: boolean;
  readonly aside: number;
}

/** What is made of the entry of one, and counts for all of them. */
interface Made {
  readonly form: Form | null;
  readonly copies: number;
  readonly mass?: number;
  readonly volume?: number;
  readonly capacity?: number;
  readonly centroid?: Vec3;
  readonly from?: Vec3;
  readonly to?: Vec3;
  readonly written?: WrittenPlace | null;
}

/**
 * Reads an entry that may stand for a pair or a row: one of them is read, and is then as many as there are, as one thing: its
 * form is theirs together, its mass theirs, its centroid the middle of theirs. To move the entry is to move them all.
 */
export function readSeveral<T extends SeveralEntry, E extends Made>(
  entry: T,
  setting: Setting,
  readOne: (one: T) => E | null,
): E | null {
  const copies = copiesOf(entry, setting);
  if (copies.number === 1) return readOne(entry);
  const one = readOne(entry.weighed === 'together' ? shareOf(entry, copies.number) : entry);
  return one && asMany(one, copies, setting);
}

function copiesOf({ sides, count, spacing, aside = 0 }: SeveralEntry, setting: Setting): Copies {
  if (count !== undefined && count > 1 && !spacing) {
    tell(
      setting,
      'row-incomplete',
      ['count'],
      `${count} in a row lie how far apart? Give “spacing: 40 mm”, from middle to middle. Until then one is figured.`,
    );
  }
  if (spacing && (count ?? 1) === 1) {
    tell(setting, 'row-incomplete', ['spacing'], 'How many lie in the row? Give “count: 4”.', { severity: 'warning' });
  }
  const inRow = spacing ? (count ?? 1) : 1;
  const isPaired = sides === 'both';
  return { number: inRow * (isPaired ? 2 : 1), inRow, spacing: spacing?.value ?? 0, isPaired, aside };
}

/** What is one's of figures that were taken of all together. */
function shareOf<T extends SeveralEntry>(entry: T, number: number): T {
  const { mass, volume, capacity, inWater } = entry;
  return {
    ...entry,
    ...(mass ? { mass: divided(mass, number) } : {}),
    ...(volume ? { volume: divided(volume, number) } : {}),
    ...(capacity ? { capacity: divided(capacity, number) } : {}),
    ...(inWater ? { inWater: { ...inWater, reads: divided(inWater.reads, number) } } : {}),
  };
}

const divided = (quantity: Quantity, by: number): Quantity => ({
  ...quantity,
  value: quantity.value / by,
  sigma: quantity.sigma === null ? null : quantity.sigma / by,
});

function asMany<E extends Made>(one: E, copies: Copies, setting: Setting): E | null {
  const { number, inRow, spacing, isPaired, aside } = copies;
  const bounds = one.form ? setting.around.shapes.boundsOf(one.form) : { from: one.from!, to: one.to! };
  if (!isClear(bounds.from, bounds.to, copies, setting)) return null;
  const row = (inRow - 1) * spacing;
  const all = ([x, y, z]: Vec3): Vec3 => [x + row / 2, isPaired ? aside : y, z];
  const reach = Math.max(Math.abs(bounds.from[1]), Math.abs(bounds.to[1]));
  const from: Vec3 = [bounds.from[0], isPaired ? aside - reach : bounds.from[1], bounds.from[2]];
  const to: Vec3 = [bounds.to[0] + row, isPaired ? aside + reach : bounds.to[1], bounds.to[2]];
  return {
    ...one,
    copies: number,
    form: one.form && formOfAll(one.form, copies),
    ...(one.mass === undefined ? {} : { mass: number * one.mass }),
    ...(one.volume === undefined ? {} : { volume: number * one.volume }),
    ...(one.capacity === undefined ? {} : { capacity: number * one.capacity }),
    ...(one.centroid ? { centroid: all(one.centroid) } : {}),
    ...(one.from ? { from, to } : {}),
    ...(one.written ? { written: { ...one.written, row, isPaired } } : {}),
  };
}

/** The forms of all of them in turn, each whole by itself: tanks keep their water apart. */
function formOfAll(form: Form, { inRow, spacing, isPaired, aside }: Copies): Form {
  const row = Array.from({ length: inRow }, (_, i) => (i === 0 ? form : movedForm(form, [i * spacing, 0, 0])));
  const both = isPaired ? row.flatMap(each => [each, mirroredForm(each)]) : row;
  return { shape: 'compound', parts: aside === 0 ? both : both.map(each => movedForm(each, [0, aside, 0])) };
}

/** Neither the two of a pair nor those of a row lie in each other. */
function isClear(from: Vec3, to: Vec3, { inRow, spacing, isPaired }: Copies, setting: Setting): boolean {
  const { units } = setting.around;
  const over = Math.min(to[1], -from[1]);
  const isOnCentreline = from[1] === to[1] && from[1] === 0;
  if (isPaired && (over > TAPE || isOnCentreline)) {
    tell(
      setting,
      'pair-overlaps',
      ['sides'],
      isOnCentreline
        ? 'A pair lies to either side of the centreline: give the “offset” of the one to starboard, such as “offset: 30 mm”.'
        : `The two of this pair would lie in each other by ${lengthText(2 * over, units)}: give the “offset” of the one to starboard, more than half its breadth.`,
    );
    return false;
  }
  const lack = inRow > 1 ? to[0] - from[0] - spacing : 0;
  if (lack <= TAPE) return true;
  tell(
    setting,
    'row-overlaps',
    ['spacing'],
    `Each of these is longer than they are apart: they would lie in each other by ${lengthText(lack, units)}. Give the “spacing” from the middle of one to the middle of the next.`,
  );
  return false;
}
