import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { acrossPicture, alongBoat, isDrag, marksOfKey, scaleOf } from '../../client/panel/drag.ts';
import { oneAtATime } from '../../client/panel/oneAtATime.ts';

describe('a way across the picture', () => {
  test('is as long along the boat as the picture is large', () => {
    // 500 units per metre: 10 units to the right are 20 mm aft, whatever happens up and down.
    const level = { perMetre: 500, trim: 0 };
    expect(alongBoat({ x: 100, y: 40 }, { x: 110, y: 90 }, level)).toBeCloseTo(0.02, 12);
    expect(alongBoat({ x: 100, y: 40 }, { x: 90, y: 40 }, level)).toBeCloseTo(-0.02, 12);
  });

  test('follows the boat’s own line when it is trimmed: bow up, the stern is down and to the right', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
        (trim, metres) => {
          const scale = { perMetre: 700, trim };
          const from = { x: 12, y: 34 };
          const to = { x: from.x + 700 * metres * Math.cos(trim), y: from.y + 700 * metres * Math.sin(trim) };
          expect(alongBoat(from, to, scale)).toBeCloseTo(metres, 9);
          const { x, y } = acrossPicture(metres, scale);
          expect([x, y]).toEqual([expect.closeTo(to.x - from.x, 9), expect.closeTo(to.y - from.y, 9)]);
          // Square to it, nothing.
          const aside = { x: from.x - 50 * Math.sin(trim), y: from.y + 50 * Math.cos(trim) };
          expect(alongBoat(from, aside, scale)).toBeCloseTo(0, 9);
        },
      ),
    );
  });

  test('counts only in a picture that says its scale', () => {
    expect(scaleOf('512.5', '0.01')).toEqual({ perMetre: 512.5, trim: 0.01 });
    // A section shows nothing along the boat.
    expect(scaleOf('512.5', undefined)).toBeNull();
    for (const scale of [undefined, '', '0', '-3', 'wide']) expect(scaleOf(scale, '0')).toBeNull();
    expect(scaleOf('500', 'steep')).toBeNull();
  });

  test('of a pixel or two is a shaking hand', () => {
    expect(isDrag({ x: 10, y: 10 }, { x: 12, y: 11 })).toBe(false);
    expect(isDrag({ x: 10, y: 10 }, { x: 10, y: 16 })).toBe(true);
  });
});

test('arrow keys move by one mark of the tape, with Shift by ten, the bow to the left', () => {
  expect(marksOfKey('ArrowLeft', false)).toBe(-1);
  expect(marksOfKey('ArrowRight', true)).toBe(10);
  expect(marksOfKey('ArrowUp', false)).toBeNull();
  expect(marksOfKey('a', false)).toBeNull();
});

describe('wishes that come faster than their answers', () => {
  test('go one at a time, and of those between only the last', () => {
    const sent: number[] = [];
    const flight = oneAtATime<number>(wish => sent.push(wish));
    for (const wish of [1, 2, 3]) flight.want(wish);
    expect(sent).toEqual([1]);
    flight.answered();
    expect(sent).toEqual([1, 3]);
    flight.answered();
    expect(sent).toEqual([1, 3]);
    flight.want(4);
    expect(sent).toEqual([1, 3, 4]);
  });

  test('are forgotten at the end', () => {
    const sent: number[] = [];
    const flight = oneAtATime<number>(wish => sent.push(wish));
    flight.want(1);
    flight.want(2);
    flight.forget();
    flight.want(3);
    expect(sent).toEqual([1, 3]);
  });
});
