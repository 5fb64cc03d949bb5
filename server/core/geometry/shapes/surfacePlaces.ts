import { planeFrame } from '../cut/planeFrame.ts';
import type { Form, Polyhedron, Revolved } from '../form/form.ts';
import { addScaled, type Vec3 } from '../form/vector.ts';

/** Places on each ring of a body of revolution. */
const ROUND = 16;
/** A ball has so many rings at least, its poles among them. */
const RINGS = 5;
/**
 * Of a mesh that many corners are looked at, spread evenly. A form of few has its sides divided by so many as well, and a body
 * of revolution its length.
 */
const CORNERS = 300;
const FEW_FACES = 60;
const DIVIDED = 8;

/** Of many forms that are one thing the sides of each are divided less, and its rings fewer: so many times in all. */
const DIVIDED_IN_ALL = 64;

/** Places spread over the surface of a form, its ends and corners among them, m. */
export function surfacePlaces(form: Form, divided = DIVIDED): readonly Vec3[] {
  if (form.shape === 'compound') {
    const each = Math.max(1, Math.min(divided, Math.floor(DIVIDED_IN_ALL / form.parts.length)));
    return form.parts.flatMap(part => surfacePlaces(part, each));
  }
  if (form.shape === 'revolved') return ringPlaces(form, divided);
  if (form.shape === 'ball') {
    const rings = Math.max(RINGS, divided + 1);
    const half: readonly (readonly [number, number])[] = Array.from({ length: rings }, (_, i) => {
      const angle = (Math.PI * i) / (rings - 1);
      return [-form.radius * Math.cos(angle), form.radius * Math.sin(angle)];
    });
    return ringPlaces({ shape: 'revolved', origin: form.centre, axis: [1, 0, 0], profile: half }, divided);
  }
  return cornerPlaces(form, divided);
}

/** Rings at the points of its profile, and at the ends of so many stretches as it is divided into. */
function ringPlaces({ origin, axis, profile }: Revolved, divided: number): readonly Vec3[] {
  const [first, last] = [profile[0]![0], profile.at(-1)![0]];
  const between = Array.from({ length: divided + 1 }, (_, i) => first + ((last - first) * i) / Math.max(1, divided));
  const rings = [...profile, ...between.flatMap(s => radiusOn(profile, s))];
  const [one, other] = planeFrame(axis);
  return rings.flatMap(([s, radius]) => {
    const middle = addScaled(origin, axis, s);
    if (radius === 0) return [middle];
    return Array.from({ length: ROUND }, (_, i) => {
      const angle = (2 * Math.PI * i) / ROUND;
      return addScaled(addScaled(middle, one, radius * Math.cos(angle)), other, radius * Math.sin(angle));
    });
  });
}

function radiusOn(profile: Revolved['profile'], s: number): readonly (readonly [number, number])[] {
  const next = profile.findIndex(([to], i) => i > 0 && s <= to);
  if (next < 0) return [];
  const [[s0, r0], [s1, r1]] = [profile[next - 1]!, profile[next]!];
  return s1 > s0 ? [[s, r0 + ((r1 - r0) * (s - s0)) / (s1 - s0)]] : [];
}

function cornerPlaces({ vertices, faces }: Polyhedron, divided: number): readonly Vec3[] {
  const corner = (i: number): Vec3 => [vertices[3 * i]!, vertices[3 * i + 1]!, vertices[3 * i + 2]!];
  const count = vertices.length / 3;
  if (faces.length > 3 * FEW_FACES) {
    const step = Math.ceil(count / CORNERS);
    return Array.from({ length: Math.ceil(count / step) }, (_, i) => corner(i * step));
  }
  const places: Vec3[] = [];
  for (let k = 0; k < faces.length; k++) {
    const [a, b] = [faces[k]!, faces[k % 3 === 2 ? k - 2 : k + 1]!];
    // Each side belongs to two triangles: once is enough.
    if (a > b) continue;
    const [from, to] = [corner(a), corner(b)];
    for (let i = 0; i <= divided; i++) {
      const f = i / divided;
      places.push([from[0] + f * (to[0] - from[0]), from[1] + f * (to[1] - from[1]), from[2] + f * (to[2] - from[2])]);
    }
  }
  return places;
}
