import type { PartEntry } from '../../schema/hull.ts';
import { pathKey } from '../../schema/path.ts';
import type { Quantity } from '../../schema/quantity.ts';
import { freeName } from '../boat/arrangement.ts';
import { readPart } from '../boat/readPart.ts';
import type { BoatSource } from '../boat/source.ts';
import type { Input } from '../doubt/input.ts';
import { inputsOf } from '../doubt/inputs.ts';
import type { DayInput } from './day.ts';

/** What it is called when it is put into the file. */
const NAME = 'unlisted weight';

/** Where the entry that nobody wrote stands while it is only supposed. */
const PLACE = ['unlisted'];

/**
 * What is believed beforehand of the mass that nobody wrote down (common practice, no source). Its mass: none, give or take
 * a twentieth of the boat's. Its place: the middle of the hull, give or take a quarter of the length, breadth and depth.
 * What it pushes aside: water of a two-hundredth of the boat's mass, give or take half of that, for whatever is forgotten
 * (glue, wire, paint, a trapped bubble) takes up some room. Broad enough to let the readings speak, narrow enough to keep it
 * on board.
 */
export const UNLISTED = { mass: 0.05, volume: 0.005, place: 0.25 } as const;

/** Pushes aside at least this share of what is believed, so that it stays a thing with a form. */
const LEAST_VOLUME = 0.01;

export type HiddenKey = 'mass' | 'volume' | 'station' | 'offset' | 'height';

/** What is believed of each of its figures beforehand, SI; null for a boat of no size. */
export function believedOf({ boat, around }: BoatSource): Readonly<Record<HiddenKey, Quantity>> | null {
  const hull = [...boat.shells, ...boat.compartments].map(({ form }) => around.shapes.boundsOf(form));
  if (hull.length === 0) return null;
  const mass = [...boat.shells, ...boat.compartments, ...boat.payload].reduce((sum, entry) => sum + entry.mass, 0);
  const place = (axis: 0 | 1 | 2): Quantity => {
    const least = Math.min(...hull.map(({ from }) => from[axis]));
    const most = Math.max(...hull.map(({ to }) => to[axis]));
    return { value: (least + most) / 2, sigma: UNLISTED.place * (most - least), unit: null };
  };
  const volume = (UNLISTED.volume * mass) / boat.water.density;
  return {
    mass: { value: 0, sigma: UNLISTED.mass * mass, unit: null },
    volume: { value: volume, sigma: volume / 2, unit: null },
    station: place(0),
    offset: place(1),
    height: place(2),
  };
}

/** The supposed entry: its mass, volume and place are inputs with those broad doubts, like those of any other entry. */
export interface Hidden {
  readonly source: BoatSource;
  readonly entry: PartEntry;
  readonly inputs: readonly DayInput[];
  /** The least volume that it may have, m3: what is pushed aside is never less than nothing. */
  readonly leastVolume: number;
}

/** The boat with an entry for what nobody wrote down, last in the payload. Null for a boat of no size. */
export function withHidden(source: BoatSource): Hidden | null {
  const { boat, around } = source;
  const believed = believedOf(source);
  if (!believed) return null;
  const taken = [...boat.shells, ...boat.compartments, ...boat.tanks, ...boat.payload, ...boat.ashore];
  const entry: PartEntry = { name: freeName(NAME, taken), ...believed };
  const part = readPart(entry, PLACE, around, []);
  if (!part) return null;
  const alone = inputsOf({
    ...source,
    shells: [],
    compartments: [],
    tanks: [],
    payload: [{ checked: entry, entry: part }],
  });
  return {
    entry,
    inputs: alone.flatMap(input => atEnd(input, source.payload.length)),
    source: {
      ...source,
      boat: { ...boat, payload: [...boat.payload, part] },
      payload: [...source.payload, { checked: entry, entry: part }],
    },
    leastVolume: LEAST_VOLUME * believed.volume.value,
  };
}

/** An input of the only entry, for the same entry behind all others. */
function atEnd(input: Input, index: number): readonly DayInput[] {
  const { target } = input;
  return target.on === 'water'
    ? []
    : [{ ...input, target: { ...target, at: [{ list: 'payload', index }] }, isBroad: true }];
}

/** The id of one of its inputs, as for any entry at its place. */
export const hiddenId = (key: HiddenKey): string => pathKey([...PLACE, key]);
