import type { Vec3 } from './vector.ts';

/** The shape of a thing, already placed in boat axes (m). Three kinds, and several of them together, carry every form. */
export type Form = Revolved | Ball | Polyhedron | Compound;

/**
 * A body of revolution about the line `origin + s·axis`; straight lines between profile points. Cylinders, cones and
 * tabulated profiles are all this. Stations `s` never fall; two equal ones make a flat shoulder. Ends that do not come
 * to a point are closed by flat disks.
 */
export interface Revolved {
  readonly shape: 'revolved';
  readonly origin: Vec3;
  /** Unit vector. */
  readonly axis: Vec3;
  readonly profile: readonly (readonly [s: number, radius: number])[];
}

export interface Ball {
  readonly shape: 'ball';
  readonly centre: Vec3;
  readonly radius: number;
}

/** Flat faces: boxes, tables of offsets and meshes. */
export interface Polyhedron {
  readonly shape: 'polyhedron';
  /** x, y, z of each vertex in turn. */
  readonly vertices: Float64Array;
  /** Three vertex numbers a triangle, counter-clockwise seen from outside. */
  readonly faces: Uint32Array;
}

/** Several forms that are one thing; where two of them overlap, both count. */
interface Compound {
  readonly shape: 'compound';
  /** One or more. */
  readonly parts: readonly Form[];
}
