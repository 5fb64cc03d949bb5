import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Change, EntryText } from '../../server/core/findings/finding.ts';
import { applyChanges, splice } from '../../server/core/text/editing/edit.ts';
import type { TextSplice } from '../../server/core/text/reading/layout.ts';
import { readSyntax } from '../../server/core/text/reading/syntax.ts';
import { entriesOf, valueAt } from '../../server/core/text/reading/values.ts';
import { layouts } from '../helpers/layouts.ts';
import { isLong } from '../helpers/long.ts';

const splicesFor = (text: string, changes: readonly Change[]): readonly TextSplice[] => {
  const splices = applyChanges(readSyntax(text), changes);
  if (splices === null) throw new Error(`the change cannot be made in\n${text}`);
  return splices;
};

const names = fc.oneof(
  fc.constantFrom(
    'lead',
    'a: b',
    'bow # 2',
    "it's",
    '“quoted”',
    '[5',
    '{',
    'x, y',
    '- z',
    '@home',
    '%',
    '?',
    'a]',
    'null: 1',
    '*',
    '"',
    "'",
  ),
  fc.string({ minLength: 1, maxLength: 12 }).filter(name => name.trim() === name && !isReadOtherwise(name)),
);

/** Texts that YAML reads as a number, a word of its own or a collection stand as they are given. */
function isReadOtherwise(name: string): boolean {
  const value = valueAt(readSyntax(`k: ${name}`), ['k']);
  return typeof value !== 'string' || /^["']/.test(name);
}

const entries: fc.Arbitrary<EntryText> = fc
  .tuple(names, fc.boolean(), fc.boolean())
  .map(([name, hasForm, hasComment]) => ({
    fields: [['name', name], ['mass', '60 g'], ...(hasForm ? ([['outline', '[1, 2]']] as const) : [])],
    ...(hasComment ? { comment: 'worked out' } : {}),
  }));

/** What an entry should read back as. */
const plain = (entry: EntryText): Record<string, unknown> =>
  Object.fromEntries(entry.fields.map(([key, text]) => [key, text === '[1, 2]' ? [1, 2] : text]));

/** The changed text with the inserted characters taken out again. */
const withoutInsertions = (text: string, splices: readonly TextSplice[]): string => {
  let result = text;
  let shift = splices.reduce((sum, each) => sum + each.text.length, 0);
  for (const each of splices.toReversed()) {
    shift -= each.text.length;
    const start = each.start + shift;
    result = result.slice(0, start) + result.slice(start + each.text.length);
  }
  return result;
};

const runs = { numRuns: isLong ? 600 : 250 };

describe('editing', { timeout: 120_000 }, () => {
  test('generated files are read without a finding, with every entry', () => {
    fc.assert(
      fc.property(layouts, ({ text, list, entries: count }) => {
        const syntax = readSyntax(text);
        expect(syntax.findings).toEqual([]);
        expect(entriesOf(syntax, list)).toHaveLength(count);
      }),
      runs,
    );
  });

  test('an appended entry reads back as the last, all else stays: data, comments and every character', () => {
    fc.assert(
      fc.property(layouts, entries, ({ text, list }, entry) => {
        const before = readSyntax(text);
        const splices = splicesFor(text, [{ kind: 'append', path: list, entry }]);
        expect(splices.every(each => each.start === each.end)).toBe(true);
        const changed = splice(text, splices);
        expect(withoutInsertions(changed, splices)).toBe(text);
        const after = readSyntax(changed);
        expect(after.findings).toEqual([]);
        const old = entriesOf(before, list).map(item => item.value);
        expect(entriesOf(after, list).map(item => item.value)).toEqual([...old, plain(entry)]);
        const others = (value: unknown) => JSON.stringify(value, (key, inner) => (key === list.at(-1) ? null : inner));
        expect(others(valueAt(after, []))).toBe(others(valueAt(before, [])));
      }),
      runs,
    );
  });

  test('taking out an entry just appended gives the text back', () => {
    fc.assert(
      fc.property(layouts, entries, ({ text, list, entries: count }, entry) => {
        const changed = splice(text, splicesFor(text, [{ kind: 'append', path: list, entry }]));
        const back = splice(changed, splicesFor(changed, [{ kind: 'remove', path: [...list, count] }]));
        expect(back).toBe(text);
      }),
      runs,
    );
  });

  test('taking out any entry leaves the others and all else that is read', () => {
    fc.assert(
      fc.property(layouts, fc.nat(), ({ text, list, entries: count }, pick) => {
        const index = pick % count;
        const changed = splice(text, splicesFor(text, [{ kind: 'remove', path: [...list, index] }]));
        const after = readSyntax(changed);
        expect(after.findings).toEqual([]);
        const kept = entriesOf(readSyntax(text), list).filter((_, i) => i !== index);
        expect(entriesOf(after, list).map(item => item.value)).toEqual(kept.map(item => item.value));
        expect(valueAt(after, ['boat'])).toBe('Tern');
        expect(valueAt(after, ['limits'])).toEqual(valueAt(readSyntax(text), ['limits']));
      }),
      runs,
    );
  });

  test('replacing a value touches its characters only', () => {
    let hits = 0;
    fc.assert(
      fc.property(layouts, fc.nat(), ({ text, list, entries: count }, pick) => {
        const path = [...list, pick % count];
        const entry = valueAt(readSyntax(text), path) as Record<string, unknown>;
        const key = Object.keys(entry).find(each => typeof entry[each] !== 'object');
        if (key === undefined) return;
        hits += 1;
        const [only, ...more] = splicesFor(text, [
          { kind: 'replace', place: { on: 'value', path: [...path, key] }, text: '77 g' },
        ]);
        expect(more).toEqual([]);
        const written = text.slice(only!.start, only!.end);
        expect(valueAt(readSyntax(`k: ${written}`), ['k'])).toEqual(entry[key]);
        expect(valueAt(readSyntax(splice(text, [only!])), [...path, key])).toBe('77 g');
      }),
      runs,
    );
    expect(hits).toBeGreaterThan(runs.numRuns / 2);
  });

  test('a key added to an entry reads back, by insertions alone', () => {
    fc.assert(
      fc.property(layouts, fc.nat(), ({ text, list, entries: count }, pick) => {
        const path = [...list, pick % count];
        const splices = splicesFor(text, [{ kind: 'add-key', path, key: 'material', text: 'lead' }]);
        expect(splices.every(each => each.start === each.end)).toBe(true);
        const before = valueAt(readSyntax(text), path) as object;
        const after = readSyntax(splice(text, splices));
        expect(after.findings).toEqual([]);
        expect(valueAt(after, path)).toEqual({ ...before, material: 'lead' });
      }),
      runs,
    );
  });
});
