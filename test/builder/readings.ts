import type { Boat } from '../../server/core/boat/boat.ts';
import type { EntryText } from '../../server/core/findings/finding.ts';
import type { Seeded } from '../helpers/seeded.ts';
import { type Floated, waterAt } from './figures.ts';

/* What the builder reads off the true boat, as trials of the file. */

const MARK = 1e-3;
const ANGLE = Math.PI / 360;
const FILL = 0.03;
const SCALES = 1e-3;

/** Past this a boat is not read, it is fished out, rad. */
const READABLE = Math.PI / 6;

const mm = (metres: number) => `${(metres * 1e3).toFixed(1)} mm`;
const degrees = (angle: number) => `${((angle * 180) / Math.PI).toFixed(1)}°`;

/** The trials of one day in the water: none where it sinks, falls over or cannot dive. */
export function readInWater({ afloat, hanging }: Floated, boat: Boat, day: number, random: Seeded): EntryText[] {
  const date = `2026-05-${String(day).padStart(2, '0')}`;
  const read = (value: number, sigma: number) => value + sigma * random.normal();
  const entries: EntryText[] = [];
  if (afloat && Math.hypot(afloat.trim, afloat.heel) < READABLE) {
    const mark = (part: number) => {
      const station = Math.round(part * boat.length * 1e3) * 1e-3;
      const height = read(waterAt(afloat, station, boat.length), MARK);
      return `{ station: ${mm(station)}, height: ${mm(height)} ± 1 mm }`;
    };
    entries.push({
      fields: [
        ['date', `${date} surfaced`],
        ['condition', 'surfaced'],
        ['marks', `[${mark(0.1)}, ${mark(0.9)}]`],
        ['heel', `${degrees(read(afloat.heel, ANGLE))} ± 0.5°`],
      ],
    });
  }
  if (hanging) {
    const fill = `${(read(hanging.fill, FILL) * 100).toFixed(0)} % ± 3 %`;
    const lies = Math.hypot(hanging.trim, hanging.heel) < READABLE;
    const angles: EntryText['fields'] = lies
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

/** The whole boat, tanks empty, on two kitchen scales. */
export function weighOnScales(boat: Boat, random: Seeded): EntryText {
  const weights = [...boat.shells, ...boat.compartments, ...boat.payload];
  const mass = weights.reduce((sum, weight) => sum + weight.mass, 0);
  const moment = weights.reduce((sum, weight) => sum + weight.mass * weight.centroid[0], 0);
  const [fore, aft] = [0.25, 0.75].map(part => Math.round(part * boat.length * 1e3) * 1e-3) as [number, number];
  const onAft = (moment - mass * fore) / (aft - fore);
  const scale = (station: number, load: number) =>
    `{ station: ${mm(station)}, reads: ${((load + SCALES * random.normal()) * 1e3).toFixed(0)} g ± 1 g }`;
  return {
    fields: [
      ['date', '2026-04-30 bench'],
      ['condition', 'bench'],
      ['scales', `[${scale(fore, mass - onAft)}, ${scale(aft, onAft)}]`],
    ],
  };
}
