import { describe, expect, test } from 'vitest';
import { createDescriber } from '../../schema/describe.ts';
import { analyse, readText } from '../../server/core/analysis/analyse.ts';
import { readShell } from '../../server/core/boat/readHull.ts';
import { pictureSteps } from '../../server/core/drawing/trimSheet.ts';
import { emptyImmersion } from '../../server/core/geometry/cut/immersion.ts';
import { solidOf, solidSteps, wallOf, wallSteps } from '../../server/core/geometry/cut/solids.ts';
import type { Vec3 } from '../../server/core/geometry/form/vector.ts';
import { silhouetteOf, silhouetteSteps } from '../../server/core/geometry/outline/silhouette.ts';
import type { MeshFile } from '../../server/core/meshFiles/meshFile.ts';
import { readMeshSteps } from '../../server/core/meshFiles/readMeshFile.ts';
import { finish, type Steps } from '../../server/core/steps/steps.ts';
import { boatOfParts } from '../benchmark/boatOfParts.ts';
import { hullMesh } from '../benchmark/hullMesh.ts';
import { textLines } from '../helpers/boatText.ts';
import { binaryStl } from '../helpers/stl.ts';
import { meshXml, threeMf } from '../helpers/threeMf.ts';

const TRIANGLES = 120_000;
const form = hullMesh(TRIANGLES);
const describer = createDescriber();

/** How many steps a work takes, and what comes of it. */
function counted<T>(work: Steps<T>): { readonly steps: number; readonly value: T } {
  // Ends: each round is a step of work, and the work ends.
  for (let steps = 1; ; steps += 1) {
    const step = work.next();
    if (step.done) return { steps, value: step.value };
  }
}

/** Triangles that are looked at in one step, at most, in work that looks at each once or a few times. */
const A_STEP = 30_000;
const most = TRIANGLES / A_STEP;

describe('what a mesh of many triangles needs is made in steps', () => {
  const stl = counted(readMeshSteps(binaryStl(form, 1000)));
  const meshes = (): MeshFile => stl.value;
  const text = boatOfParts(20).replace(/ +profile: \[\[0, 0\].*\n.*\n/, () =>
    textLines(['      mesh: { file: hull.stl }']),
  );
  const read = counted(readText(text, describer, undefined, meshes));

  test('it is read and checked', () => {
    expect(stl.value.status).toBe('loaded');
    // It is read, joined, its edges matched, turned outward, and sorted into a tree.
    expect(stl.steps).toBeGreaterThan(5 * most);
    const packed = threeMf(`<object id="1">${meshXml(form)}</object>`, '<item objectid="1"/>');
    const { steps, value } = counted(readMeshSteps(packed));
    expect(value.status).toBe('loaded');
    expect(steps).toBeGreaterThan(packed.length / 2 ** 16);
  });

  test('it is placed, and where only another entry is typed not again', () => {
    const flat = counted(readText(boatOfParts(20), describer));
    expect(read.value.boat.shells).toHaveLength(flat.value.boat.shells.length);
    expect(read.steps - flat.steps).toBeGreaterThan(3 * most);
    const typed = text.replace('name: dry part 0,', 'name: dry part zero,');
    const analysis = analyse(text, describer, undefined, meshes);
    expect(counted(readText(typed, describer, analysis, meshes)).steps).toBeLessThan(most + 20);
  });

  test.each([
    ['condition', 'conditions: [{ name: awash, aboard: [{ name: collar, mass: 9 g, mesh: { file: hull.stl } }] }]'],
    [
      'trial',
      'trials: [{ condition: surfaced, heel: 0°, aboard: [{ name: collar, mass: 9 g, mesh: { file: hull.stl } }] }]',
    ],
  ])('so is what a %s has aboard', (_, more) => {
    const plain = more.replace('mesh: { file: hull.stl }', 'box: 20 x 20 x 20 mm');
    const [meshed, boxed] = [more, plain].map(each =>
      counted(readText(`${boatOfParts(20)}${each}\n`, describer, undefined, meshes)),
    );
    expect(meshed!.value.boat.leftOut).toEqual([]);
    expect(meshed!.steps - boxed!.steps).toBeGreaterThan(2 * most);
  });

  test('so is a table of offsets, which is made once for its rows', () => {
    const rows = Array.from({ length: 30 }, (_, i) => {
      const half = Array.from(
        { length: 40 },
        (__, k) => `[${(40 * Math.sin((Math.PI * k) / 39)).toFixed(2)}, ${2 * k}]`,
      );
      return `        - { station: ${30 * i}, outline: [${half.join(', ')}] }`;
    });
    const table = boatOfParts(20).replace(/ +profile: \[\[0, 0\].*\n.*\n/, () =>
      textLines(['      sections:', ...rows]),
    );
    const made = counted(readText(table, describer));
    expect(made.value.boat.leftOut).toEqual([]);
    expect(made.steps - counted(readText(boatOfParts(20), describer)).steps).toBeGreaterThan(3);
    const { source } = made.value;
    const [shell] = source.shells;
    const heavier = readShell(
      { ...shell!.checked, mass: { ...shell!.checked.mass, value: 2 } },
      shell!.entry.path,
      source.around,
      [],
    );
    expect(heavier!.mass).toBe(2);
    expect(heavier!.form).toBe(shell!.entry.form);
  });

  test('it is drawn', () => {
    const steps = (analysis: ReturnType<typeof analyse>): number =>
      counted(pictureSteps(analysis, { only: ['surfaced-side'] })).steps;
    const analysis = analyse(text, describer, undefined, meshes);
    const first = steps(analysis);
    expect(first - steps(analyse(boatOfParts(20), describer))).toBeGreaterThan(most);
    // What was made for it holds.
    expect(steps(analysis)).toBeLessThan(first - most);
  });
});

describe('in steps comes of it what comes of it at once', () => {
  const levels = [-0.02, 0, 0.013, 0.04];
  const up: Vec3 = [0.048, -0.36, Math.sqrt(1 - 0.048 ** 2 - 0.36 ** 2)];
  const cut = (body: ReturnType<typeof solidOf>) =>
    levels.map(level => {
      const sums = emptyImmersion();
      body.cut(up, level, sums);
      return sums;
    });

  test('of a solid', () => {
    const [atOnce, made] = [solidOf(form), finish(solidSteps(form))];
    expect(made.volume).toBe(atOnce.volume);
    expect(cut(made)).toEqual(cut(atOnce));
    const both = { shape: 'compound', parts: [form, { shape: 'ball', centre: [0, 0, 0], radius: 0.1 }] } as const;
    expect(cut(finish(solidSteps(both)))).toEqual(cut(solidOf(both)));
  });

  test('of a wall and its rough one', () => {
    const ends = { endsClosed: true };
    const [atOnce, made] = [wallOf(form, ends), finish(wallSteps(form, ends))].map(wall => wall.withVolume(0.001));
    expect(cut(made!)).toEqual(cut(atOnce!));
    expect(made!.rough).toBeDefined();
    expect(cut(made!.rough!)).toEqual(cut(atOnce!.rough!));
  });

  test('of an outline', () => {
    expect(finish(silhouetteSteps(form, 1))).toEqual(silhouetteOf(form, 1));
  });
});
