import { type BoatSource, entriesIn } from '../../boat/source.ts';
import type { Trial } from '../../boat/trial.ts';
import { tankBody } from '../../bodies/tankWater.ts';
import { editOf, plain } from '../../uncertainty/edits.ts';
import type { Input } from '../../uncertainty/input.ts';
import { fillsRead } from './dayBoat.ts';

/** The tanks as they were on the day of a trial, by what was read to be in them. */
export interface DayTanks {
  readonly tanks: BoatSource['tanks'];
  /** The uncertainty of that reading; null where it has none. */
  readonly input: Input | null;
}

/**
 * Null where they were as the file has them; and for water from a measuring jug, which is so much whatever the tank holds.
 * The uncertainty of one reading is one for all tanks that it tells of.
 */
export function dayTanks({ tanks, around }: BoatSource, { left, path, name }: Trial): DayTanks | null {
  if (!left || left.of === 'water' || tanks.length === 0) return null;
  const bodies = entriesIn(tanks).map(tank => tankBody(tank, around.shapes.solidOf(tank.form)));
  const fills = fillsRead(left, bodies);
  const at = (more: number) => fillsRead({ ...left, value: left.value + more }, bodies);
  const told = fills.flatMap((_, index) => (at(STEP)[index] === at(-STEP)[index] ? [] : [index]));
  const [first = 0] = told;
  const sigma = (left.sigma * Math.abs(at(STEP)[first]! - at(-STEP)[first]!)) / (2 * STEP);
  const input: Input = {
    id: `left of ${path.join(' ')}`,
    path: left.path,
    places: [left.path],
    entry: path,
    entryName: name,
    noun: 'fill',
    words: `fill of the tanks in the trial of ${name}`,
    value: fills[first]!,
    sigma,
    dimension: 'fraction',
    origin: 'measured',
    target: { on: 'entries', at: told.map(index => ({ list: 'tanks', index })), edit: editOf('fill') },
  };
  return {
    tanks: tanks.map(({ checked, entry }, i) => ({
      checked: { ...checked, fill: plain(fills[i]!) },
      entry: { ...entry, fill: fills[i]! },
    })),
    input: sigma > 0 && told.length > 0 ? input : null,
  };
}

/** A small step of a reading, SI: enough to tell its slope. */
const STEP = 1e-6;
