import { isRange } from '../../../schema/forms.ts';
import type { Path } from '../../../schema/path.ts';
import type { Quantity, Range } from '../../../schema/quantity.ts';
import { usualUncertainties } from '../../../schema/usualUncertainties.ts';
import { AXES, type PlacedForm, TAPE } from '../boat/placed.ts';
import { readWater } from '../boat/readWater.ts';
import { waterOfWeighingSigma } from '../boat/weighedInWater.ts';
import type { Bounds } from '../geometry/cut/solids.ts';
import {
  type Axis,
  asideEdit,
  balanceEdit,
  type Editable,
  editOf,
  inWaterEdit,
  shiftEdit,
  waterOfWeighingEdit,
} from './edits.ts';
import type { Origin } from './input.ts';
import { type Draft, sizeInputs } from './sizeInputs.ts';

/** Where an entry lies, m, and whether it is a shell or compartment, which may be what all else is measured from. */
export interface Lying {
  readonly bounds: Bounds;
  readonly isHull: boolean;
}

/** What is uncertain of one entry by itself: its mass, place and sizes. */
export function entryInputs(entry: Editable, path: Path, lying: Lying): readonly Draft[] {
  const drafts: (Draft | null)[] = [
    soleDraft(entry, path, 'mass', 'weighed'),
    soleDraft(entry, path, 'density', 'given'),
    ...([0, 1, 2] as const).map(axis => placeDraft(entry, path, lying, axis)),
    ...sizeInputs(entry, path, lying.bounds),
    ...([0, 1, 2] as const).map(axis => balanceDraft(entry, path, axis)),
    soleDraft(entry, path, 'fill', 'measured'),
    soleDraft(entry, path, 'capacity', 'measured'),
    ...inWaterDrafts(entry, path),
  ];
  return drafts.filter(draft => draft !== null);
}

const SOLE = { mass: 'mass', density: 'density', fill: 'fraction', capacity: 'volume' } as const;

/** A figure that stands in the entry by itself; null where it does not. `unwritten`: where it is from without a tolerance. */
function soleDraft(entry: Editable, path: Path, key: keyof typeof SOLE, unwritten: Origin): Draft | null {
  const figure = entry[key];
  if (!figure) return null;
  return {
    noun: key,
    path: [...path, key],
    value: figure.value,
    sigma: figure.sigma ?? usualUncertainties[key].of(figure.value),
    dimension: SOLE[key],
    origin: figure.sigma === null ? unwritten : 'written',
    edit: editOf(key),
  };
}

/** Hung in water: what was read, and the water of that day. */
function inWaterDrafts({ inWater }: Editable, path: Path): readonly Draft[] {
  if (!inWater) return [];
  const { reads, water } = inWater;
  const { density } = readWater(water ?? null, []);
  const at = [...path, 'inWater'];
  return [
    {
      noun: 'weight in water',
      path: at,
      value: reads.value,
      sigma: reads.sigma ?? usualUncertainties.inWater.of(reads.value),
      dimension: 'mass',
      origin: reads.sigma === null ? 'weighed' : 'written',
      edit: inWaterEdit,
    },
    {
      noun: 'density of the water of its weighing',
      path: at,
      word: 'water',
      value: density,
      sigma: waterOfWeighingSigma(water),
      dimension: 'density',
      origin: water ? 'measured' : 'assumed',
      edit: waterOfWeighingEdit(density),
    },
  ];
}

function balanceDraft({ balance }: Editable, path: Path, axis: Axis): Draft | null {
  const at = balance?.[AXES[axis]];
  if (!at) return null;
  return {
    noun: `${AXES[axis]} of the balance point`,
    path: [...path, 'balance', AXES[axis]],
    value: at.value,
    sigma: at.sigma ?? usualUncertainties.place.of(at.value),
    dimension: 'length',
    origin: at.sigma === null ? 'measured' : 'written',
    edit: balanceEdit(axis),
  };
}

/** Where the entry as a whole lies along an axis: all its forms are one thing. */
function placeDraft(entry: Editable, path: Path, lying: Lying, axis: Axis): Draft | null {
  const known = placeSigma(entry, lying, axis);
  if (known === null) return null;
  const { sigma, origin } = known;
  const { bounds } = lying;
  const value = (bounds.from[axis] + bounds.to[axis]) / 2;
  const edit = axis === 1 && entry.sides === 'both' ? asideEdit : shiftEdit(axis);
  return { noun: AXES[axis], path: placePath(entry, path, axis), value, sigma, dimension: 'length', origin, edit };
}

/** Uncertainty of the middle along an axis; null where it is exact. */
function placeSigma(entry: Editable, lying: Lying, axis: Axis): Pick<Draft, 'sigma' | 'origin'> | null {
  const forms: readonly PlacedForm[] = entry.forms ?? [entry];
  const written = forms.flatMap(form => writtenSigma(form, axis) ?? []);
  if (written.length > 0) return { sigma: Math.max(...written), origin: 'written' };
  const isGiven = axis !== 1 || forms.some(form => form.offset !== undefined || form.mesh?.at !== undefined);
  if (isDatum(lying, axis, isGiven)) return null;
  if (!isGiven) return { sigma: usualUncertainties.centreline.of(0), origin: 'assumed' };
  return { sigma: usualUncertainties.place.of(0), origin: 'measured' };
}

function writtenSigma(form: PlacedForm, axis: Axis): number | null {
  if (form.mesh) return form.mesh.at?.[axis]?.sigma ?? null;
  if (form.profile && axis === 0) return form.profile[0]?.[0].sigma ?? null;
  if (form.sections && axis === 0) return form.sections[0]?.station.sigma ?? null;
  const extent: Quantity | Range | undefined = form[AXES[axis]];
  if (!extent || extent.sigma === null) return null;
  // Two ends known each by itself: their middle is known better than either.
  return isRange(extent) ? extent.sigma / Math.SQRT2 : extent.sigma;
}

/**
 * A hull that begins at the bow tip is what stations are counted from, and offsets where it does not say its own; one that
 * reaches down to the baseline is what heights are counted from. There it lies exactly.
 */
function isDatum({ bounds, isHull }: Lying, axis: Axis, isGiven: boolean): boolean {
  if (!isHull || Math.abs(bounds.from[0]) > TAPE) return false;
  return axis === 0 || (axis === 1 ? !isGiven : Math.abs(bounds.from[2]) <= TAPE);
}

/** The key that the place along an axis is read from, or would be. */
function placePath(entry: Editable, path: Path, axis: Axis): Path {
  if (entry.forms) {
    const at = entry.forms.findIndex(form => form[AXES[axis]] !== undefined);
    return at < 0 ? [...path, 'forms'] : [...path, 'forms', at, AXES[axis]];
  }
  if (entry.mesh) return entry.mesh.at ? [...path, 'mesh', 'at', axis] : [...path, 'mesh'];
  if (entry.profile && axis === 0) return [...path, 'profile'];
  if (entry.sections && axis !== 1) return [...path, 'sections'];
  return [...path, AXES[axis]];
}
