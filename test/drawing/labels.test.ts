import fc from 'fast-check';
import { expect, it } from 'vitest';
import { placeLabels } from '../../server/core/drawing/labels.ts';
import { textWidth } from '../../server/core/drawing/textWidth.ts';

const SIZE = 14;
const WIDTH = 880;

const labels = fc.array(
  fc.record({
    lines: fc.array(fc.string({ minLength: 1, maxLength: 26 }), { minLength: 1, maxLength: 2 }),
    at: fc.tuple(fc.double({ min: 60, max: 820, noNaN: true }), fc.constant(0)),
    kind: fc.constant('part'),
    of: fc.constant(null),
  }),
  { maxLength: 50 },
);

/** From where to where a label's text runs. */
const stretch = ({ pole, anchor, lines }: ReturnType<typeof placeLabels>[number]): readonly [number, number] => {
  const long = Math.max(...lines.map(line => textWidth(line, SIZE)));
  return anchor === 'start' ? [pole, pole + long] : [pole - long, pole];
};

it('no text meets another text, nor the pole of a label that stands further out', () => {
  fc.assert(
    fc.property(labels, list => {
      const placed = placeLabels(list, SIZE, WIDTH);
      expect(placed).toHaveLength(list.length);
      const faults = placed.flatMap((a, i) =>
        placed.slice(i + 1).filter(b => {
          const [[a0, a1], [b0, b1]] = [stretch(a), stretch(b)];
          if (a.row < b.row + b.lines.length && b.row < a.row + a.lines.length && a0 < b1 && b0 < a1) return true;
          const [near, far] = a.row < b.row ? [a, b] : [b, a];
          const [from, to] = stretch(near);
          return near.row < far.row && far.pole > from && far.pole < to;
        }),
      );
      expect(faults).toEqual([]);
    }),
  );
});

it('texts stay in the picture while their side has room', () => {
  const placed = placeLabels(
    ['a name of some length', 'b', 'another name of some length'].map((name, i) => ({
      lines: [name],
      at: [20 + 420 * i, 0] as const,
      kind: 'part',
      of: null,
    })),
    SIZE,
    WIDTH,
  );
  for (const label of placed) {
    const [from, to] = stretch(label);
    expect(from).toBeGreaterThanOrEqual(0);
    expect(to).toBeLessThanOrEqual(WIDTH);
  }
});
