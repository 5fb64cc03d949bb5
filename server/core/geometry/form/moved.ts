import type { Form } from './form.ts';
import { add, type Vec3 } from './vector.ts';

/** The form put elsewhere by so much, m. */
export function movedForm(form: Form, by: Vec3): Form {
  switch (form.shape) {
    case 'revolved':
      return { ...form, origin: add(form.origin, by) };
    case 'ball':
      return { ...form, centre: add(form.centre, by) };
    case 'compound':
      return { ...form, parts: form.parts.map(part => movedForm(part, by)) };
    case 'polyhedron':
      return { ...form, vertices: form.vertices.map((c, i) => c + by[i % 3]!) };
  }
}

/** The form made so many times as long along the boat, about station 0; null for one that would not be of its kind then. */
export function stretchedForm(form: Form, times: number): Form | null {
  switch (form.shape) {
    case 'revolved': {
      const { origin, axis, profile } = form;
      if (Math.abs(axis[0]) !== 1) return null;
      return {
        ...form,
        origin: [origin[0] * times, origin[1], origin[2]],
        profile: profile.map(([s, radius]) => [s * times, radius] as const),
      };
    }
    case 'polyhedron':
      return { ...form, vertices: form.vertices.map((c, i) => (i % 3 === 0 ? c * times : c)) };
    case 'ball':
    case 'compound':
      return null;
  }
}

/** Its mirror image on the other side of the centreline: what was to starboard is to port. */
export function mirroredForm(form: Form): Form {
  switch (form.shape) {
    case 'revolved':
      return { ...form, origin: mirrored(form.origin), axis: mirrored(form.axis) };
    case 'ball':
      return { ...form, centre: mirrored(form.centre) };
    case 'compound':
      return { ...form, parts: form.parts.map(mirroredForm) };
    case 'polyhedron': {
      const { vertices, faces } = form;
      // Two corners of each triangle change places, so that its outside stays outward.
      return {
        ...form,
        vertices: vertices.map((c, i) => (i % 3 === 1 ? -c : c)),
        faces: faces.map((_, i) => faces[i % 3 === 0 ? i : i % 3 === 1 ? i + 1 : i - 1]!),
      };
    }
  }
}

const mirrored = ([x, y, z]: Vec3): Vec3 => [x, -y, z];
