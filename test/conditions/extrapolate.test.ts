import { describe, expect, it } from 'vitest';
import { extrapolate } from '../../server/core/conditions/extrapolate.ts';

describe('the next of a series', () => {
  const series = (figure: (i: number) => number, count: number) => Array.from({ length: count }, (_, i) => figure(i));
  it.each([
    ['one: the same again', series(() => 7, 1), 7],
    ['two: as much again', series(i => 3 * i - 1, 2), 5],
    ['three: a parabola', series(i => i * i - 4, 3), 5],
    ['four: a cubic', series(i => i ** 3 - 2 * i, 4), 56],
    ['none: nothing', [], 0],
  ])('%s', (_, given, next) => {
    expect(extrapolate(given)).toBe(next);
  });
});
