import { DEFAULT_LIMITS } from '../../schema/limits.ts';
import type { Boat, Tank, TankKind } from '../../server/core/boat/boat.ts';
import { assembleBodies, type Bodies, emptyCache } from '../../server/core/bodies/assemble.ts';
import { solidOf } from '../../server/core/geometry/cut/solids.ts';
import { boxForm } from '../../server/core/geometry/form/box.ts';
import type { Form } from '../../server/core/geometry/form/form.ts';
import type { Vec3 } from '../../server/core/geometry/form/vector.ts';

/** A boat of bare numbers, in any consistent units: solids that displace, masses, tanks inside. */
export interface Plain {
  readonly density: number;
  readonly solids: readonly Form[];
  readonly masses: readonly (readonly [mass: number, at: Vec3])[];
  readonly tanks?: readonly PlainTank[];
}

interface PlainTank {
  readonly form: Form;
  readonly kind?: TankKind;
  readonly fill?: number;
  readonly cells?: number;
  readonly fillsFrom?: 'forward' | 'aft';
  readonly share?: number;
}

export const bodiesOf = (plain: Plain): Bodies => assembleBodies(boatOf(plain), emptyCache());

export function boatOf({ density, solids, masses, tanks = [] }: Plain): Boat {
  return {
    name: 'plain',
    scale: null,
    units: { length: 'm', mass: 'kg' },
    water: { density, temperature: 20, words: 'as given' },
    length: 1,
    waterline: null,
    shells: [],
    compartments: solids.map((form, i) => ({
      path: ['hull', 'compartments', i],
      name: `solid ${i}`,
      copies: 1,
      holds: [],
      mass: 0,
      massFrom: 'scale' as const,
      centroid: [0, 0, 0] as const,
      form,
      volume: solidOf(form).volume,
      worked: [],
    })),
    tanks: tanks.map(
      (tank, i): Tank => ({
        path: ['hull', 'tanks', i],
        name: `tank ${i}`,
        copies: 1,
        form: tank.form,
        capacity: solidOf(tank.form).volume,
        byJug: false,
        kind: tank.kind ?? 'vented',
        inside: 'solid 0',
        fill: tank.fill ?? 0,
        cells: tank.cells ?? 1,
        fillsFrom: tank.fillsFrom ?? 'forward',
        share: tank.share ?? 1,
        pressure: null,
        blow: null,
        worked: [],
      }),
    ),
    payload: masses.map(([mass, centroid], i) => ({
      path: ['payload', i],
      name: `mass ${i}`,
      copies: 1,
      holds: [],
      mass,
      massFrom: 'scale' as const,
      centroid,
      form: null,
      volume: 0,
      inside: 'solid 0',
      material: null,
      materialWords: null,
      fixed: true,
      pinned: false,
      isLearned: false,
      from: centroid,
      to: centroid,
      worked: [],
      written: null,
    })),
    ashore: [],
    bays: [],
    stock: {
      lead: { density: 11340, strip: null, pieces: [], shot: null },
      foam: { density: 30, strip: null, pieces: [], shot: null },
    },
    limits: DEFAULT_LIMITS,
    leftOut: [],
  };
}

/** A box from `station` on, about the centreline, up from the baseline. */
export const barge = (length: number, breadth: number, depth: number, station = 0): Form =>
  boxForm([station, -breadth / 2, 0], [station + length, breadth / 2, depth]);

/** A round bar along the boat from `station` on, centred on the centreline at `height`. */
export const roundBar = (length: number, radius: number, height: number, station = 0): Form => ({
  shape: 'revolved',
  origin: [station, 0, height],
  axis: [1, 0, 0],
  profile: [
    [0, radius],
    [length, radius],
  ],
});
