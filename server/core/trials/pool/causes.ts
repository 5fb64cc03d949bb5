import { type Path, pathKey } from '../../../../schema/path.ts';
import { AXES, type AxisName } from '../../boat/placed.ts';
import type { BoatSource } from '../../boat/source.ts';
import type { Reading } from '../../boat/trial.ts';
import type { Bounds } from '../../geometry/cut/solids.ts';
import { pacer, type Steps } from '../../steps/steps.ts';
import type { SupposedThing } from '../estimation/hypothesis.ts';
import { BELIEVED } from './beliefs.ts';
import type { DayInput } from './day.ts';
import { displacingOf } from './displacing.ts';
import type { Foretold, ReadingOf } from './foretold.ts';
import { depthOf, type HidingRoom, hullBounds, partOf, roomOf } from './room.ts';
import { sigmaOf } from './straight.ts';
import type { TrialSet } from './trialSet.ts';
import { anything, bareWeight, basisByPlace, basisOf, type Felt, floatingWeight, sinkingWeight } from './weights.ts';

/** What may be wrong. */
export type Cause =
  /** A reading is a slip of the tape or of the pen. */
  | { readonly kind: 'slip'; readonly of: ReadingOf }
  /** A part lies elsewhere along an axis. */
  | { readonly kind: 'elsewhere'; readonly input: DayInput; readonly axis: AxisName }
  /** A thing displaces more or less than written, its sizes all in proportion, or what it is made of lighter or heavier. */
  | { readonly kind: 'displaces'; readonly what: string; readonly path: Path }
  /** Something is not written down: dry in a compartment, or out in the water. */
  | { readonly kind: 'unlisted'; readonly inside: string | null }
  /** A shell's wall has taken up water, or it holds some above the surface. */
  | { readonly kind: 'soaked' | 'held'; readonly shell: string }
  /** More than any two of these. */
  | { readonly kind: 'several' };

/** The same for causes that say the same, whatever they come to. */
export const causesKey = (causes: readonly Cause[]): string => causes.map(keyOf).sort().join(' and ');

function keyOf(cause: Cause): string {
  switch (cause.kind) {
    case 'slip':
      return `${cause.kind} ${pathKey(cause.of.reading.path)}`;
    case 'elsewhere':
      return cause.input.id;
    case 'displaces':
      return `${cause.kind} ${pathKey(cause.path)}`;
    case 'unlisted':
      return cause.inside === null ? 'wet' : `dry ${cause.inside}`;
    case 'several':
      return cause.kind;
    default:
      return `${cause.kind} ${cause.shell}`;
  }
}

/** A cause that is one number, standard normal beforehand, and what one of it does to the readings. */
export interface Item {
  readonly cause: Extract<Cause, { kind: 'slip' | 'elsewhere' | 'displaces' }>;
  readonly logOdds: number;
  readonly column: readonly number[];
  /** What one of it is: of the reading, m of the place, part of what is displaced. */
  readonly size: number;
  /** What one of it does to inputs, SI. */
  readonly shifts: readonly Shift[];
}

interface Shift {
  readonly input: DayInput;
  readonly by: number;
}

/** A cause that is a weight, felt as loads. */
export interface Load {
  readonly cause: Exclude<Cause, { kind: 'slip' | 'elsewhere' | 'displaces' }>;
  readonly logOdds: number;
  readonly things: readonly SupposedThing[];
}

const logOddsOf = (chance: number): number => Math.log(chance / (1 - chance));

/** How far off a slip may be, SI. */
function slipSize({ of, value }: Reading, capacity: number): number {
  const { length, angle, fraction } = BELIEVED.slip;
  if (of === 'trim' || of === 'heel' || of === 'tilt') return angle;
  if (of === 'fill') return fraction;
  if (of === 'scale' || of === 'hook') return fraction * Math.abs(value);
  return of === 'water' ? fraction * capacity : length;
}

/** Figures of causes that are made in one step. */
const STEP = 5000;

/** Slips, parts that lie elsewhere, and things that displace more or less than written. */
export function* itemsOf(trialSet: TrialSet, foretold: Foretold): Steps<readonly Item[]> {
  const { source } = trialSet;
  const { readings, inputs, slopes } = foretold;
  const capacity = source.boat.tanks.reduce((sum, tank) => sum + tank.capacity, 0);
  const slips = readings.map((of, i): Item => {
    const size = slipSize(of.reading, capacity);
    return {
      cause: { kind: 'slip', of },
      logOdds: logOddsOf(BELIEVED.slip.chance),
      column: readings.map((_, k) => (k === i ? size : 0)),
      size,
      shifts: [],
    };
  });
  const parts: Item[] = [];
  const hull = hullBounds(source);
  const isDue = pacer(STEP);
  for (const [k, input] of inputs.entries()) {
    if (isDue(slopes.length)) yield;
    const size = hull && strayOf(source, hull, input);
    const axis = AXES.find(name => name === input.noun);
    if (size === null || !axis || size <= input.sigma) continue;
    parts.push({
      cause: { kind: 'elsewhere', input, axis },
      logOdds: logOddsOf(BELIEVED.elsewhere.chance[AXES.indexOf(axis)]!),
      column: slopes.map(row => (row[k]! * size) / input.sigma),
      size,
      shifts: [{ input, by: size }],
    });
  }
  return [...slips, ...parts, ...(yield* volumesOf(trialSet, foretold))];
}

/** What displaces more or less than written, of which the readings tell. */
function* volumesOf({ source, inputs: filed, variations }: TrialSet, foretold: Foretold): Steps<readonly Item[]> {
  const { readings, inputs, slopes } = foretold;
  const { chance, compartment, other } = BELIEVED.displaces;
  const places = new Map(inputs.map(({ id }, k) => [id, k]));
  const sigmas = readings.map(({ reading, trial }) => sigmaOf(reading, trial));
  yield;
  const items: Item[] = [];
  const isDue = pacer(STEP);
  for (const { what, path, isCompartment, open, doubled } of yield* displacingOf(source, filed, variations)) {
    if (isDue(slopes.length * doubled.length)) yield;
    const size = isCompartment ? compartment : other;
    if (open >= size) continue;
    const shifts = doubled.map(({ input, by }): Shift => ({ input, by: size * by }));
    const column = slopes.map(row =>
      shifts.reduce((sum, { input, by }) => sum + (row[places.get(input.id) ?? -1] ?? 0) * (by / input.sigma), 0),
    );
    if (column.some((change, i) => Math.abs(change) > TELLING * sigmas[i]!))
      items.push({ cause: { kind: 'displaces', what, path }, logOdds: logOddsOf(chance), column, size, shifts });
  }
  return items;
}

/** Less than this of its uncertainty a reading tells nothing. */
const TELLING = 0.5;

/** How far a part may have strayed by one standard deviation, m; null for what is no place of a part. */
function strayOf(source: BoatSource, hull: Bounds, { target, noun }: DayInput): number | null {
  const [at, ...others] = target.on === 'entries' ? target.at : [];
  const axis = AXES.indexOf(noun as AxisName);
  if (!at || others.length > 0 || at.list !== 'payload' || axis < 0) return null;
  const part = source.payload[at.index]?.entry;
  if (!part) return null;
  const home = source.boat.compartments.find(({ name }) => name === part.inside);
  const room = home ? source.around.shapes.boundsOf(home.form) : hull;
  const { along, byLength, across } = BELIEVED.elsewhere;
  const free = Math.max(0, room.to[axis]! - room.from[axis]! - (part.to[axis]! - part.from[axis]!));
  return axis === 0 ? Math.min(along, byLength * source.boat.length, free / Math.sqrt(12)) : across * free;
}

/** Weights that are not written down. Of what is felt where nothing was read, the readings tell nothing. */
export function loadsOf(source: BoatSource, { readings, waterline: afloat }: Foretold): readonly Load[] {
  const hull = hullBounds(source);
  if (!hull) return [];
  const { boat, around } = source;
  const waterline = afloat ?? (hull.from[2] + hull.to[2]) / 2;
  const mass = [...boat.shells, ...boat.compartments, ...boat.payload].reduce((sum, entry) => sum + entry.mass, 0);
  const { unlisted, water, several } = BELIEVED;
  const load = (cause: Load['cause'], chance: number, things: readonly SupposedThing[]): Load => ({
    cause,
    logOdds: logOddsOf(chance),
    things,
  });
  const bare = (room: HidingRoom, felt: Felt, isEven = true): SupposedThing => ({
    logShare: 0,
    basis: basisOf(room, felt),
    pieces: bareWeight(mass, { room, felt, isEven }),
  });
  const dry = boat.compartments.map(({ name, form }) =>
    load({ kind: 'unlisted', inside: name }, unlisted.dry / boat.compartments.length, [
      bare(roomOf(around.shapes.boundsOf(form)), ['whole', 'whole', 'whole']),
    ]),
  );
  const wet = (weight: typeof sinkingWeight) =>
    (['below', 'above'] as const).flatMap((side): readonly SupposedThing[] => {
      const bounds = partOf(hull, waterline, side);
      if (!bounds) return [];
      const room = roomOf(bounds);
      const felt: Felt = [side === 'below' ? 'in water' : 'whole', 'in water', 'whole'];
      return [
        {
          logShare: Math.log(depthOf(bounds) / depthOf(hull)),
          basis: basisOf(room, felt),
          pieces: weight(mass, boat.water.density, { room, felt, isEven: true }),
        },
      ];
    });
  const wasReadAfloat = readings.some(({ place }) => place === 'afloat');
  const ofShells = boat.shells.flatMap(({ name, form, centroid }): readonly Load[] => {
    const bounds = around.shapes.boundsOf(form);
    const [x, y, z] = roomOf(bounds).spread;
    const wall: HidingRoom = { middle: centroid, spread: [water.spread * x, water.spread * y, water.spread * z] };
    const soaked = load({ kind: 'soaked', shell: name }, water.soaked, [
      bare(wall, ['whole', 'whole', 'whole'], false),
    ]);
    const above = partOf(bounds, waterline, 'above');
    if (!above || !wasReadAfloat) return [soaked];
    return [
      soaked,
      load({ kind: 'held', shell: name }, water.held, [bare(roomOf(above), ['whole', 'nothing', 'nothing'])]),
    ];
  });
  const anywhere: SupposedThing = { logShare: 0, basis: basisByPlace(roomOf(hull)), pieces: [anything(mass)] };
  return [
    ...dry,
    load({ kind: 'unlisted', inside: null }, unlisted.sinking, wet(sinkingWeight)),
    load({ kind: 'unlisted', inside: null }, unlisted.floating, wet(floatingWeight)),
    ...ofShells,
    load({ kind: 'several' }, several.chance, [anywhere]),
  ];
}
