import type { Compartment, Part } from '../../server/core/boat/boat.ts';
import type { Form } from '../../server/core/geometry/form/form.ts';
import type { Vec3 } from '../../server/core/geometry/form/vector.ts';

/* Entries of a boat moved, cut and grown without asking the code under test. */

const plus = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];

/** By so much along each axis, m. */
export function moved(part: Part, by: Vec3): Part {
  return {
    ...part,
    centroid: plus(part.centroid, by),
    from: plus(part.from, by),
    to: plus(part.to, by),
    form: part.form && movedForm(part.form, by),
  };
}

function movedForm(form: Form, by: Vec3): Form {
  switch (form.shape) {
    case 'revolved':
      return { ...form, origin: plus(form.origin, by) };
    case 'ball':
      return { ...form, centre: plus(form.centre, by) };
    case 'polyhedron':
      return { ...form, vertices: form.vertices.map((value, i) => value + by[i % 3]!) };
    case 'compound':
      return { ...form, parts: form.parts.map(part => movedForm(part, by)) };
  }
}

/** With other mass and volume, as factors; a block grows by its length. */
export function stretched(part: Part, mass: number, volume: number): Part {
  const { form, centroid } = part;
  const longer = (value: number) => centroid[0] + volume * (value - centroid[0]);
  if (form && form.shape !== 'polyhedron') throw new Error('pieces are cut from strips');
  return {
    ...part,
    mass: part.mass * mass,
    volume: part.volume * volume,
    from: [longer(part.from[0]), part.from[1], part.from[2]],
    to: [longer(part.to[0]), part.to[1], part.to[2]],
    form: form && {
      ...form,
      vertices: form.vertices.map((value, i) => (i % 3 === 0 ? longer(value) : value)),
    },
  };
}

/** A round compartment that displaces by a factor more: thicker all along. */
export function swollen(compartment: Compartment, factor: number): Compartment {
  const { form } = compartment;
  if (form.shape !== 'revolved') throw new Error('only round compartments');
  const profile = form.profile.map(([s, radius]) => [s, radius * Math.sqrt(factor)] as const);
  return { ...compartment, form: { ...form, profile }, volume: compartment.volume * factor };
}

/** Of what pieces are made of, kg/m3. */
export const DENSITY = { lead: 11340, foam: 30 } as const;

interface Stuff {
  readonly material: keyof typeof DENSITY;
  /** kg. */
  readonly mass: number;
  readonly inside: string | null;
}

/** A piece of no extent to speak of, at a point. */
export function pointPiece({ material, mass, inside }: Stuff, centre: Vec3): Part {
  const volume = inside === null ? mass / DENSITY[material] : 0;
  const radius = Math.cbrt((3 * volume) / (4 * Math.PI));
  return {
    path: ['payload', 1000],
    name: `${material} at a point`,
    copies: 1,
    holds: [],
    mass,
    massFrom: 'scale',
    isLearned: false,
    centroid: centre,
    form: inside === null ? { shape: 'ball', centre, radius } : null,
    volume,
    inside,
    material,
    materialWords: material,
    fixed: true,
    pinned: true,
    from: centre,
    to: centre,
    worked: [],
    written: null,
  };
}
