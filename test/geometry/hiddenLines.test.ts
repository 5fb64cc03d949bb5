import { describe, expect, it } from 'vitest';
import { boxForm } from '../../server/core/geometry/form/box.ts';
import { formsIn } from '../../server/core/geometry/outline/formsIn.ts';
import { type Line, linesAmong, type Seen } from '../../server/core/geometry/outline/hiddenLines.ts';
import type { Loop } from '../../server/core/geometry/outline/silhouette.ts';
import { finish } from '../../server/core/steps/steps.ts';

const box = (x0: number, y0: number, x1: number, y1: number): Loop => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
];
const lengthOf = (lines: readonly Line[]): number =>
  lines.reduce(
    (sum, line) =>
      sum + line.slice(1).reduce((all, [x, y], i) => all + Math.hypot(x - line[i]![0], y - line[i]![1]), 0),
    0,
  );
const seen = (loops: readonly Loop[], nearest: number, outline = 0): Seen => ({ loops, nearest, outline });

const hull = seen([box(0, 0, 10, 2)], 1);

describe('an outline among others', () => {
  it.each<readonly [string, Seen, Seen, number]>([
    ['is hidden where it goes into something that reaches nearer', seen([box(4, 1, 6, 4)], 0.2), hull, 2 + 1 + 1],
    ['is seen where it lies nearer itself', seen([box(4, 1, 6, 4)], 3, 2), hull, 0],
    ['is hidden as a whole behind something', seen([box(4, 0.5, 6, 1)], -1, -2), hull, 5],
    ['is seen where it runs along another', seen([box(4, 2, 6, 4)], 0.2), hull, 0],
    [
      'is seen through a hole',
      seen([box(4, 0.5, 6, 1.5)], -1, -2),
      seen([box(0, 0, 10, 2), [...box(3, 0.25, 5, 1.75)].reverse()], 1),
      1 + 1 + 1,
    ],
  ])('%s', (_, one, other, hidden) => {
    const lines = linesAmong(one, [other]);
    expect(lengthOf(lines.hidden)).toBeCloseTo(hidden, 6);
    const whole = linesAmong(one, []);
    expect(lengthOf(lines.seen) + lengthOf(lines.hidden)).toBeCloseTo(lengthOf(whole.seen), 6);
  });
});

describe('the pieces of a form', () => {
  const [one, other] = [boxForm([0, 0, 0], [1, 1, 1]), boxForm([2, 0, 0], [3, 1, 1])];
  it('are what hangs together in a mesh, and the parts of a compound', () => {
    const faces = Uint32Array.from([...one.faces, ...other.faces.map(vertex => vertex + 8)]);
    const vertices = Float64Array.from([...one.vertices, ...other.vertices]);
    expect(finish(formsIn({ shape: 'polyhedron', vertices, faces }))).toHaveLength(2);
    expect(finish(formsIn({ shape: 'compound', parts: [one, { shape: 'compound', parts: [other] }] }))).toEqual([
      one,
      other,
    ]);
  });
});
