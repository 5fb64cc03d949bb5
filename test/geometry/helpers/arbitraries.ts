import fc from 'fast-check';
import type { Cuttable } from '../../../server/core/geometry/cut/immersion.ts';
import { solidOf, wallOf } from '../../../server/core/geometry/cut/solids.ts';
import { boxForm } from '../../../server/core/geometry/form/box.ts';
import type { Form, Revolved } from '../../../server/core/geometry/form/form.ts';
import { unit, type Vec3 } from '../../../server/core/geometry/form/vector.ts';
import { mapForm, type Placement } from './forms.ts';

const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

const point = (reach: number): fc.Arbitrary<Vec3> =>
  fc.tuple(between(-reach, reach), between(-reach, reach), between(-reach, reach));

export const direction: fc.Arbitrary<Vec3> = fc
  .tuple(between(-1, 1), between(-Math.PI, Math.PI))
  .map(([z, angle]): Vec3 => {
    const flat = Math.sqrt(1 - z * z);
    return unit([flat * Math.cos(angle), flat * Math.sin(angle), z]);
  });

const shoulder = fc.record({ step: fc.oneof(between(0.05, 0.5), fc.constant(0)), radius: between(0, 0.3) });

const revolvedForm: fc.Arbitrary<Revolved> = fc
  .record({
    origin: point(0.5),
    axis: fc.oneof(fc.constantFrom<Vec3>([1, 0, 0], [0, 1, 0], [0, 0, 1]), direction),
    first: between(0, 0.3),
    steps: fc.array(shoulder, { minLength: 1, maxLength: 5 }),
  })
  .map(({ origin, axis, first, steps }): Revolved => {
    let s = 0;
    const profile: (readonly [number, number])[] = [[0, first]];
    for (const { step, radius } of steps) {
      s += step;
      profile.push([s, radius]);
    }
    // Something of a body in any case.
    profile.push([s + 0.1, 0.1]);
    return { shape: 'revolved', origin, axis, profile };
  });

/** Turn by two angles, possibly with a mirror. */
export const map: fc.Arbitrary<Placement> = fc
  .record({ a: between(-3, 3), b: between(-3, 3), mirror: fc.boolean(), shift: point(1), scale: between(0.3, 3) })
  .map(({ a, b, mirror, shift, scale }): Placement => {
    const side = mirror ? -1 : 1;
    const [ca, sa, cb, sb] = [Math.cos(a), Math.sin(a), Math.cos(b), Math.sin(b)];
    const turn: Placement['turn'] = [
      [ca * cb, -side * sa, ca * sb],
      [sa * cb, side * ca, sa * sb],
      [-sb, 0, cb],
    ];
    return { turn, shift, scale };
  });

const boxed = fc
  .record({ from: point(0.4), size: fc.tuple(between(0.05, 0.6), between(0.05, 0.6), between(0.05, 0.6)), turn: map })
  .map(({ from, size, turn }) =>
    mapForm(boxForm(from, [from[0] + size[0], from[1] + size[1], from[2] + size[2]]), turn),
  );

export const form: fc.Arbitrary<Form> = fc.oneof(
  revolvedForm,
  boxed,
  fc.record({ shape: fc.constant('ball' as const), centre: point(0.5), radius: between(0.02, 0.5) }),
);

export interface Cut {
  readonly form: Form;
  readonly kind: 'solid' | 'wall, open' | 'wall, closed';
  readonly body: Cuttable;
  readonly n: Vec3;
  readonly h: number;
  /** From the lowest to the highest point. */
  readonly height: number;
}

export const bodyOf = (shape: Form, kind: Cut['kind']): Cuttable => {
  if (kind === 'solid') return solidOf(shape);
  const wall = wallOf(shape, { endsClosed: kind === 'wall, closed' });
  return wall.withVolume(wall.area * 0.002);
};

/** A solid or a wall and a plane that crosses it. */
export const cut: fc.Arbitrary<Cut> = fc
  .record({
    form,
    kind: fc.constantFrom<Cut['kind'][]>('solid', 'wall, open', 'wall, closed'),
    n: fc.oneof(direction, fc.constantFrom<Vec3>([0, 0, 1], [1, 0, 0], [0, -1, 0])),
    share: between(0.01, 0.99),
  })
  .map(({ form: shape, kind, n, share }) => {
    const body = bodyOf(shape, kind);
    const [low, high] = body.extent(n);
    return { form: shape, kind, body, n, h: low + (high - low) * share, height: high - low };
  });
