import type { PriorPiece } from '../estimation/hypothesis.ts';
import { scaleLike } from '../estimation/scale.ts';
import { BELIEVED } from './beliefs.ts';
import type { HidingRoom } from './room.ts';

/** What is told of a weight, in this order: kg, m3, and its place, m. */
export const FACTS = ['mass', 'volume', 'station', 'offset', 'height'] as const;
export type Fact = (typeof FACTS)[number];

/** What of the weight is felt afloat, under water and ashore: all of it, what it weighs in water, or nothing. */
export type Felt = readonly [How, How, How];
type How = 'whole' | 'in water' | 'nothing';

interface Supposition {
  readonly room: HidingRoom;
  /** Each place in the room is as likely as any other; else the nearer to its middle the likelier. */
  readonly isEven: boolean;
  readonly felt: Felt;
}

const RATIO = { mass: 1.35, volume: 1.9 } as const;

/** A weight without a volume of its own: the boat's displacement is as before. */
export function bareWeight(boatMass: number, supposition: Supposition): readonly PriorPiece[] {
  const masses = massesOf(boatMass);
  const logShare = -Math.log(masses.length);
  return masses.map(mass => pieceOf({ mass, volume: null, density: 0 }, supposition, logShare));
}

/** A weight out in the water that sinks there, of any density down to lead's. */
export function sinkingWeight(boatMass: number, density: number, supposition: Supposition): readonly PriorPiece[] {
  const [, heaviest] = BELIEVED.unlisted.density;
  const masses = massesOf(boatMass);
  return masses.flatMap(mass => {
    const volumes = scaleLike(mass.middle / heaviest, mass.middle / density, RATIO.volume);
    const logShare = -Math.log(masses.length * volumes.length);
    return volumes.map(volume => pieceOf({ mass, volume, density }, supposition, logShare));
  });
}

/** One that floats, of any density from foam's up. */
export function floatingWeight(boatMass: number, density: number, supposition: Supposition): readonly PriorPiece[] {
  const { density: densities, displaced } = BELIEVED.unlisted;
  const [least, most] = displaced.map(part => (part * boatMass) / density) as [number, number];
  const volumes = scaleLike(least, most, RATIO.volume);
  return volumes.flatMap(volume => {
    const masses = scaleLike(densities[0] * volume.middle, density * volume.middle, RATIO.volume);
    const logShare = -Math.log(masses.length * volumes.length);
    return masses.map(mass => pieceOf({ mass, volume, density }, supposition, logShare));
  });
}

const massesOf = (boatMass: number) => {
  const [least, most] = BELIEVED.unlisted.mass;
  return scaleLike(least * boatMass, most * boatMass, RATIO.mass);
};

interface Weight {
  readonly mass: { readonly middle: number; readonly sigma: number };
  readonly volume: { readonly middle: number; readonly sigma: number } | null;
  readonly density: number;
}

/** Over z: mass, volume, and the place along each axis. In the basis of the room and of how it is felt. */
function pieceOf({ mass, volume, density }: Weight, { room, isEven, felt }: Supposition, logShare: number): PriorPiece {
  const pushed = volume ?? { middle: 0, sigma: 0 };
  const places = waysOf(felt).map((how, way) => {
    const wet = how === 'in water' ? density : 0;
    return { at: PARTS * way, weight: mass.middle - wet * pushed.middle, byVolume: -wet * pushed.sigma };
  });
  const { middle, spread } = room;
  return {
    logShare,
    middle: places.map(({ at, weight }) => [at, weight]),
    spread: [
      places.map(({ at }) => [at, mass.sigma]),
      ...(volume ? [places.map(({ at, byVolume }) => [at, byVolume] as const)] : []),
      ...AXES.map(axis => places.map(({ at, weight }) => [at + 1 + axis, weight] as const)),
    ],
    even: isEven ? AXES.map(axis => axis + (volume ? 2 : 1)) : [],
    facts: {
      middle: [mass.middle, pushed.middle, ...middle],
      spread: [
        [[0, mass.sigma]],
        ...(volume ? [[[1, pushed.sigma] as const]] : []),
        ...AXES.map(axis => [[2 + axis, spread[axis]] as const]),
      ],
    },
  };
}

/** Of a load: its mass and its moments. */
const PARTS = 4;
const AXES = [0, 1, 2] as const;
const PLACES = [0, 1, 2] as const;

/** The ways in which it is felt anywhere. */
const waysOf = (felt: Felt): readonly How[] =>
  (['whole', 'in water'] as const).filter(way => felt.some(how => how === way));

/** A kilogram in the middle of a room, and one standard deviation of its place along each axis. */
const vectorsOf = ({ middle, spread }: HidingRoom): readonly (readonly number[])[] => [
  [1, ...middle],
  ...AXES.map(axis => [0, 0, 0, 0].map((_, i) => (i === 1 + axis ? spread[axis] : 0))),
];

/** Those in all places at once where it is felt alike, in one way after the other. */
export const basisOf = (room: HidingRoom, felt: Felt): readonly (readonly number[])[] =>
  waysOf(felt).flatMap(way =>
    vectorsOf(room).map(vector => felt.flatMap(how => (how === way ? vector : [0, 0, 0, 0]))),
  );

/** Those in one place after the other. */
export const basisByPlace = (room: HidingRoom): readonly (readonly number[])[] =>
  PLACES.flatMap(place =>
    vectorsOf(room).map(vector => PLACES.flatMap(other => (other === place ? vector : [0, 0, 0, 0]))),
  );

/** More than one thing, felt in each place in its own way: loads that are only so large. */
export function anything(boatMass: number): PriorPiece {
  const sigma = BELIEVED.several.mass * boatMass;
  const places = PLACES.flatMap(place => [0, 1, 2, 3].map(part => PARTS * place + part));
  return {
    logShare: 0,
    middle: [],
    spread: places.map(place => [[place, sigma]]),
    even: [],
    facts: { middle: [], spread: [] },
  };
}
