import type { Boat } from '../../server/core/boat/boat.ts';
import type { EntryText } from '../../server/core/findings/finding.ts';
import type { Seeded } from '../helpers/seeded.ts';
import { type Afloat, type Floated, type Hanging, waterAt } from './figures.ts';

/* What the builder reads off the true boat, as trials of the file. */

const MARK = 1e-3;
const ANGLE = Math.PI / 360;
const FILL = 0.03;
const SCALES = 1e-3;

/** What a reading shows, SI, and how well it can be read. */
export interface Shown {
  readonly value: number;
  readonly sigma: number;
}

/** Where the water is read, parts of the length. */
const MARKS = [0.1, 0.9] as const;

const markAt = (part: number, length: number): number => Math.round(part * length * 1e3) * 1e-3;

/** What can be read off a boat on the surface without an error. */
export const shownAfloat = (afloat: Afloat, length: number): readonly Shown[] => [
  ...MARKS.map(part => ({ value: waterAt(afloat, markAt(part, length), length), sigma: MARK })),
  { value: afloat.heel, sigma: ANGLE },
];

/** The same under water; past what can be read nothing but the fill. */
export const shownHanging = (hanging: Hanging): readonly Shown[] => [
  { value: hanging.fill, sigma: FILL },
  ...(canBeRead(hanging) ? [hanging.trim, hanging.heel].map(value => ({ value, sigma: ANGLE })) : []),
];

/** Past this a boat is not read, it is fished out, rad. */
const READABLE = Math.PI / 6;

const canBeRead = ({ trim, heel }: Pick<Hanging, 'trim' | 'heel'>): boolean => Math.hypot(trim, heel) < READABLE;

const mm = (metres: number) => `${(metres * 1e3).toFixed(1)} mm`;
const degrees = (angle: number) => `${((angle * 180) / Math.PI).toFixed(1)}°`;

/** The trials of one day in the water: none where it sinks, falls over or cannot dive. */
export function readInWater({ afloat, hanging }: Floated, boat: Boat, day: number, random: Seeded): EntryText[] {
  const date = `2026-05-${String(day).padStart(2, '0')}`;
  const read = (value: number, sigma: number) => value + sigma * random.normal();
  const entries: EntryText[] = [];
  if (afloat && canBeRead(afloat)) {
    const mark = (part: number) => {
      const station = markAt(part, boat.length);
      const height = read(waterAt(afloat, station, boat.length), MARK);
      return `{ station: ${mm(station)}, height: ${mm(height)} ± 1 mm }`;
    };
    entries.push({
      fields: [
        ['date', `${date} surfaced`],
        ['condition', 'surfaced'],
        ['marks', `[${MARKS.map(mark).join(', ')}]`],
        ['heel', `${degrees(read(afloat.heel, ANGLE))} ± 0.5°`],
      ],
    });
  }
  if (hanging) {
    const fill = `${(read(hanging.fill, FILL) * 100).toFixed(0)} % ± 3 %`;
    const angles: EntryText['fields'] = canBeRead(hanging)
      ? [
          ['trim', `${degrees(read(hanging.trim, ANGLE))} ± 0.5°`],
          ['heel', `${degrees(read(hanging.heel, ANGLE))} ± 0.5°`],
        ]
      : [];
    entries.push({
      fields: [['date', `${date} submerged`], ['condition', 'submerged'], ['fill', fill], ...angles],
    });
  }
  return entries;
}

/** Where the scales stand, parts of the length. */
const SUPPORTS = [0.25, 0.75] as const;

/** What two kitchen scales show of the whole boat, its tanks empty: forward and aft. */
export function shownOnScales(boat: Boat): readonly Shown[] {
  const weights = [...boat.shells, ...boat.compartments, ...boat.payload];
  const mass = weights.reduce((sum, weight) => sum + weight.mass, 0);
  const moment = weights.reduce((sum, weight) => sum + weight.mass * weight.centroid[0], 0);
  const [fore, aft] = SUPPORTS.map(part => markAt(part, boat.length)) as [number, number];
  const onAft = (moment - mass * fore) / (aft - fore);
  return [mass - onAft, onAft].map(value => ({ value, sigma: SCALES }));
}

/** The same read off, as a trial of the file. */
export function weighOnScales(boat: Boat, random: Seeded): EntryText {
  const scales = shownOnScales(boat).map(({ value, sigma }, i) => {
    const reads = `${((value + sigma * random.normal()) * 1e3).toFixed(0)} g ± 1 g`;
    return `{ station: ${mm(markAt(SUPPORTS[i]!, boat.length))}, reads: ${reads} }`;
  });
  return {
    fields: [
      ['date', '2026-04-30 bench'],
      ['condition', 'bench'],
      ['scales', `[${scales.join(', ')}]`],
    ],
  };
}
