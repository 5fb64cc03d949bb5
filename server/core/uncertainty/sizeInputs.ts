import { isRange } from '../../../schema/forms.ts';
import type { Path } from '../../../schema/path.ts';
import type { Quantity } from '../../../schema/quantity.ts';
import { type UsualUncertainty, usualUncertainties } from '../../../schema/usualUncertainties.ts';
import { AXES, LIES, type PlacedEntry, type PlacedForm } from '../boat/placed.ts';
import type { Bounds } from '../geometry/cut/solids.ts';
import { type Axis, type Edit, formEdit, grow, resize, stretch, widen } from './edits.ts';
import type { Origin } from './input.ts';

/** An input of one entry before it has a name and a place among the boat's. */
export interface Draft {
  readonly noun: string;
  readonly path: Path;
  /** Told apart from the other inputs of the same path. */
  readonly word?: string;
  readonly value: number;
  readonly sigma: number;
  readonly dimension: 'length' | 'mass' | 'volume' | 'density' | 'fraction';
  readonly origin: Origin;
  readonly edit: Edit;
}

/** What an axis's extent is called. */
const EXTENTS = ['length', 'breadth', 'depth'] as const;

/** Sizes of an entry's form, or of each of its forms. `boundsOf` gives the room that a form takes up, in boat axes. */
export function sizeInputs(entry: PlacedEntry, path: Path, bounds: Bounds): readonly Draft[] {
  if (!entry.forms) return sizesOf(entry, path, null, bounds);
  return entry.forms.flatMap((form, i) => sizesOf(form, [...path, 'forms', i], i, bounds));
}

function sizesOf(form: PlacedForm, path: Path, index: number | null, bounds: Bounds): readonly Draft[] {
  const drawn = drawnSize(form, path, index, bounds);
  if (drawn) return drawn;
  const edit = (change: Parameters<typeof formEdit>[1]) => formEdit(index, change);
  const of = index === null ? '' : ` of form ${index + 1}`;
  const size = (noun: string, key: string, at: Sized, change: Edit, word?: string): Draft => ({
    noun: noun + of,
    path: [...path, key],
    ...(word === undefined ? {} : { word }),
    value: at.value,
    sigma: at.sigma ?? (at.usual ?? usualUncertainties.size).of(at.value),
    dimension: 'length',
    origin: at.sigma === null ? 'measured' : 'written',
    edit: change,
  });
  const { round, box, ball, volume } = form;
  const sizes: Draft[] = [];
  if (round && round.first === round.second) {
    sizes.push(size('diameter', 'round', { value: round.first, sigma: round.sigma }, edit(widen('round', 'both'))));
  } else if (round) {
    for (const [which, word] of [
      ['first', 'first'],
      ['second', 'last'],
    ] as const) {
      const at = { value: round[which], sigma: round.sigma };
      sizes.push(size(`${word} diameter`, 'round', at, edit(widen('round', which)), word));
    }
  }
  if (box) {
    const across = ([0, 1, 2] as const).filter(axis => axis !== LIES[form.axis ?? 'fore-aft']);
    for (const [i, which] of (['first', 'second'] as const).entries()) {
      const name = EXTENTS[across[i]!];
      sizes.push(size(name, 'box', { value: box[which], sigma: box.sigma }, edit(widen('box', which)), name));
    }
  }
  if (ball) sizes.push(size('diameter', 'ball', ball, edit(resize('ball'))));
  for (const axis of [0, 1, 2] as const) {
    const sized = rangeLength(form, axis);
    if (sized) sizes.push(size(EXTENTS[axis], AXES[axis], sized, edit(stretch(axis)), EXTENTS[axis]));
  }
  if (volume) sizes.push(volumeDraft(volume, path, of, edit(resize('volume'))));
  return sizes;
}

/** A size with its tolerance as written, or what is usual where that is null. */
interface Sized {
  readonly value: number;
  readonly sigma: number | null;
  readonly usual?: UsualUncertainty;
}

/** Length of a range: the ends are known each by itself, so that their distance has √2 of the uncertainty of one. */
function rangeLength(form: PlacedForm, axis: Axis): Sized | null {
  const extent = form[AXES[axis]];
  if (!extent || !isRange(extent)) return null;
  return {
    value: extent.to - extent.from,
    sigma: extent.sigma === null ? null : extent.sigma * Math.SQRT2,
    usual: axis === 0 ? usualUncertainties.length : usualUncertainties.size,
  };
}

const volumeDraft = (volume: Quantity, path: Path, of: string, edit: Edit): Draft => ({
  noun: `volume${of}`,
  path: [...path, 'volume'],
  value: volume.value,
  sigma: volume.sigma ?? usualUncertainties.volume.of(volume.value),
  dimension: 'volume',
  origin: volume.sigma === null ? 'dunked' : 'written',
  edit,
});

/**
 * A drawn form has one size: points off by themselves even out, what counts is that all are too large or too small
 * together. Its tolerance is that of its broadest point.
 */
function drawnSize(form: PlacedForm, path: Path, index: number | null, bounds: Bounds): readonly Draft[] | null {
  const broadest = broadestOf(form, bounds);
  if (!broadest) return null;
  const { key, breadth, sigma } = broadest;
  const fixed = [bounds.from[0], (bounds.from[1] + bounds.to[1]) / 2, bounds.from[2]] as const;
  return [
    {
      noun: `greatest breadth${index === null ? '' : ` of form ${index + 1}`}`,
      path: [...path, key],
      word: 'size',
      value: breadth,
      sigma: sigma === null ? usualUncertainties.size.of(breadth) : 2 * sigma,
      dimension: 'length',
      origin: sigma === null ? 'measured' : 'written',
      edit: formEdit(index, grow(breadth, fixed)),
    },
  ];
}

interface Broadest {
  readonly key: 'profile' | 'sections' | 'mesh';
  readonly breadth: number;
  /** Of half of it, as written. */
  readonly sigma: number | null;
}

function broadestOf({ profile, sections, mesh }: PlacedForm, { from, to }: Bounds): Broadest | null {
  if (mesh) return { key: 'mesh', breadth: Math.max(to[1] - from[1], to[2] - from[2]), sigma: null };
  const points =
    profile?.map(([, radius]) => radius) ?? sections?.flatMap(({ outline }) => outline.map(([half]) => half));
  if (!points) return null;
  const widest = points.reduce((most, point) => (point.value > most.value ? point : most));
  return { key: profile ? 'profile' : 'sections', breadth: 2 * widest.value, sigma: widest.sigma };
}
