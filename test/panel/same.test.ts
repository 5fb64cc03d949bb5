import { expect, test } from 'vitest';
import { withoutSame } from '../../client/panel/same.ts';

const entry = (path: string, d: string): string =>
  `<g class="entry lead" data-path="${path}" role="img"><title>lead &lt;/g&gt;</title><path d="${d}"/></g>`;
const picture = (...entries: readonly string[]): string =>
  `<svg><g class="boat">${entries.join('')}</g><text>x</text></svg>`;

test('of entries that are shown as they are a mark is left; all else is there', () => {
  const shown = picture(entry('a', 'M0 0'), entry('b', 'M1 1'), entry('c', 'M2 2'));
  const next = picture(entry('c', 'M2 2'), entry('b', 'M1 2'), entry('d', 'M0 0'));
  expect(withoutSame(next, shown)).toBe(
    picture('<g class="entry lead" data-path="c" data-same=""/>', entry('b', 'M1 2'), entry('d', 'M0 0')),
  );
});

test('where nothing is shown, nothing is the same', () => {
  const next = picture(entry('a', 'M0 0'));
  expect(withoutSame(next, '')).toBe(next);
});
