import type { Ball, Form, Polyhedron, Revolved } from '../../../server/core/geometry/form/form.ts';
import { unit, type Vec3 } from '../../../server/core/geometry/form/vector.ts';

export const revolved = (
  profile: readonly (readonly [number, number])[],
  origin: Vec3 = [0, 0, 0],
  axis: Vec3 = [1, 0, 0],
): Revolved => ({ shape: 'revolved', origin, axis: unit(axis), profile });

export const cylinder = (radius: number, length: number, origin?: Vec3, axis?: Vec3): Revolved =>
  revolved(
    [
      [0, radius],
      [length, radius],
    ],
    origin,
    axis,
  );

export const ball = (radius: number, centre: Vec3 = [0, 0, 0]): Ball => ({ shape: 'ball', centre, radius });

export const polyhedron = (vertices: readonly Vec3[], faces: readonly (readonly number[])[]): Polyhedron => ({
  shape: 'polyhedron',
  vertices: Float64Array.from(vertices.flat()),
  faces: Uint32Array.from(faces.flat()),
});

/** Each point of a form moved by one affine map `scale·turn·p + shift`; `turn` is given by its three rows. */
export function mapForm(form: Form, { turn, shift, scale }: Placement): Form {
  const image = (p: Vec3): Vec3 => {
    const [a, b, c] = turn.map(row => scale * (row[0] * p[0] + row[1] * p[1] + row[2] * p[2]));
    return [a! + shift[0], b! + shift[1], c! + shift[2]];
  };
  if (form.shape === 'ball') return { ...form, centre: image(form.centre), radius: form.radius * scale };
  if (form.shape === 'compound')
    return { ...form, parts: form.parts.map(part => mapForm(part, { turn, shift, scale })) };
  if (form.shape === 'revolved') {
    const tip = image(form.axis);
    const foot = image([0, 0, 0]);
    return {
      ...form,
      origin: image(form.origin),
      axis: unit([tip[0] - foot[0], tip[1] - foot[1], tip[2] - foot[2]]),
      profile: form.profile.map(([s, r]) => [s * scale, r * scale] as const),
    };
  }
  const vertices = Float64Array.from(form.vertices);
  for (let i = 0; i < vertices.length; i += 3) {
    vertices.set(image([vertices[i]!, vertices[i + 1]!, vertices[i + 2]!]), i);
  }
  // A mirror turns every triangle inside out: its corners go the other way round.
  const mirrored = determinant(turn) < 0;
  const faces = form.faces.map((_, i) => form.faces[mirrored ? i - (i % 3) + 2 - (i % 3) : i]!);
  return { ...form, vertices, faces };
}

export interface Placement {
  readonly turn: readonly [Vec3, Vec3, Vec3];
  readonly shift: Vec3;
  readonly scale: number;
}

const determinant = ([a, b, c]: Placement['turn']): number =>
  a[0] * (b[1] * c[2] - b[2] * c[1]) - a[1] * (b[0] * c[2] - b[2] * c[0]) + a[2] * (b[0] * c[1] - b[1] * c[0]);
