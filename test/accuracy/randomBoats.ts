import type { Boat } from '../../server/core/boat/boat.ts';
import { solidOf, wallOf } from '../../server/core/geometry/cut/solids.ts';
import { boxForm } from '../../server/core/geometry/form/box.ts';
import type { Revolved } from '../../server/core/geometry/form/form.ts';
import type { Vec3 } from '../../server/core/geometry/form/vector.ts';
import { boatOf } from '../helpers/bodies.ts';
import { between, randomFrom } from './random.ts';
import { randomDirection } from './randomSolids.ts';
import type { Single } from './waterPressure.ts';

export const BOAT_LENGTH = 0.9;

/** A boat as the program takes it, and the same boat in bare pieces for another way of computing. */
export interface RandomBoat {
  readonly seed: number;
  readonly boat: Boat;
  readonly shell: { readonly form: Revolved; readonly volume: number };
  readonly solids: readonly Single[];
  readonly masses: readonly (readonly [mass: number, at: Vec3])[];
  /** Volume of the water in each tank, m3. */
  readonly tanks: readonly { readonly form: Single; readonly volume: number }[];
}

/** A boat like a builder's, in numbers drawn by the seed: it floats with 4 to 20 % in reserve, its weight low. */
export function randomBoat(seed: number, hasTanks: boolean): RandomBoat {
  const random = randomFrom(seed);
  const draw = (from: number, to: number): number => between(random, from, to);
  const density = draw(995, 1028);
  const form: Revolved = {
    shape: 'revolved',
    origin: [0, 0, 0.055],
    axis: [1, 0, 0],
    profile: [
      [0, 0.002],
      [draw(0.05, 0.15), draw(0.035, 0.05)],
      [draw(0.3, 0.6), draw(0.05, 0.058)],
      [BOAT_LENGTH, draw(0.002, 0.01)],
    ],
  };
  const shell = { form, volume: draw(2e-4, 5e-4) };
  const cylinder: Revolved = {
    shape: 'revolved',
    origin: [draw(0.18, 0.24), draw(-0.002, 0.002), draw(0.05, 0.06)],
    axis: [1, 0, 0],
    profile: [
      [0, draw(0.034, 0.044)],
      [draw(0.35, 0.45), draw(0.034, 0.044)],
    ],
  };
  const solids: readonly Single[] = [
    cylinder,
    // A sail, foam under the deck, lead along the keel.
    block([draw(0.28, 0.34), 0, 0.135], [0.1, 0.02, draw(0.04, 0.06)]),
    ...[0, 1, 2].map(() => block([draw(0.1, 0.8), draw(-0.02, 0.02), draw(0.06, 0.1)], [draw(0.05, 0.12), 0.03, 0.02])),
    block([draw(0.35, 0.45), draw(-0.002, 0.002), 0.006], [draw(0.3, 0.4), 0.02, 0.006]),
    ...[0, 1].map(
      (): Single => ({
        shape: 'ball',
        centre: [draw(0.1, 0.8), draw(-0.03, 0.03), draw(0.03, 0.1)],
        radius: draw(0.008, 0.02),
      }),
    ),
    {
      shape: 'revolved',
      origin: [draw(0.2, 0.7), draw(-0.02, 0.02), draw(0.06, 0.09)],
      axis: randomDirection(random),
      profile: [
        [-0.03, draw(0.003, 0.01)],
        [0.03, draw(0.003, 0.01)],
      ],
    },
  ];
  const tanks = hasTanks ? tankWater(cylinder, draw) : [];
  const wall = wallOf(form, { endsClosed: false });
  const bodies = [
    ...solids.map(solid => solidOf(solid)).map(({ volume, moment }) => [volume, moment] as const),
    [shell.volume, wall.centroid.map(c => c * shell.volume)] as const,
  ];
  const volume = bodies.reduce((sum, [each]) => sum + each, 0);
  const centre = [0, 1, 2].map(axis => bodies.reduce((sum, [, moment]) => sum + moment[axis]!, 0) / volume);
  const water = density * tanks.reduce((sum, tank) => sum + tank.volume, 0);
  const mass = density * volume * draw(0.8, 0.96) - water;
  const masses: RandomBoat['masses'] = [
    [0.6 * mass, [centre[0]! + draw(-0.025, 0.025), draw(-0.006, 0.006), centre[2]! - draw(0.012, 0.03)]],
    [0.4 * mass, [centre[0]! + draw(-0.025, 0.025), draw(-0.006, 0.006), centre[2]! - draw(0.012, 0.03)]],
  ];
  const plain = boatOf({
    density,
    solids,
    masses,
    tanks: tanks.map(tank => ({ form: tank.form, kind: 'sealed' as const, fill: tank.fill })),
  });
  const boat: Boat = {
    ...plain,
    shells: [
      {
        path: ['hull', 'shells', 0],
        name: 'shell',
        copies: 1,
        holds: [],
        mass: 0,
        massFrom: 'scale',
        centroid: wall.centroid,
        form,
        endsClosed: false,
        volume: shell.volume,
        worked: [],
      },
    ],
  };
  return { seed, boat, shell, solids, masses, tanks };
}

const block = ([x, y, z]: Vec3, [length, breadth, depth]: Vec3): Single =>
  boxForm([x - length / 2, y - breadth / 2, z - depth / 2], [x + length / 2, y + breadth / 2, z + depth / 2]);

type Draw = (from: number, to: number) => number;

/** Two slack tanks in the cylinder: a round one and a box. */
function tankWater(cylinder: Revolved, draw: Draw): readonly { form: Single; volume: number; fill: number }[] {
  const [x, y, z] = cylinder.origin;
  const round: Revolved = {
    shape: 'revolved',
    origin: [x + 0.05, y, z],
    axis: [1, 0, 0],
    profile: [
      [0, 0.03],
      [draw(0.04, 0.08), 0.03],
    ],
  };
  const box = block([x + 0.25, y, z], [draw(0.03, 0.06), 0.04, 0.03]);
  return [round, box].map(form => {
    const fill = draw(0.05, 0.6);
    return { form, fill, volume: fill * solidOf(form).volume };
  });
}
