import { isRange } from '../../schema/forms.ts';
import type { PartEntry } from '../../schema/hull.ts';
import type { Pair, Quantity, Range } from '../../schema/quantity.ts';
import type { FindingCode } from '../findings/catalogue/catalogue.ts';
import { boxForm } from '../geometry/box.ts';
import type { Form } from '../geometry/form.ts';
import type { Vec3 } from '../geometry/vector.ts';

/** The keys that place a thing and give its form, as the schema read them. */
export type PlacedEntry = Pick<
  PartEntry,
  'station' | 'offset' | 'height' | 'round' | 'axis' | 'box' | 'ball' | 'profile' | 'volume'
>;

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
}

/** Why a thing could not be placed: the key to point at, and what to say. */
export interface PlacingFault {
  readonly code: FindingCode;
  readonly key: string | null;
  readonly message: string;
}

export type AxisName = 'station' | 'offset' | 'height';
const AXES = ['station', 'offset', 'height'] as const;
const LIES: Readonly<Record<'fore-aft' | 'athwart' | 'vertical', 0 | 1 | 2>> = {
  'fore-aft': 0,
  athwart: 1,
  vertical: 2,
};

/** Sizes that disagree by less than this (relative) are one size: what a tape reads. */
const SAME_SIZE = 0.02;

/**
 * Places an entry. `volume` is what it displaces by mass and density or by dunking, m3, if known; with it the sizes that
 * the entry leaves out follow: one missing is solved, two missing are equal, three make a ball.
 */
export function placeEntry(entry: PlacedEntry, volume: number | null): Placed | PlacingFault {
  const given = (['round', 'box', 'ball', 'profile'] as const).filter(key => entry[key] !== undefined);
  const second = given[1];
  if (second) {
    return {
      code: 'two-forms',
      key: second,
      message: `This has two forms, “${given[0]}” and “${second}”. Keep one of them.`,
    };
  }
  if (entry.profile) return placeProfile(entry, entry.profile);
  const station = entry.station;
  const height = entry.height;
  if (!station || !height) {
    const key = station ? 'height' : 'station';
    const example = key === 'station' ? 'station: 260 to 340 mm' : 'height: 24 mm';
    return { code: 'missing-key', key: null, message: `This needs “${key}”, such as “${example}”.` };
  }
  const extents = [station, entry.offset ?? CENTRELINE, height] as const;
  if (entry.ball) return placeBall(extents, entry.ball.value, true);
  if (entry.round) return placeRound(entry, extents, entry.round, volume);
  return placeBox(entry, extents, volume);
}

const CENTRELINE: Quantity = { value: 0, sigma: null, unit: null };

type Extents = readonly [Quantity | Range, Quantity | Range, Quantity | Range];

export const isFault = (placed: Placed | PlacingFault): placed is PlacingFault => 'message' in placed;

const middle = (extent: Quantity | Range): number => (isRange(extent) ? (extent.from + extent.to) / 2 : extent.value);
const lengthOf = (extent: Quantity | Range): number | null => (isRange(extent) ? extent.to - extent.from : null);
const centreOf = (extents: Extents): Vec3 => [middle(extents[0]), middle(extents[1]), middle(extents[2])];

function placeProfile(entry: PlacedEntry, profile: NonNullable<PlacedEntry['profile']>): Placed | PlacingFault {
  if (!entry.height) {
    return {
      code: 'missing-key',
      key: null,
      message: 'A profile needs the “height” of its axis, such as “height: 46 mm”.',
    };
  }
  const points = profile.map(([station, radius]) => [station.value, radius.value] as const);
  const backward = points.findIndex(([s], i) => i > 0 && s < points[i - 1]![0]);
  if (backward > 0) {
    return {
      code: 'profile-order',
      key: 'profile',
      message: `Stations of a profile run from bow to stern; point ${backward + 1} lies forward of the one before it.`,
    };
  }
  if (points.some(([, r]) => r < 0) || points.every(([, r]) => r === 0)) {
    return {
      code: 'profile-radius',
      key: 'profile',
      message: 'The radii of a profile cannot be negative, nor all nothing.',
    };
  }
  const y = entry.offset ? middle(entry.offset) : 0;
  const z = middle(entry.height);
  const most = Math.max(...points.map(([, r]) => r));
  const first = points[0]![0];
  const last = points.at(-1)![0];
  if (last <= first) {
    return {
      code: 'profile-order',
      key: 'profile',
      message: 'A profile needs length: its last station must lie aft of its first.',
    };
  }
  return {
    form: { shape: 'revolved', origin: [0, y, z], axis: [1, 0, 0], profile: points },
    centre: [(first + last) / 2, y, z],
    from: [first, y - most, z - most],
    to: [last, y + most, z + most],
    measured: true,
    solved: [],
  };
}

function placeBall(extents: Extents, diameter: number, measured: boolean): Placed {
  const centre = centreOf(extents);
  const r = diameter / 2;
  return {
    form: { shape: 'ball', centre, radius: r },
    centre,
    from: [centre[0] - r, centre[1] - r, centre[2] - r],
    to: [centre[0] + r, centre[1] + r, centre[2] + r],
    measured,
    solved: [],
  };
}

function placeRound(
  entry: PlacedEntry,
  extents: Extents,
  { first, second: last }: Pair,
  volume: number | null,
): Placed | PlacingFault {
  const along = LIES[entry.axis ?? 'fore-aft'];
  for (const i of [0, 1, 2] as const) {
    const size = lengthOf(extents[i]);
    if (i === along || size === null || Math.abs(size - Math.max(first, last)) <= SAME_SIZE * size) continue;
    return {
      code: 'size-twice',
      key: AXES[i],
      message: `A round is as broad and deep as its diameter; give one figure for the “${AXES[i]}” of its axis, not a range.`,
    };
  }
  const area = (Math.PI / 12) * (first * first + first * last + last * last);
  const size = lengthOf(extents[along]) ?? (volume === null ? null : volume / area);
  if (size === null) return lengthUnknown(along, 'round');
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
  };
}

function placeBox(entry: PlacedEntry, extents: Extents, volume: number | null): Placed | PlacingFault {
  const sizes: (number | null)[] = extents.map(lengthOf);
  if (entry.box) {
    const along = LIES[entry.axis ?? 'fore-aft'];
    const across = ([0, 1, 2] as const).filter(i => i !== along);
    for (const [k, i] of across.entries()) {
      const wanted = k === 0 ? entry.box.first : entry.box.second;
      const given = sizes[i] ?? null;
      if (given !== null && Math.abs(given - wanted) > SAME_SIZE * wanted) {
        return {
          code: 'size-twice',
          key: AXES[i],
          message: `The box already gives this size; give one figure for the middle of its “${AXES[i]}”, not a range.`,
        };
      }
      sizes[i] = wanted;
    }
    if (sizes[along] === null && volume === null) return lengthUnknown(along, 'box');
  }
  const missing = ([0, 1, 2] as const).filter(i => sizes[i] === null);
  const solved: (readonly [AxisName, number])[] = [];
  if (missing.length > 0 && volume !== null) {
    if (missing.length === 3) return placeBall(extents, Math.cbrt((6 * volume) / Math.PI), false);
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
  return { form: whole ? boxForm(from, to) : null, centre, from, to, measured: missing.length === 0, solved };
}

const EXAMPLES = { station: '200 to 680 mm', offset: '-20 to 20 mm', height: '12 to 60 mm' } as const;

function lengthUnknown(along: 0 | 1 | 2, form: string): PlacingFault {
  const axis = AXES[along];
  return {
    code: 'length-unknown',
    key: axis,
    message: `How long this ${form} is cannot be told. Give a range, such as “${axis}: ${EXAMPLES[axis]}”, or its mass and material.`,
  };
}
