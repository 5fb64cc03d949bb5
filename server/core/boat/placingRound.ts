import type { Pair } from '../../../schema/quantity.ts';
import type { Form } from '../geometry/form/form.ts';
import type { Vec3 } from '../geometry/form/vector.ts';
import type { Point2 } from '../geometry/outline/outline.ts';
import { fairedProfile } from './faired.ts';
import { fairedWords } from './fairedWords.ts';
import { fromTheBow } from './fromTheBow.ts';
import {
  AXES,
  centreOf,
  type Extents,
  LIES,
  lengthOf,
  lengthUnknown,
  measuredForm,
  middle,
  type Placed,
  type PlacedForm,
  SAME_SIZE,
  tellUnused,
} from './placed.ts';
import { type Setting, tell } from './readingContext.ts';

/** A body of revolution about a fore-and-aft axis. */
export function placeProfile(
  entry: PlacedForm,
  profile: NonNullable<PlacedForm['profile']>,
  setting: Setting,
): Placed | null {
  if (!entry.height) {
    return tell(setting, 'missing-key', [], 'A profile needs the “height” of its axis, such as “height: 46 mm”.');
  }
  const given = profile.map(([station, radius]) => [station.value, radius.value] as const);
  const { rows: points, written, isReversed } = fromTheBow(given, ([station]) => station, setting.around.units);
  const backward = points.findIndex(([s], i) => i > 0 && s < points[i - 1]![0]);
  if (backward > 0) {
    return tell(
      setting,
      'profile-order',
      ['profile', written(backward), 0],
      isReversed
        ? `Stations of a profile run from end to end; point ${written(backward) + 1} turns back.`
        : `Stations of a profile run from bow to stern; point ${backward + 1} lies forward of the one before it.`,
    );
  }
  const negative = points.findIndex(([, r]) => r < 0);
  if (negative >= 0 || points.every(([, r]) => r === 0)) {
    const keys = negative < 0 ? ['profile'] : ['profile', written(negative), 1];
    return tell(setting, 'profile-radius', keys, 'The radii of a profile cannot be negative, nor all nothing.');
  }
  const y = entry.offset ? middle(entry.offset) : 0;
  const z = middle(entry.height);
  const most = Math.max(...points.map(([, r]) => r));
  const first = points[0]![0];
  const last = points.at(-1)![0];
  if (last <= first) {
    return tell(
      setting,
      'profile-order',
      ['profile'],
      'A profile needs length: its last station must lie aft of its first.',
    );
  }
  tellUnused(entry, ['station'], 'a profile has its own stations.', setting);
  const by = (of: readonly Point2[]): Form => ({ shape: 'revolved', origin: [0, y, z], axis: [1, 0, 0], profile: of });
  const straight = by(points);
  const form = entry.faired ? by(fairedProfile(points)) : straight;
  const words = entry.faired ? [fairedWords(straight, form, setting)] : [];
  return measuredForm(form, { from: [first, y - most, z - most], to: [last, y + most, z + most] }, words);
}

/** A ball at its centre. */
export function placeBall(extents: Extents, diameter: number, measured: boolean): Placed {
  const centre = centreOf(extents);
  const r = diameter / 2;
  return {
    form: { shape: 'ball', centre, radius: r },
    centre,
    from: [centre[0] - r, centre[1] - r, centre[2] - r],
    to: [centre[0] + r, centre[1] + r, centre[2] + r],
    measured,
    solved: [],
    words: [],
  };
}

/** A cylinder or cone along one of the boat's axes. */
export function placeRound(
  entry: PlacedForm,
  extents: Extents,
  { first, second: last }: Pair,
  volume: number | null,
  setting: Setting,
): Placed | null {
  const along = LIES[entry.axis ?? 'fore-aft'];
  for (const i of [0, 1, 2] as const) {
    const size = lengthOf(extents[i]);
    if (i === along || size === null || Math.abs(size - Math.max(first, last)) <= SAME_SIZE * size) continue;
    return tell(
      setting,
      'size-twice',
      [AXES[i]],
      `A round is as broad and deep as its diameter; give one figure for the “${AXES[i]}” of its axis, not a range.`,
    );
  }
  const area = (Math.PI / 12) * (first * first + first * last + last * last);
  const size = lengthOf(extents[along]) ?? (volume === null ? null : volume / area);
  if (size === null) return lengthUnknown(along, 'round', setting);
  const centre = centreOf(extents);
  const axis: Vec3 = [along === 0 ? 1 : 0, along === 1 ? 1 : 0, along === 2 ? 1 : 0];
  const start: Vec3 = [
    centre[0] - (axis[0] * size) / 2,
    centre[1] - (axis[1] * size) / 2,
    centre[2] - (axis[2] * size) / 2,
  ];
  const reach = (i: 0 | 1 | 2) => (i === along ? size / 2 : Math.max(first, last) / 2);
  return {
    form: {
      shape: 'revolved',
      origin: start,
      axis,
      profile: [
        [0, first / 2],
        [size, last / 2],
      ],
    },
    centre,
    from: [centre[0] - reach(0), centre[1] - reach(1), centre[2] - reach(2)],
    to: [centre[0] + reach(0), centre[1] + reach(1), centre[2] + reach(2)],
    measured: lengthOf(extents[along]) !== null,
    solved: lengthOf(extents[along]) === null ? [[AXES[along], size]] : [],
    words: [],
  };
}
