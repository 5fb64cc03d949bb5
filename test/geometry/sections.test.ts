import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boundsOf, solidOf, wallOf } from '../../server/core/geometry/cut/solids.ts';
import { boxForm } from '../../server/core/geometry/form/box.ts';
import type { Polyhedron } from '../../server/core/geometry/form/form.ts';
import type { Vec3 } from '../../server/core/geometry/form/vector.ts';
import type { Section } from '../../server/core/geometry/mesh/sections.ts';
import { firstCrossing, loopArea, type Point2, triangulate } from '../../server/core/geometry/outline/outline.ts';
import { sectionsForm } from '../helpers/atOnce.ts';
import { centroidOf, cutBelow, expectClose, ROUNDING } from './helpers/close.ts';
import { refined } from './helpers/meshes.ts';

const CLOSED = { endsClosed: true };
const OPEN = { endsClosed: false };
const UP: Vec3 = [0, 0, 1];

const section = (station: number, ...outline: Point2[]): Section => ({ station, outline });

/** Edges that are not run along as often one way as the other. */
function looseEdges({ faces }: Polyhedron): readonly string[] {
  const balance = new Map<string, number>();
  for (let i = 0; i < faces.length; i++) {
    const [from, to] = [faces[i]!, faces[i % 3 === 2 ? i - 2 : i + 1]!];
    const key = from < to ? `${from} ${to}` : `${to} ${from}`;
    balance.set(key, (balance.get(key) ?? 0) + (from < to ? 1 : -1));
  }
  return [...balance].filter(([, net]) => net !== 0).map(([key]) => key);
}

describe('tables of offsets with closed forms', () => {
  it('two equal rectangles are a box', () => {
    const form = sectionsForm(
      [section(0.1, [0.03, 0.01], [0.03, 0.05]), section(0.5, [0.03, 0.01], [0.03, 0.05])],
      CLOSED,
    );
    const box = boxForm([0.1, -0.03, 0.01], [0.5, 0.03, 0.05]);
    expectClose(solidOf(form).volume, solidOf(box).volume, ROUNDING);
    expectClose(wallOf(form, CLOSED).area, wallOf(box, CLOSED).area, ROUNDING);
    expect(boundsOf(form)).toEqual(boundsOf(box));
    const level = 0.021;
    expectClose(cutBelow(solidOf(form), UP, level).volume, cutBelow(solidOf(box), UP, level).volume, ROUNDING);
  });

  it('without its ends the box lacks the flat deck and both faces, and keeps the flat keel', () => {
    const sections = [section(0, [0.03, 0], [0.03, 0.04]), section(0.4, [0.03, 0], [0.03, 0.04])];
    const area = wallOf(sectionsForm(sections, OPEN), CLOSED).area;
    // Closed 2(lb + ld + bd), less the deck l·b and two faces b·d.
    expectClose(area, 0.4 * 0.06 + 2 * 0.4 * 0.04, ROUNDING);
  });

  it('a rectangle drawn to a point is a pyramid, to a stem line a wedge', () => {
    const aft = section(0.3, [0.05, 0], [0.05, 0.08]);
    // A third of base by height; for the stem a triangle of base by height for every unit of depth.
    expectClose(solidOf(sectionsForm([section(0, [0, 0.02]), aft], CLOSED)).volume, (0.1 * 0.08 * 0.3) / 3, ROUNDING);
    expectClose(
      solidOf(sectionsForm([section(0, [0, 0], [0, 0.08]), aft], CLOSED)).volume,
      (0.1 * 0.08 * 0.3) / 2,
      ROUNDING,
    );
  });

  it('H-09: Wigley hull, from tables that get finer', () => {
    // Known: memory. Wigley (1942): y = B/2 (1 - (2x/L)²)(1 - (z/T)²), L = 100, B = 10, T = 5.
    const hull = (cells: number): Polyhedron =>
      sectionsForm(
        Array.from({ length: cells + 1 }, (_, i) => {
          const x = (2 * i) / cells - 1;
          const outline = Array.from({ length: cells + 1 }, (_, j): Point2 => {
            const height = j / cells;
            const depth = 1 - height;
            return [Math.max(0, 5 * (1 - x * x) * (1 - depth * depth)), 5 * height];
          });
          return { station: 50 * (x + 1), outline };
        }),
        CLOSED,
      );
    const figure = (read: (form: Polyhedron) => number): number => refined(cells => read(hull(cells)), 12);
    expectClose(
      figure(form => solidOf(form).volume),
      20000 / 9,
      1e-9,
    );
    expectClose(
      figure(form => centroidOf(solidOf(form))[2]),
      3.125,
      1e-8,
    );
    // The waterplane just below the flat deck: area 2/3·L·B and second moment for BM = 3B²/35T.
    const waterplane = (form: Polyhedron) => cutBelow(solidOf(form), UP, 5 * (1 - 1e-12));
    expectClose(
      figure(form => waterplane(form).area),
      2000 / 3,
      1e-8,
    );
    expectClose(
      figure(form => waterplane(form).yy / solidOf(form).volume),
      12 / 7,
      1e-7,
    );
  });
});

/** Outlines that rise all the way cannot cross themselves. */
const outline = (points: number) =>
  fc
    .array(fc.tuple(fc.double({ min: 0, max: 0.1, noNaN: true }), fc.double({ min: 0.001, max: 0.05, noNaN: true })), {
      minLength: points,
      maxLength: points,
    })
    .map(steps => {
      let height = 0;
      return steps.map(([breadth, rise], i): Point2 => {
        height += i === 0 ? 0 : rise;
        // Often on the centreline: keels, decks and pinches.
        return [breadth < 0.03 ? 0 : breadth, height];
      });
    });

const table = (least: number, most: number) =>
  fc
    .array(
      fc.tuple(fc.double({ min: 0.01, max: 0.2, noNaN: true }), fc.integer({ min: least, max: most }).chain(outline)),
      {
        minLength: 2,
        maxLength: 6,
      },
    )
    .map(rows => {
      let station = 0;
      return rows.map(([step, points]): Section => {
        station += step;
        return { station, outline: points };
      });
    });

/** The half outline with its centreline, as a loop. */
const halfLoop = ({ outline: points }: Section): readonly Point2[] => [
  [0, points[0]![1]],
  ...points,
  [0, points.at(-1)![1]],
];

describe('any table of offsets', () => {
  it('is closed, outward and symmetrical, whatever its outlines count', () => {
    fc.assert(
      fc.property(table(1, 7), sections => {
        const form = sectionsForm(sections, CLOSED);
        expect(looseEdges(form)).toEqual([]);
        const body = solidOf(form);
        expect(body.volume).toBeGreaterThanOrEqual(-1e-18);
        expect(Math.abs(body.moment[1])).toBeLessThanOrEqual(1e-16);
      }),
    );
  });

  it('with equally many points holds what straight lines sweep: Simpson’s rule on its sections is exact', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 6 }).chain(points => table(points, points)),
        sections => {
          // Points move straight, so that areas are of second degree along the boat.
          const expected = sections.slice(1).reduce((sum, aft, i) => {
            const forward = sections[i]!;
            const middle = halfLoop(forward).map((p, k): Point2 => {
              const q = halfLoop(aft)[k]!;
              return [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2];
            });
            const areas = loopArea(halfLoop(forward)) + 4 * loopArea(middle) + loopArea(halfLoop(aft));
            return sum + (2 * (aft.station - forward.station) * areas) / 6;
          }, 0);
          expectClose(solidOf(sectionsForm(sections, CLOSED)).volume, expected, 1e-11, expected + 1e-9);
        },
      ),
    );
  });

  it('a point put in on a straight stretch of one outline changes nothing that is flat there', () => {
    const plain = [section(0, [0.02, 0], [0.02, 0.06]), section(0.3, [0.04, 0], [0.04, 0.06])];
    const more = [plain[0]!, section(0.3, [0.04, 0], [0.04, 0.01], [0.04, 0.035], [0.04, 0.06])];
    expectClose(solidOf(sectionsForm(more, CLOSED)).volume, solidOf(sectionsForm(plain, CLOSED)).volume, ROUNDING);
  });

  it('open ends leave out just the end faces and the flat deck', () => {
    fc.assert(
      fc.property(table(2, 6), sections => {
        const wall = (ends: { endsClosed: boolean }) => wallOf(sectionsForm(sections, ends), CLOSED).area;
        const faces = [sections[0]!, sections.at(-1)!].reduce((sum, end) => sum + 2 * loopArea(halfLoop(end)), 0);
        const deck = sections.slice(1).reduce((sum, aft, i) => {
          const [one, other] = [sections[i]!.outline.at(-1)!, aft.outline.at(-1)!];
          const slant = Math.hypot(aft.station - sections[i]!.station, other[1] - one[1]);
          return sum + slant * (one[0] + other[0]);
        }, 0);
        expectClose(wall(CLOSED) - wall(OPEN), faces + deck, 1e-11, wall(CLOSED));
      }),
    );
  });
});

describe('outlines', () => {
  it('triangles of a loop fill it, however it bends', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 12 }).chain(outline), points => {
        const loop = [...points, [-0.1, points.at(-1)![1]] as Point2, [-0.1, points[0]![1]] as Point2];
        const triangles = triangulate(loop);
        expect(triangles).toHaveLength(loop.length - 2);
        const areas = triangles.map(corners => loopArea(corners.map(i => loop[i]!)));
        expect(Math.min(...areas)).toBeGreaterThanOrEqual(-1e-18);
        expectClose(
          areas.reduce((sum, area) => sum + area, 0),
          loopArea(loop),
          ROUNDING,
        );
      }),
    );
  });

  it.each<{ name: string; points: Point2[]; crossing: [number, number] | null }>([
    {
      name: 'a plain one',
      points: [
        [0, 0],
        [3, 1],
        [4, 5],
        [0, 6],
      ],
      crossing: null,
    },
    {
      name: 'a tumblehome',
      points: [
        [0, 0],
        [4, 1],
        [3, 5],
        [0, 6],
      ],
      crossing: null,
    },
    {
      name: 'a repeated point',
      points: [
        [0, 0],
        [3, 1],
        [3, 1],
        [0, 6],
      ],
      crossing: null,
    },
    {
      name: 'two points swapped',
      points: [
        [0, 0],
        [4, 3],
        [4, 1],
        [1, 4],
      ],
      crossing: [0, 2],
    },
    {
      name: 'a line doubled back',
      points: [
        [0, 0],
        [4, 0],
        [2, 0],
        [2, 4],
      ],
      crossing: [0, 1],
    },
    {
      name: 'a point on an earlier stretch',
      points: [
        [0, 0],
        [4, 0],
        [4, 4],
        [2, 0],
        [0, 4],
      ],
      crossing: [0, 2],
    },
  ])('$name', ({ points, crossing }) => {
    expect(firstCrossing(points)).toEqual(crossing);
  });
});
