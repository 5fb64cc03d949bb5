import { finish, type Steps } from '../../steps/steps.ts';
import type { Form, Revolved } from '../form/form.ts';
import { outlineOfMesh } from './meshOutline.ts';
import { loopArea, type Point2 } from './outline.ts';
import { SEEN, type Sight } from './sight.ts';

/** A closed line, m. */
export type Loop = readonly Point2[];

/**
 * What a form looks like along one of the boat's axes, as loops that may overlap (m). Balls and bodies of revolution that
 * lie along an axis of the boat are exact but for circles, which are polygons; a body of revolution that lies otherwise is
 * shown by its convex hull. What is seen lies to the left of each loop: a hole seen right through a mesh runs the other way.
 */
export function silhouetteOf(form: Form, along: Sight): readonly Loop[] {
  switch (form.shape) {
    case 'ball':
      return [circle([form.centre[SEEN[along][0]], form.centre[SEEN[along][1]]], form.radius)];
    case 'compound':
      return form.parts.flatMap(part => silhouetteOf(part, along));
    case 'revolved':
      return [leftward(silhouetteOfRevolved(form, along))];
    case 'polyhedron':
      return finish(outlineOfMesh(form, along));
  }
}

/** The same in steps. */
export function* silhouetteSteps(form: Form, along: Sight): Steps<readonly Loop[]> {
  if (form.shape === 'polyhedron') return yield* outlineOfMesh(form, along);
  if (form.shape !== 'compound') return silhouetteOf(form, along);
  const loops: Loop[] = [];
  for (const [i, part] of form.parts.entries()) {
    if (i > 0 && i % PARTS === 0) yield;
    loops.push(...(yield* silhouetteSteps(part, along)));
  }
  return loops;
}

/** So many forms of one thing are looked at in a step. */
const PARTS = 20;

const leftward = (loop: Loop): Loop => (loopArea(loop) < 0 ? [...loop].reverse() : loop);

/** Corners of the polygons that stand for circles: they miss the round by less than a thousandth of the radius. */
const CORNERS = 72;

export const circle = ([x, y]: Point2, radius: number): Loop =>
  Array.from({ length: CORNERS }, (_, i): Point2 => {
    const angle = (2 * Math.PI * i) / CORNERS;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });

function silhouetteOfRevolved({ origin, axis, profile }: Revolved, along: Sight): Loop {
  const [p, q] = SEEN[along];
  const middle = (s: number): Point2 => [origin[p] + s * axis[p], origin[q] + s * axis[q]];
  if (Math.abs(axis[along]) === 1) return circle(middle(0), Math.max(...profile.map(([, radius]) => radius)));
  if (axis[along] !== 0) return hullOf(profile.flatMap(([s, radius]) => disk(middle(s), radius, axis, along)));
  const side = (s: number, away: number): Point2 => {
    const [x, y] = middle(s);
    return [x - axis[q] * away, y + axis[p] * away];
  };
  return [
    ...profile.map(([s, radius]) => side(s, radius)),
    ...[...profile].reverse().map(([s, radius]) => side(s, -radius)),
  ];
}

/** A disk square to `axis` as it is seen: an ellipse. */
function disk([x, y]: Point2, radius: number, axis: Revolved['axis'], along: Sight): Loop {
  const [p, q] = SEEN[along];
  const size = Math.hypot(axis[p], axis[q]);
  const narrow = radius * Math.abs(axis[along]);
  return circle([0, 0], 1).map(([c, s]): Point2 => {
    const [across, inline] = [radius * c, narrow * s];
    return [x + (inline * axis[p] - across * axis[q]) / size, y + (inline * axis[q] + across * axis[p]) / size];
  });
}

/** The convex hull, by Andrew's monotone chain (from memory). */
function hullOf(points: readonly Point2[]): Loop {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const chain = (list: readonly Point2[]): Point2[] => {
    const kept: Point2[] = [];
    for (const point of list) {
      // Ends: each round takes a point away.
      while (kept.length > 1 && turnsRight(kept.at(-2)!, kept.at(-1)!, point)) kept.pop();
      kept.push(point);
    }
    return kept.slice(0, -1);
  };
  return [...chain(sorted), ...chain(sorted.reverse())];
}

const turnsRight = (a: Point2, b: Point2, c: Point2): boolean =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]) <= 0;
