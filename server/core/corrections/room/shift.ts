import type { FileUnits } from '../../../../schema/units.ts';
import type { Boat, Part, WrittenExtent } from '../../boat/boat.ts';
import type { Change } from '../../findings/finding.ts';
import type { Vec3 } from '../../geometry/form/vector.ts';
import { extentText, unitsOf } from '../../wording/exactText.ts';
import { tapeStep } from '../../wording/numbers.ts';

/** A part somewhere else: `along` m aft, `across` m to starboard. Its form stays behind; what weighs and its room move. */
export function shifted(part: Part, along: number, across: number): Part {
  const by = (p: Vec3): Vec3 => [p[0] + along, p[1] + across, p[2]];
  return { ...part, centroid: by(part.centroid), from: by(part.from), to: by(part.to) };
}

/** What makes the file say that a part is where it was moved to: each place in its own unit, as range or as point. */
export function placeChanges(part: Part, moved: Part, units: FileUnits): readonly Change[] {
  const { written, path } = part;
  if (!written) return [];
  const changes: Change[] = [];
  // The station of a row is that of the foremost in it.
  const ends = (axis: 0 | 1) => [moved.from[axis], moved.to[axis] - (axis === 0 ? written.row : 0)] as const;
  const text = (axis: 0 | 1, extent: WrittenExtent) =>
    extentText(extent, ends(axis), units, axis === 0 ? 'station' : null);
  if (moved.from[0] !== part.from[0]) {
    changes.push({
      kind: 'replace',
      place: { on: 'value', path: [...path, 'station'] },
      text: text(0, written.station),
    });
  }
  if (moved.from[1] !== part.from[1]) {
    const { offset } = written;
    changes.push(
      offset
        ? { kind: 'replace', place: { on: 'value', path: [...path, 'offset'] }, text: text(1, offset) }
        : { kind: 'add-key', path, key: 'offset', text: text(1, { isRange: false, unit: units.length, sigma: null }) },
    );
  }
  return changes;
}

/**
 * The changes that move a part along the boat by about `metres` (aft positive), to marks of the tape in the unit that its
 * station is written in. None when it does not move, null when its station cannot be rewritten.
 */
export function moveAlong(part: Part, metres: number, { units }: Boat): readonly Change[] | null {
  if (!part.written) return null;
  const step = markOf(part, 0, units);
  const along = Math.round(metres / step) * step;
  return along === 0 ? [] : placeChanges(part, shifted(part, along, 0), units);
}

/** The mark of the tape by which a part moves along (0) or across (1), m: 1 mm, or 1/16 in where its place is in inches. */
export const markOf = (part: Part, axis: 0 | 1, units: FileUnits): number => tapeStep(tapeOf(part, axis, units));

/** The units that a part's station (0) or offset (1) is written in: by marks of that tape it moves. */
export function tapeOf({ written }: Part, axis: 0 | 1, units: FileUnits): FileUnits {
  const extent = axis === 0 ? written?.station : written?.offset;
  return extent ? unitsOf(extent, units) : units;
}
