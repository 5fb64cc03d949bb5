import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isMapNode, isSeq, type NodePair } from '../../server/core/text/reading/nodes.ts';
import { plainPair } from '../../server/core/text/reading/plainPair.ts';
import { readWhole } from '../helpers/atOnce.ts';
import { boatText } from '../helpers/boatText.ts';
import { runsOf } from '../helpers/long.ts';

/** What the parser makes of the text of one piece; null where it finds anything to say of it. */
function byParser(text: string): NodePair | null {
  const { root, findings } = readWhole(text);
  if (findings.length > 0) return null;
  if (isMapNode(root)) return root.items.length === 1 ? root.items[0]! : null;
  if (!isSeq(root) || root.items.length !== 1) return null;
  return { key: null, value: root.items[0]!, colon: root.dashes[0] ?? null };
}

const values = fc.oneof(
  {
    arbitrary: fc.constantFrom('25.0000 g', '0 to 400 mm', '12 ± 3 mm', '-12', '007', '1.50', 'lead', 'a - b', '50 %'),
    weight: 8,
  },
  fc.constantFrom(
    '25.0000 g',
    '0 to 400 mm',
    '12 ± 3 mm',
    '-12',
    '007',
    '-0',
    '1.50',
    '5.',
    '.5',
    '+5',
    '0x1f',
    '0o17',
  ),
  fc.constantFrom('1e5', '1e5 g', 'lead', 'true', 'Null', 'yes', 'NaN', 'a - b', '- 5', '-5 mm', '- a', 'a: b', 'a:b'),
  fc.constantFrom(
    '5 g # note',
    'a#b',
    '"q"',
    "it's",
    '[1, 2]',
    '{ a: 1 }',
    '&a b',
    '*a',
    '| a',
    '50 %',
    '% 5',
    '',
    '1,5',
  ),
  fc.constantFrom(
    '9'.repeat(17),
    '2024-05-01',
    'x  y',
    'x ',
    '5 g\r',
    'α 5',
    '(a)',
    'a (b)',
    '/a',
    'keel lead, aft',
    '1:60',
  ),
  fc.string({ unit: fc.constantFrom(...'a9 .-:#,%±°+()/'), maxLength: 8 }),
);
const keys = fc.constantFrom(
  'name',
  'mass',
  'in',
  'null',
  'true',
  'a-b',
  'a-',
  'x_1',
  'k'.repeat(70),
  '5',
  'two words',
);
const indents = fc.constantFrom(0, 0, 0, 0, 0, 0, 0, 0, 1, 2);

const piece = fc.record({
  before: fc.constantFrom('', '  ', '    '),
  dash: fc.constantFrom('', '- ', '- ', '- ', '- ', '- ', '- ', '-  ', '-'),
  pairs: fc.array(
    fc.tuple(keys, values, fc.constantFrom(': ', ': ', ': ', ': ', ': ', ': ', ': ', ':', ':  '), indents),
    {
      minLength: 1,
      maxLength: 4,
    },
  ),
  after: fc.constantFrom('', '\n', '\n', '\n\n', '\n# a note\n', '\n \n'),
});

describe('a key a line, each with a word or a figure', () => {
  it('is read as the parser reads it, or left to the parser', () => {
    let read = 0;
    fc.assert(
      fc.property(piece, ({ before, dash, pairs, after }) => {
        const lines = pairs.map(
          ([key, value, colon, off], i) =>
            `${before}${i === 0 ? dash : ' '.repeat(dash.length + off)}${key}${colon}${value}`,
        );
        const text = lines.join('\n') + after;
        const found = plainPair(text);
        if (!found) return;
        read += 1;
        expect(found).toEqual(byParser(text));
      }),
      runsOf(4000, 100_000),
    );
    expect(read).toBeGreaterThan(100);
  });

  it.each([
    boatText`
      - name: battery
        mass: 420 g
        in: dry cylinder
    `,
    boatText`
      mass: 12
    `,
    `${boatText`
      length: 900 mm
    `.trimEnd()}`,
  ])('%j needs no parser', text => {
    expect(plainPair(text)).toEqual(byParser(text));
    expect(plainPair(text)).not.toBeNull();
  });
});
