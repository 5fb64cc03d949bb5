import type { Boat, Tank } from '../../boat/boat.ts';
import { prismLength } from '../../conditions/tankSizing.ts';
import { boundsOf } from '../../geometry/cut/solids.ts';
import { movedForm, stretchedForm } from '../../geometry/form/moved.ts';
import { wantedOf } from '../../planning/wanted.ts';
import type { Steps } from '../../steps/steps.ts';
import { tapeStep, tapeText } from '../../wording/numbers.ts';
import { stationTape } from '../../wording/places.ts';
import type { BoatToTrim } from '../room/boatToTrim.ts';
import { keepsWith } from './besides.ts';

/** Where a tank begins and ends, m. */
interface Ends {
  readonly from: number;
  readonly to: number;
}

/**
 * What would do it if the tanks were longer or shorter, or lay elsewhere along their compartments. Floated by the full model;
 * null where neither would, and for tanks whose capacity does not go with their length.
 */
export function* tankAdvice(boatToTrim: BoatToTrim): Steps<string | null> {
  const { boat } = boatToTrim;
  const canChange = boat.tanks.every(tank => tank.copies === 1 && !tank.byJug && prismLength(tank.form) !== null);
  if (boat.tanks.length === 0 || !canChange) return null;
  for (const ends of waysToTry(boatToTrim)) {
    const changed = withEnds(boat, ends);
    const besides = changed && (yield* keepsWith(boatToTrim, changed));
    if (besides) return `With ${boat.tanks.map((tank, i) => wordsOf(tank, ends[i]!, boat)).join(' and ')}${besides}.`;
  }
  return null;
}

/** As long as the dive asks, where the dive asks for the water, and both; to marks of the tape. */
function waysToTry({ boat, bodies }: BoatToTrim): readonly (readonly Ends[])[] {
  const wanted = wantedOf(boat, bodies);
  if (!wanted || wanted.tank.held <= 0) return [];
  const times = wanted.tank.capacity / wanted.tank.held;
  const capacity = boat.tanks.reduce((sum, tank) => sum + tank.capacity, 0);
  const middle = boat.tanks.reduce((sum, tank) => sum + (tank.capacity * middleOf(tank)) / capacity, 0);
  const along = (wanted.tank.centre?.[0] ?? middle) - middle;
  const step = tapeStep(boat.units);
  const way = (longer: number, by: number): readonly Ends[] =>
    boat.tanks.map(tank => {
      const { from, to } = boundsOf(tank.form);
      const long = to[0] - from[0];
      const size = longer === 1 ? long : Math.max(step, Math.round((long * longer) / step) * step);
      const start = Math.round((middleOf(tank) + by - size / 2) / step) * step;
      return { from: start, to: start + size };
    });
  return [way(times, 0), way(1, along), way(times, along)];
}

const middleOf = ({ form }: Tank): number => (boundsOf(form).from[0] + boundsOf(form).to[0]) / 2;

/** Null where they do not go into their compartments so, or reach into each other. */
function withEnds(boat: Boat, ends: readonly Ends[]): Boat | null {
  const tanks = boat.tanks.map((tank, i) => withOne(tank, ends[i]!, boat));
  const lie = [...ends].sort((a, b) => a.from - b.from);
  const meets = lie.some(({ from }, i) => i > 0 && from < lie[i - 1]!.to && areInLine(boat.tanks));
  return meets || tanks.some(tank => tank === null) ? null : { ...boat, tanks: tanks as readonly Tank[] };
}

/** They lie one behind the other, as they are. */
function areInLine(tanks: readonly Tank[]): boolean {
  const lie = tanks.map(({ form }) => boundsOf(form)).sort((a, b) => a.from[0] - b.from[0]);
  return lie.every(({ from }, i) => i === 0 || from[0] >= lie[i - 1]!.to[0]);
}

function withOne(tank: Tank, { from, to }: Ends, { compartments }: Boat): Tank | null {
  const home = compartments.find(({ name }) => name === tank.inside);
  const room = home && boundsOf(home.form);
  if (room && (from < room.from[0] || to > room.to[0])) return null;
  const now = boundsOf(tank.form);
  const times = (to - from) / (now.to[0] - now.from[0]);
  const stretched = stretchedForm(tank.form, times);
  if (!stretched) return null;
  const form = movedForm(stretched, [from - boundsOf(stretched).from[0], 0, 0]);
  return { ...tank, form, capacity: tank.capacity * times };
}

/** "“main tank” 96 mm long instead of 72 mm, from 301 mm to 397 mm". */
function wordsOf(tank: Tank, { from, to }: Ends, { units }: Boat): string {
  const was = boundsOf(tank.form);
  const [long, before] = [tapeText(to - from, units), tapeText(was.to[0] - was.from[0], units)];
  const size = long === before ? '' : ` ${long} long instead of ${before},`;
  return `“${tank.name}”${size} from ${stationTape(from, units)} to ${stationTape(to, units)}`;
}
