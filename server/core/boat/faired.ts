import type { Section } from '../geometry/mesh/sections.ts';
import { chordLengths, fairedThrough, finer } from '../geometry/outline/fairing.ts';
import type { Point2 } from '../geometry/outline/outline.ts';

/** Points of a faired profile at most, about. */
const PROFILE_POINTS = 240;
/** Stations of a faired table of offsets at most, about, and stretches of each of its outlines. */
const STATIONS = 80;
const STRETCHES = 32;

/** Points on one stretch of so many, that they come to about `most` together. */
const each = (stretches: number, most: number): number => Math.min(Math.max(Math.floor(most / stretches), 2), 12);

/** [station, radius] points on the fair curve through those of a profile. */
export function fairedProfile(profile: readonly Point2[]): readonly Point2[] {
  const at = chordLengths(profile);
  return fairedThrough(profile, at, finer(at, each(profile.length - 1, PROFILE_POINTS))) as readonly Point2[];
}

/**
 * Sections on the fair surface through those of a table: each outline is faired through its points, and points of one
 * outline are faired with those of the next. Outlines of equally many points are divided alike between them, so that knuckles
 * stay; others by girth. A tip stays a point.
 */
export function fairedSections(sections: readonly Section[]): readonly Section[] {
  const counts = new Set(sections.map(({ outline }) => outline.length).filter(count => count > 1));
  const [count = 1] = counts;
  const outlines = sections.map(({ outline }) =>
    counts.size === 1 ? dividedBetween(outline, count) : dividedByGirth(outline),
  );
  const rows = sections.map(({ station }, i) => [station, ...outlines[i]!.flat()]);
  // One place along the hull for all points of a section: by how far the ends and the broadest parts are apart.
  const at = chordLengths(sections.map(({ station, outline }) => [station, ...spanOf(outline)]));
  const wanted = finer(at, each(sections.length - 1, STATIONS));
  return fairedThrough(rows, at, wanted).map(([station, ...flat], i) => {
    const outline = Array.from({ length: flat.length / 2 }, (_, k): Point2 => [flat[2 * k]!, flat[2 * k + 1]!]);
    const isTip = (section: Section | undefined) => section?.outline.length === 1;
    const end = i === 0 ? sections[0] : i === wanted.length - 1 ? sections.at(-1) : undefined;
    return { station: station!, outline: end && isTip(end) ? end.outline : outline };
  });
}

/** So many points in each outline: every stretch between two of them is divided alike. */
function dividedBetween(outline: readonly Point2[], count: number): readonly Point2[] {
  const parts = Math.max(1, Math.round(STRETCHES / (count - 1)));
  const [first] = outline;
  if (outline.length < 2) return Array.from({ length: parts * (count - 1) + 1 }, () => first!);
  const at = chordLengths(outline);
  return fairedThrough(outline, at, finer(at, parts)) as readonly Point2[];
}

function dividedByGirth(outline: readonly Point2[]): readonly Point2[] {
  const [first] = outline;
  if (outline.length < 2) return Array.from({ length: STRETCHES + 1 }, () => first!);
  const at = chordLengths(outline);
  const girth = at.at(-1)!;
  const wanted = Array.from({ length: STRETCHES + 1 }, (_, i) => (girth * i) / STRETCHES);
  return fairedThrough(outline, at, wanted) as readonly Point2[];
}

/** Keel, deck and half-breadth. */
const spanOf = (outline: readonly Point2[]): readonly number[] => [
  Math.min(...outline.map(([, height]) => height)),
  Math.max(...outline.map(([, height]) => height)),
  Math.max(...outline.map(([half]) => half)),
];
