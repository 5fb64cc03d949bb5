import { describe, expect, test } from 'vitest';
import type { Path } from '../../schema/path.ts';
import type { Change, EntryText } from '../../server/core/findings/finding.ts';
import { applyChanges, splice } from '../../server/core/text/editing/edit.ts';
import { readSyntax } from '../../server/core/text/reading/syntax.ts';

const edited = (text: string, ...changes: readonly Change[]): string | null => {
  const splices = applyChanges(readSyntax(text), changes);
  return splices && splice(text, splices);
};

const lead: EntryText = {
  fields: [
    ['name', 'lead'],
    ['mass', '60 g'],
  ],
};
const noted: EntryText = { ...lead, comment: 'worked out' };
const append = (path: Path, entry: EntryText = lead): Change => ({ kind: 'append', path, entry });

describe('append', () => {
  type Case = readonly [name: string, before: string, path: Path, after: string, entry?: EntryText];
  const cases: readonly Case[] = [
    [
      'below a block entry',
      'payload:\n  - name: a\n    mass: 1 g\nbays: []\n',
      ['payload'],
      'payload:\n  - name: a\n    mass: 1 g\n  - name: lead\n    mass: 60 g\nbays: []\n',
    ],
    [
      'with a comment',
      'payload:\n  - name: a\n',
      ['payload'],
      'payload:\n  - name: a\n  - name: lead  # worked out\n    mass: 60 g\n',
      noted,
    ],
    [
      'in the column of the key',
      'payload:\n- name: a\nbays: []\n',
      ['payload'],
      'payload:\n- name: a\n- name: lead\n  mass: 60 g\nbays: []\n',
    ],
    [
      'with a wide dash',
      'payload:\n    -   name: a\n        mass: 1\n',
      ['payload'],
      'payload:\n    -   name: a\n        mass: 1\n    -   name: lead\n        mass: 60 g\n',
    ],
    [
      'with the dash on a line of its own',
      'payload:\n  -\n    name: a\n',
      ['payload'],
      'payload:\n  -\n    name: a\n  -\n    name: lead\n    mass: 60 g\n',
    ],
    [
      'between braces',
      'bays:\n  - { name: a }\n',
      ['bays'],
      'bays:\n  - { name: a }\n  - { name: lead, mass: 60 g }\n',
    ],
    [
      'between tight braces, with a comment',
      'bays:\n- {name: a}\n',
      ['bays'],
      'bays:\n- {name: a}\n- {name: lead, mass: 60 g}  # worked out\n',
      noted,
    ],
    [
      'after the comment on its line, before the comments below',
      'payload:\n  - name: a # light\n  # end of the list\n\nbays: []\n',
      ['payload'],
      'payload:\n  - name: a # light\n  - name: lead\n    mass: 60 g\n  # end of the list\n\nbays: []\n',
    ],
    [
      'after nested values',
      'payload:\n  - name: a\n    balance:\n      station: 3 # here\nbays: []\n',
      ['payload'],
      'payload:\n  - name: a\n    balance:\n      station: 3 # here\n  - name: lead\n    mass: 60 g\nbays: []\n',
    ],
    [
      'after a block of text',
      'payload:\n  - note: |\n      two\n\n      lines\n\nbays: []\n',
      ['payload'],
      'payload:\n  - note: |\n      two\n\n      lines\n  - name: lead\n    mass: 60 g\n\nbays: []\n',
    ],
    [
      'after a block of text that keeps its blank lines',
      'payload:\n  - note: |+\n      two\n\nbays: []\n',
      ['payload'],
      'payload:\n  - note: |+\n      two\n\n  - name: lead\n    mass: 60 g\nbays: []\n',
    ],
    [
      'without a last line break',
      'payload:\n  - name: a',
      ['payload'],
      'payload:\n  - name: a\n  - name: lead\n    mass: 60 g',
    ],
    [
      'with CR LF',
      'payload:\r\n  - name: a\r\nbays: []\r\n',
      ['payload'],
      'payload:\r\n  - name: a\r\n  - name: lead\r\n    mass: 60 g\r\nbays: []\r\n',
    ],
    [
      'in a list inside a section',
      'hull:\n  tanks:\n    - name: a\n  length: 9\n',
      ['hull', 'tanks'],
      'hull:\n  tanks:\n    - name: a\n    - name: lead\n      mass: 60 g\n  length: 9\n',
    ],
    [
      'after an entry that is half typed',
      'payload:\n  - name: a\n    mass:3 g\nbays: []\n',
      ['payload'],
      'payload:\n  - name: a\n    mass:3 g\n  - name: lead\n    mass: 60 g\nbays: []\n',
    ],
    [
      'after an empty entry',
      'payload:\n  - name: a\n  -\nbays: []\n',
      ['payload'],
      'payload:\n  - name: a\n  -\n  - name: lead\n    mass: 60 g\nbays: []\n',
    ],
    [
      'in brackets on one line',
      'bays: [ {name: a}, {name: b} ] # two\n',
      ['bays'],
      'bays: [ {name: a}, {name: b}, {name: lead, mass: 60 g} ] # two\n',
    ],
    [
      'in brackets with a trailing comma',
      'bays: [{ name: a },]\n',
      ['bays'],
      'bays: [{ name: a }, { name: lead, mass: 60 g },]\n',
    ],
    [
      'in brackets over several lines',
      'bays: [\n  { name: a }, # one\n  { name: b } # two\n]\n',
      ['bays'],
      'bays: [\n  { name: a }, # one\n  { name: b }, # two\n  { name: lead, mass: 60 g }  # worked out\n]\n',
      noted,
    ],
    [
      'in brackets over several lines, each with a comma',
      'bays: [\n  { name: a }, # one\n]\n',
      ['bays'],
      'bays: [\n  { name: a }, # one\n  { name: lead, mass: 60 g },\n]\n',
    ],
    [
      'in brackets closed on the last line',
      'bays: [ { name: a },\n        { name: b } ]\n',
      ['bays'],
      'bays: [ { name: a },\n        { name: b },\n        { name: lead, mass: 60 g } ]\n',
      noted,
    ],
    [
      'to a list that is empty',
      'payload: # none yet\nbays: []\n',
      ['payload'],
      'payload: # none yet\n  - name: lead\n    mass: 60 g\nbays: []\n',
    ],
    [
      'to a list of nothing in brackets',
      'payload: [] # none yet\nboat: T\n',
      ['payload'],
      'payload: # none yet\n  - name: lead\n    mass: 60 g\nboat: T\n',
    ],
    [
      'to nothing in brackets over two lines',
      'payload: [\n]\nboat: T\n',
      ['payload'],
      'payload: [{ name: lead, mass: 60 g }\n]\nboat: T\n',
    ],
    [
      'to a list that says null',
      'payload: ~\nboat: T\n',
      ['payload'],
      'payload:\n  - name: lead\n    mass: 60 g\nboat: T\n',
    ],
    [
      'to a missing list, in the style of the others',
      'boat: T\nbays:\n-   name: a\n',
      ['payload'],
      'boat: T\nbays:\n-   name: a\npayload:\n-   name: lead\n    mass: 60 g\n',
    ],
    [
      'to a missing list, apart by blank lines as the others',
      'boat: T\n\nhull:\n    length: 9',
      ['payload'],
      'boat: T\n\nhull:\n    length: 9\n\npayload:\n    - name: lead\n      mass: 60 g',
    ],
    [
      'to a missing list inside a section',
      'hull:\n  length: 9\n# end\n',
      ['hull', 'tanks'],
      'hull:\n  length: 9\n  tanks:\n    - name: lead\n      mass: 60 g\n# end\n',
    ],
    [
      'to a missing list in a missing section',
      'boat: T\n',
      ['hull', 'tanks'],
      'boat: T\nhull:\n  tanks:\n    - name: lead\n      mass: 60 g\n',
    ],
    [
      'to a missing list in a section between braces',
      'hull: { length: 9 }\n',
      ['hull', 'tanks'],
      'hull: { length: 9, tanks: [{ name: lead, mass: 60 g }] }\n',
    ],
    [
      'to an empty list in a section between braces',
      'hull: { tanks: [], length: 9 }\n',
      ['hull', 'tanks'],
      'hull: { tanks: [{ name: lead, mass: 60 g }], length: 9 }\n',
    ],
    ['to an empty file', '# mine\n', ['payload'], '# mine\npayload:\n  - name: lead\n    mass: 60 g\n'],
    [
      'quoting what needs it',
      'payload:\n  - name: a\n',
      ['payload'],
      'payload:\n  - name: a\n  - name: "a: b #1"\n    form: [1, 2]\n    note: it\'s\n    more: "# a"\n',
      {
        fields: [
          ['name', 'a: b #1'],
          ['form', '[1, 2]'],
          ['note', "it's"],
          ['more', '# a'],
        ],
      },
    ],
    [
      'quoting what needs it between braces',
      'bays:\n  - { name: a }\n',
      ['bays'],
      'bays:\n  - { name: a }\n  - { name: "a, b", note: "x}", section: 12 x 6 mm }\n',
      {
        fields: [
          ['name', 'a, b'],
          ['note', 'x}'],
          ['section', '12 x 6 mm'],
        ],
      },
    ],
  ];
  test.each(cases.map(each => [each[0], each] as const))('%s', (_name, [, before, path, after, entry]) => {
    expect(edited(before, append(path, entry))).toBe(after);
  });

  test('several entries at once, also into a list that is missing', () => {
    const foam: EntryText = { fields: [['name', 'foam']] };
    expect(edited('boat: T\n', append(['payload']), append(['payload'], foam))).toBe(
      'boat: T\npayload:\n  - name: lead\n    mass: 60 g\n  - name: foam\n',
    );
    expect(edited('bays: [{ name: a }]\n', append(['bays']), append(['bays'], foam))).toBe(
      'bays: [{ name: a }, { name: lead, mass: 60 g }, { name: foam }]\n',
    );
  });

  test('in place of the last entry', () => {
    expect(
      edited('payload:\n  - name: a\n  - name: b', { kind: 'remove', path: ['payload', 1] }, append(['payload'])),
    ).toBe('payload:\n  - name: a\n  - name: lead\n    mass: 60 g');
    expect(edited('payload:\n  - name: b\nx: 1\n', { kind: 'remove', path: ['payload', 0] }, append(['payload']))).toBe(
      'payload:\n  - name: lead\n    mass: 60 g\nx: 1\n',
    );
  });

  test('not where no list can be', () => {
    expect(edited('payload: 5\n', append(['payload']))).toBeNull();
    expect(edited('payload:\n  a: 1\n', append(['payload']))).toBeNull();
    expect(edited('a: &a []\npayload: *a\n', append(['payload']))).toBeNull();
    expect(edited('- a\n', append(['payload']))).toBeNull();
    expect(edited('payload: [ { name: a }\n', append(['payload']))).toBeNull();
    expect(edited('['.repeat(500), append(['payload']))).toBeNull();
  });
});
