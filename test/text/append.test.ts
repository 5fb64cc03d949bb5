import { describe, expect, test } from 'vitest';
import type { Path } from '../../schema/path.ts';
import type { Change, EntryText } from '../../server/core/findings/finding.ts';
import { applyChanges, splice } from '../../server/core/text/editing/edit.ts';
import { readSyntax } from '../../server/core/text/reading/syntax.ts';
import { boatText } from '../helpers/boatText.ts';

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
      boatText`
        payload:
          - name: a
            mass: 1 g
        bays: []
      `,
      ['payload'],
      boatText`
        payload:
          - name: a
            mass: 1 g
          - name: lead
            mass: 60 g
        bays: []
      `,
    ],
    [
      'with a comment',
      boatText`
        payload:
          - name: a
      `,
      ['payload'],
      boatText`
        payload:
          - name: a
          - name: lead  # worked out
            mass: 60 g
      `,
      noted,
    ],
    [
      'in the column of the key',
      boatText`
        payload:
        - name: a
        bays: []
      `,
      ['payload'],
      boatText`
        payload:
        - name: a
        - name: lead
          mass: 60 g
        bays: []
      `,
    ],
    [
      'with a wide dash',
      boatText`
        payload:
            -   name: a
                mass: 1
      `,
      ['payload'],
      boatText`
        payload:
            -   name: a
                mass: 1
            -   name: lead
                mass: 60 g
      `,
    ],
    [
      'with the dash on a line of its own',
      boatText`
        payload:
          -
            name: a
      `,
      ['payload'],
      boatText`
        payload:
          -
            name: a
          -
            name: lead
            mass: 60 g
      `,
    ],
    [
      'between braces',
      boatText`
        bays:
          - { name: a }
      `,
      ['bays'],
      boatText`
        bays:
          - { name: a }
          - { name: lead, mass: 60 g }
      `,
    ],
    [
      'between tight braces, with a comment',
      boatText`
        bays:
        - {name: a}
      `,
      ['bays'],
      boatText`
        bays:
        - {name: a}
        - {name: lead, mass: 60 g}  # worked out
      `,
      noted,
    ],
    [
      'after the comment on its line, before the comments below',
      boatText`
        payload:
          - name: a # light
          # end of the list

        bays: []
      `,
      ['payload'],
      boatText`
        payload:
          - name: a # light
          - name: lead
            mass: 60 g
          # end of the list

        bays: []
      `,
    ],
    [
      'after nested values',
      boatText`
        payload:
          - name: a
            balance:
              station: 3 # here
        bays: []
      `,
      ['payload'],
      boatText`
        payload:
          - name: a
            balance:
              station: 3 # here
          - name: lead
            mass: 60 g
        bays: []
      `,
    ],
    [
      'after a block of text',
      boatText`
        payload:
          - note: |
              two

              lines

        bays: []
      `,
      ['payload'],
      boatText`
        payload:
          - note: |
              two

              lines
          - name: lead
            mass: 60 g

        bays: []
      `,
    ],
    [
      'after a block of text that keeps its blank lines',
      boatText`
        payload:
          - note: |+
              two

        bays: []
      `,
      ['payload'],
      boatText`
        payload:
          - note: |+
              two

          - name: lead
            mass: 60 g
        bays: []
      `,
    ],
    [
      'without a last line break',
      boatText`
        payload:
          - name: a`,
      ['payload'],
      boatText`
        payload:
          - name: a
          - name: lead
            mass: 60 g`,
    ],
    [
      'with CR LF',
      boatText`
        payload:\r
          - name: a\r
        bays: []\r
      `,
      ['payload'],
      boatText`
        payload:\r
          - name: a\r
          - name: lead\r
            mass: 60 g\r
        bays: []\r
      `,
    ],
    [
      'in a list inside a section',
      boatText`
        hull:
          tanks:
            - name: a
          length: 9
      `,
      ['hull', 'tanks'],
      boatText`
        hull:
          tanks:
            - name: a
            - name: lead
              mass: 60 g
          length: 9
      `,
    ],
    [
      'after an entry that is half typed',
      boatText`
        payload:
          - name: a
            mass:3 g
        bays: []
      `,
      ['payload'],
      boatText`
        payload:
          - name: a
            mass:3 g
          - name: lead
            mass: 60 g
        bays: []
      `,
    ],
    [
      'after an empty entry',
      boatText`
        payload:
          - name: a
          -
        bays: []
      `,
      ['payload'],
      boatText`
        payload:
          - name: a
          -
          - name: lead
            mass: 60 g
        bays: []
      `,
    ],
    [
      'in brackets on one line',
      'bays: [ {name: a}, {name: b} ] # two',
      ['bays'],
      'bays: [ {name: a}, {name: b}, {name: lead, mass: 60 g} ] # two',
    ],
    [
      'in brackets with a trailing comma',
      'bays: [{ name: a },]',
      ['bays'],
      'bays: [{ name: a }, { name: lead, mass: 60 g },]',
    ],
    [
      'in brackets over several lines',
      boatText`
        bays: [
          { name: a }, # one
          { name: b } # two
        ]
      `,
      ['bays'],
      boatText`
        bays: [
          { name: a }, # one
          { name: b }, # two
          { name: lead, mass: 60 g }  # worked out
        ]
      `,
      noted,
    ],
    [
      'in brackets over several lines, each with a comma',
      boatText`
        bays: [
          { name: a }, # one
        ]
      `,
      ['bays'],
      boatText`
        bays: [
          { name: a }, # one
          { name: lead, mass: 60 g },
        ]
      `,
    ],
    [
      'in brackets closed on the last line',
      boatText`
        bays: [ { name: a },
                { name: b } ]
      `,
      ['bays'],
      boatText`
        bays: [ { name: a },
                { name: b },
                { name: lead, mass: 60 g } ]
      `,
      noted,
    ],
    [
      'to a list that is empty',
      boatText`
        payload: # none yet
        bays: []
      `,
      ['payload'],
      boatText`
        payload: # none yet
          - name: lead
            mass: 60 g
        bays: []
      `,
    ],
    [
      'to a list of nothing in brackets',
      boatText`
        payload: [] # none yet
        boat: T
      `,
      ['payload'],
      boatText`
        payload: # none yet
          - name: lead
            mass: 60 g
        boat: T
      `,
    ],
    [
      'to nothing in brackets over two lines',
      boatText`
        payload: [
        ]
        boat: T
      `,
      ['payload'],
      boatText`
        payload: [{ name: lead, mass: 60 g }
        ]
        boat: T
      `,
    ],
    [
      'to a list that says null',
      boatText`
        payload: ~
        boat: T
      `,
      ['payload'],
      boatText`
        payload:
          - name: lead
            mass: 60 g
        boat: T
      `,
    ],
    [
      'to a missing list, in the style of the others',
      boatText`
        boat: T
        bays:
        -   name: a
      `,
      ['payload'],
      boatText`
        boat: T
        bays:
        -   name: a
        payload:
        -   name: lead
            mass: 60 g
      `,
    ],
    [
      'to a missing list, apart by blank lines as the others',
      boatText`
        boat: T

        hull:
            length: 9`,
      ['payload'],
      boatText`
        boat: T

        hull:
            length: 9

        payload:
            - name: lead
              mass: 60 g`,
    ],
    [
      'to a missing list inside a section',
      boatText`
        hull:
          length: 9
        # end
      `,
      ['hull', 'tanks'],
      boatText`
        hull:
          length: 9
          tanks:
            - name: lead
              mass: 60 g
        # end
      `,
    ],
    [
      'to a missing list in a missing section',
      boatText`
        boat: T
      `,
      ['hull', 'tanks'],
      boatText`
        boat: T
        hull:
          tanks:
            - name: lead
              mass: 60 g
      `,
    ],
    [
      'to a missing list in a section between braces',
      'hull: { length: 9 }',
      ['hull', 'tanks'],
      'hull: { length: 9, tanks: [{ name: lead, mass: 60 g }] }',
    ],
    [
      'to an empty list in a section between braces',
      'hull: { tanks: [], length: 9 }',
      ['hull', 'tanks'],
      'hull: { tanks: [{ name: lead, mass: 60 g }], length: 9 }',
    ],
    [
      'to an empty file',
      boatText`
        # mine
      `,
      ['payload'],
      boatText`
        # mine
        payload:
          - name: lead
            mass: 60 g
      `,
    ],
    [
      'quoting what needs it',
      boatText`
        payload:
          - name: a
      `,
      ['payload'],
      boatText`
        payload:
          - name: a
          - name: "a: b #1"
            form: [1, 2]
            note: it's
            more: "# a"
      `,
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
      boatText`
        bays:
          - { name: a }
      `,
      ['bays'],
      boatText`
        bays:
          - { name: a }
          - { name: "a, b", note: "x}", section: 12 x 6 mm }
      `,
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
    expect(
      edited(
        boatText`
          boat: T
        `,
        append(['payload']),
        append(['payload'], foam),
      ),
    ).toBe(
      boatText`
        boat: T
        payload:
          - name: lead
            mass: 60 g
          - name: foam
      `,
    );
    expect(edited('bays: [{ name: a }]', append(['bays']), append(['bays'], foam))).toBe(
      'bays: [{ name: a }, { name: lead, mass: 60 g }, { name: foam }]',
    );
  });

  test('in place of the last entry', () => {
    expect(
      edited(
        boatText`
          payload:
            - name: a
            - name: b`,
        { kind: 'remove', path: ['payload', 1] },
        append(['payload']),
      ),
    ).toBe(boatText`
      payload:
        - name: a
        - name: lead
          mass: 60 g`);
    expect(
      edited(
        boatText`
          payload:
            - name: b
          x: 1
        `,
        { kind: 'remove', path: ['payload', 0] },
        append(['payload']),
      ),
    ).toBe(
      boatText`
        payload:
          - name: lead
            mass: 60 g
        x: 1
      `,
    );
  });

  test('not where no list can be', () => {
    expect(edited('payload: 5', append(['payload']))).toBeNull();
    expect(
      edited(
        boatText`
          payload:
            a: 1
        `,
        append(['payload']),
      ),
    ).toBeNull();
    expect(
      edited(
        boatText`
          a: &a []
          payload: *a
        `,
        append(['payload']),
      ),
    ).toBeNull();
    expect(edited('- a', append(['payload']))).toBeNull();
    expect(edited('payload: [ { name: a }', append(['payload']))).toBeNull();
    expect(edited('['.repeat(500), append(['payload']))).toBeNull();
  });
});
