import { describe, expect, it } from 'vitest';
import { areaOf, volumeOf } from '../../server/core/geometry/cut/sizes.ts';
import { solidOf, wallOf } from '../../server/core/geometry/cut/solids.ts';
import { boxForm } from '../../server/core/geometry/form/box.ts';
import type { Form } from '../../server/core/geometry/form/form.ts';
import { expectClose } from './helpers/close.ts';
import { ball, cylinder } from './helpers/forms.ts';
import { ellipsoidMesh } from './helpers/meshes.ts';

const box = boxForm([2, -1, 5], [5, 3, 7]);

describe('sizes without what a form is cut by', () => {
  it('of a block far from the origin: closed forms', () => {
    expectClose(volumeOf(box), 3 * 4 * 2, 1e-12);
    expectClose(areaOf(box, { endsClosed: true }), 2 * (3 * 4 + 4 * 2 + 3 * 2), 1e-12);
  });

  it.each<readonly [what: string, form: Form]>([
    ['mesh', ellipsoidMesh([3, 1, 0.7], 24)],
    ['body of revolution', cylinder(0.05, 0.4)],
    ['ball', ball(1, [2, 3, 4])],
    ['several', { shape: 'compound', parts: [box, cylinder(0.05, 0.4)] }],
  ])('as they are with it: %s', (_, form) => {
    expectClose(volumeOf(form), solidOf(form).volume, 1e-12);
    for (const endsClosed of [true, false])
      expectClose(areaOf(form, { endsClosed }), wallOf(form, { endsClosed }).area, 1e-12);
  });

  it('of nothing is nothing', () => {
    const nothing: Form = { shape: 'polyhedron', vertices: new Float64Array(0), faces: new Uint32Array(0) };
    expect([volumeOf(nothing), areaOf(nothing, { endsClosed: true })]).toEqual([0, 0]);
  });
});
