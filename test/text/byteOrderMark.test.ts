import { expect, test } from 'vitest';
import { applyChanges, splice } from '../../server/core/text/editing/edit.ts';
import { analysed } from '../helpers/analysed.ts';

const MARK = '\ufeff';

/** The text after each mend that is offered for it. */
const mendedTexts = (text: string): readonly (readonly [title: string, text: string | null])[] => {
  const { syntax, file } = analysed(text);
  return file.findings
    .flatMap(({ mends = [] }) => mends)
    .map(({ title, changes }) => {
      const splices = applyChanges(syntax, changes);
      return [title, splices && splice(text, splices)];
    });
};

/** Some editors leave the mark at the head of the text; YAML does not count it to the first line (YAML 1.2.2, 5.2; from memory). */
test.each([
  ['a key without a space', 'boat:X\nhull:\n  length: 900 mm\n'],
  ['a key that is none', 'hulll:\n  length: 900 mm\n'],
  ['a tab', 'hull:\n\tlength: 900 mm\n'],
  ['a missing key', 'hull:\n  length: 900mmm\n'],
  ['an entry without a space', '-name: a\n'],
  ['a list at the head', 'payload:\n- name:a\n- mass: 3 kgg\n'],
  ['brackets', '{ boat:X, hulll: 3 }'],
])('a byte order mark changes no mend: %s', (_, text) => {
  const plain = mendedTexts(text);
  expect(plain.length).toBeGreaterThan(0);
  expect(mendedTexts(MARK + text)).toEqual(
    plain.map(([title, after]) => [title, after === null ? null : MARK + after]),
  );
});

test('a key is added in the column of the first, behind the mark', () => {
  const text = 'boat: Tern\n';
  for (const mark of ['', MARK]) {
    const { syntax } = analysed(mark + text);
    const splices = applyChanges(syntax, [{ kind: 'add-key', path: [], key: 'scale', text: '1:60' }]);
    expect(splice(syntax.text, splices!)).toBe(`${mark}boat: Tern\nscale: 1:60\n`);
  }
});

test('what changes nothing is no edit', () => {
  const { syntax } = analysed('boat: Tern\n');
  const place = { on: 'value', path: ['boat'] } as const;
  expect(applyChanges(syntax, [{ kind: 'replace', place, text: 'Tern' }])).toBeNull();
  expect(applyChanges(syntax, [{ kind: 'replace', place, text: 'Gull' }])).toHaveLength(1);
});
