import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { upFor } from '../../server/core/conditions/attitude.ts';
import { frameFor } from '../../server/core/drawing/frame.ts';
import { hullFrame } from '../../server/core/drawing/hullFrame.ts';
import { trimSheet } from '../../server/core/drawing/trimSheet.ts';
import { turnFor } from '../../server/core/drawing/turn.ts';
import type { Point2 } from '../../server/core/geometry/outline/outline.ts';
import { heard } from '../helpers/analysed.ts';
import { matrixOf, parseXml, pointsOf, withClass } from '../helpers/svg.ts';

const ROOM = { left: 104, width: 672, mostHeight: 380 };
/** A boat of a metre, m. */
const EXTENT = { left: -0.2, right: 1.1, low: -0.3, high: 0.3 };

const frameOf = (trim: number, heel: number, along: 0 | 1, metres = 1) => {
  const turn = turnFor(upFor(trim, heel), along);
  const { left, right, low, high } = EXTENT;
  const extent = { left: left * metres, right: right * metres, low: low * metres, high: high * metres };
  return turn && frameFor(turn, extent, ROOM, 66);
};

it('puts every point of the boat where its picture has it, however it lies', () => {
  const angle = fc.double({ min: -3.1, max: 3.1, noNaN: true });
  const share = fc.double({ min: 0, max: 1, noNaN: true });
  fc.assert(
    fc.property(angle, angle, fc.constantFrom(0, 1), fc.tuple(share, share), (trim, heel, along, point) => {
      const frame = frameOf(trim, heel, along as 0 | 1);
      fc.pre(frame !== null);
      const hull = hullFrame(frame!);
      const [a, b, c, d, e, f] = matrixOf(hull.transform);
      const [x, y] = hull.at(point as Point2);
      const [right, down] = frame!.at(point as Point2);
      expect(a * x + c * y + e).toBeCloseTo(right, 2);
      expect(b * x + d * y + f).toBeCloseTo(down, 2);
      // Hatching hardly turned, strokes hardly broader.
      expect(Math.abs(Math.atan2(b, a))).toBeLessThan(Math.PI / 36 + 1e-5);
      expect(Math.abs(Math.hypot(a, b) - 1)).toBeLessThan(0.0051);
    }),
  );
});

it('is the same for a boat that trims a little more, and another for one far over or far smaller', () => {
  const { key, at } = hullFrame(frameOf(0.02, 0, 1)!);
  const more = hullFrame(frameOf(0.03, 0, 1)!);
  expect(more.key).toBe(key);
  expect(more.at([0.7, 0.1])).toEqual(at([0.7, 0.1]));
  const others = [frameOf(0.4, 0, 1)!, frameOf(0.02, 3, 1)!, frameOf(0.02, 0, 1, 1.1)!];
  expect(others.map(frame => hullFrame(frame).key)).not.toContain(key);
});

it('leaves the strokes of tank water level, in a boat that is well down by the bow', () => {
  const petrel = heard(readFileSync(new URL('../../samples/petrel.boat.yaml', import.meta.url), 'utf8'));
  const svg = parseXml(trimSheet(petrel, { only: ['submerged-side'] }).pictures[0]!.svg);
  expect(Math.abs(Number(svg.attributes['data-trim']))).toBeGreaterThan(0.1);
  const tank = withClass(svg, 'tank')[0]!;
  const ends = pointsOf(withClass(tank, 'of-ballast')[0]!.attributes.d!);
  expect(ends.length).toBeGreaterThan(8);
  for (let i = 0; i < ends.length; i += 2) expect(ends[i]![1]).toBeCloseTo(ends[i + 1]![1], 1);
});
