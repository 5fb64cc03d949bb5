import type { Boat } from '../boat/boat.ts';
import { emptyCache, type Pieces, pieceSteps } from '../bodies/assemble.ts';
import type { Cuttable } from '../geometry/cut/immersion.ts';
import { add, addScaled, subtract, type Vec3 } from '../geometry/form/vector.ts';
import type { Shapes } from '../geometry/shapes/shapes.ts';
import type { Steps } from '../steps/steps.ts';
import type { ListName } from './input.ts';

/** Entries of any list, one or several. */
export type Entries = Pick<Boat, ListName>;

/** Some bodies in the place of others, and what is more of them however the boat lies. */
export interface Exchange {
  readonly was: Wet;
  readonly is: Wet;
  readonly weight: MassAndMoment;
  /** m3, m4. */
  readonly displaced: Whole;
}

/** What displaces, and what holds water. */
type Wet = Pick<Pieces, 'displacers' | 'tanks'>;

type Whole = Pick<Cuttable, 'volume' | 'moment'>;

export interface MassAndMoment {
  /** kg. */
  readonly mass: number;
  /** About the origin, kg·m. */
  readonly moment: Vec3;
}

export function exchange(was: Wet, is: Wet): Omit<Exchange, 'weight'> {
  const [one, other] = [wholeOf(was), wholeOf(is)];
  return {
    was,
    is,
    displaced: { volume: other.volume - one.volume, moment: subtract(other.moment, one.moment) },
  };
}

const NOTHING_WET: Wet = { displacers: [], tanks: [] };

/** Nothing is another. */
export const NO_EXCHANGE: Exchange = {
  was: NOTHING_WET,
  is: NOTHING_WET,
  weight: { mass: 0, moment: [0, 0, 0] },
  displaced: { volume: 0, moment: [0, 0, 0] },
};

/** All of them at once. */
export function joinedExchange(exchanges: readonly Exchange[]): Exchange {
  if (exchanges.length === 1) return exchanges[0]!;
  const all = (side: 'was' | 'is'): Wet => ({
    displacers: exchanges.flatMap(each => each[side].displacers),
    tanks: exchanges.flatMap(each => each[side].tanks),
  });
  const sum = (of: (each: Exchange) => Vec3) =>
    exchanges.reduce<Vec3>((total, each) => add(total, of(each)), [0, 0, 0]);
  return {
    was: all('was'),
    is: all('is'),
    weight: {
      mass: exchanges.reduce((total, { weight }) => total + weight.mass, 0),
      moment: sum(({ weight }) => weight.moment),
    },
    displaced: {
      volume: exchanges.reduce((total, { displaced }) => total + displaced.volume, 0),
      moment: sum(({ displaced }) => displaced.moment),
    },
  };
}

export function* wetSteps(entries: Entries, shapes: Shapes): Steps<Wet> {
  const { displacers, tanks } = yield* pieceSteps(entries, { ...emptyCache(), shapes });
  return { displacers, tanks };
}

export const heavier = (before: Entries, after: Entries): MassAndMoment => {
  const [one, other] = [weightOf(before), weightOf(after)];
  return { mass: other.mass - one.mass, moment: subtract(other.moment, one.moment) };
};

const wholeOf = ({ displacers }: Wet): Whole => ({
  volume: displacers.reduce((sum, { body }) => sum + body.volume, 0),
  moment: displacers.reduce<Vec3>((sum, { body }) => add(sum, body.moment), [0, 0, 0]),
});

export function weightOf({ shells, compartments, payload }: Entries): MassAndMoment {
  const weights = [...shells, ...compartments, ...payload];
  return {
    mass: weights.reduce((sum, { mass }) => sum + mass, 0),
    moment: weights.reduce<Vec3>((sum, { mass, centroid }) => addScaled(sum, centroid, mass), [0, 0, 0]),
  };
}
