import { boatText, textLines } from '../helpers/boatText.ts';

/** Long runs of one thing in every kind of place: what a pattern or a search is slow over. */

export interface HostileText {
  /** Where the run stands, and of what it is. */
  readonly where: string;
  readonly of: string;
  readonly text: string;
  /** In the middle of the run. */
  readonly at: number;
}

/** A boat with a line in its hull, and lines at its end. */
const boat = (hull: string, ...rest: readonly string[]): string =>
  boatText`
    boat: T
    hull:
      length: 900 mm
      ${hull}
    payload:
      - { name: keel, mass: 200 g, station: 400 mm, height: 2 mm }
      - { name: cell, mass: 150 g, volume: 90 ml, station: 350 mm, height: 12 mm }
  ` + textLines(rest);

const entry = (...lines: readonly string[]): string => boat('waterline: 56 mm', ...lines.map(line => `  ${line}`));
const last = (...lines: readonly string[]): string => boat('waterline: 56 mm', ...lines);

/** The kinds of place, `@` where the run goes. */
const PLACES: Readonly<Record<string, string>> = {
  'the whole text': '@',
  'a key': boat('@: 56 mm'),
  'a key between braces': entry('- { name: lead, @: 5 g }'),
  'a key without a value': entry('- { name: lead, @ }'),
  'a line of its own': boat('@'),
  'the last line': last('@'),
  'before a colon': last('a@:'),
  'before an entry': entry('@ name: lead', '  mass: 5 g'),
  'a name': last('bays:', '  - name: a@b', '  - name: a@b', '    in: a@c'),
  'a name in quotes': entry('- name: "@"', '  mass: 5 g'),
  'a name in single quotes': entry("- { name: '@', mass: 5 g }"),
  'a note': entry('- { name: lead, mass: 5 g, note: a@b }'),
  'an open quote': entry('- { name: "a@'),
  'an open bracket': last('limits: { trim: 1°, @'),
  'braces that hold nothing else': last('limits: {@}'),
  brackets: last('bays: [@]'),
  'a row of figures': boat('shells: [{ name: s, profile: [[0, 1], [@, 2]] }]'),
  'a quantity': boat('waterline: @'),
  'within a quantity': boat('waterline: 5@6 mm'),
  'a quantity in quotes': boat('waterline: "5@6 mm"'),
  'a unit': boat('waterline: 56 @'),
  'a tolerance': boat('waterline: 56 mm ± @'),
  'between two figures': boat('waterline: between 5 @ and 6@'),
  'two figures': entry('- { name: lead, mass: 5 g, station: 1 to @ mm, box: @ x 5 mm }'),
  'full size': boat('waterline: 5 @ full size'),
  'the scale': last('scale: 1:@'),
  'a material': entry('- { name: lead, mass: 5 g, material: a@ rod }'),
  'a word of a few': entry('- { name: lead, mass: 5 g, sides: @ }'),
  'a moment': last('trials:', '  - { name: a, date: 2026-05-10, since: after @ }'),
  'an axis': entry('- { name: lead, mass: 5 g, mesh: { file: a@b.stl, axes: x @ z } }'),
  'a comment': last('# @'),
  'a comment behind a value': boat('waterline: 56 mm # @'),
  'after a comma': entry('- { name: lead, @, mass: 5 g }'),
  'a text of several lines': last('note: |', '  @'),
  'a folded text': entry('- name: >', '    @', '  mass: 5 g'),
  'an anchor': last('note: &@ a', 'more: *@'),
  'a tag': last('note: !@ a'),
};

/** What the run is of. */
const PIECES: readonly string[] = [
  ...[
    ' ',
    '\t',
    '\u00a0',
    '9',
    '0',
    'a',
    'A',
    'é',
    '½',
    '°',
    '🦆',
    '.',
    ',',
    ';',
    ':',
    '-',
    '–',
    '—',
    '•',
    '_',
    '/',
    '\\',
  ],
  ...[
    '"',
    "'",
    '`',
    '“',
    '”',
    '{',
    '}',
    '[',
    ']',
    '(',
    ')',
    '#',
    '&',
    '*',
    '!',
    '|',
    '>',
    '?',
    '%',
    '@',
    '±',
    '+',
    '=',
    '~',
    '<',
  ],
  ...[
    'a ',
    '9 ',
    '9,',
    '1.',
    '1/',
    '- ',
    ': ',
    ', ',
    '# ',
    ' #',
    'a: ',
    'a, ',
    '{a',
    '[1,',
    '{}',
    '[],',
    '"a',
    '" ',
    '""',
    "''",
  ],
  ...[
    'and ',
    ' and a',
    'between ',
    'about ',
    'to ',
    '1 x ',
    '1 to ',
    '± ',
    'full ',
    'ft ',
    '1 mm ',
    'after ',
    'plus ',
    '\\n',
    '\\u',
  ],
];

/** How a run is laid out; `room`: so many characters at most on a line. */
const LAYOUTS: Readonly<Record<string, (piece: string, length: number, indent: string) => string>> = {
  'on one line': (piece, length) => piece.repeat(Math.ceil(length / piece.length)),
  'over lines': (piece, length, indent) => {
    const line = piece.repeat(Math.ceil(40 / piece.length));
    return Array.from({ length: Math.ceil(length / line.length) }, () => line).join(`\n${indent}`);
  },
  'a line each': (piece, length, indent) =>
    Array.from({ length: Math.ceil(length / (piece.length + indent.length + 1)) }, () => piece).join(`\n${indent}`),
};

/** Every place with every run in every layout, each `step`th of them. */
export function* hostileTexts(length: number, step: number): Generator<HostileText> {
  let count = 0;
  for (const [place, around] of Object.entries(PLACES))
    for (const piece of PIECES)
      for (const [layout, lay] of Object.entries(LAYOUTS)) {
        if (count % step === 0) yield hostileText({ place, around, piece, layout, lay }, length);
        count += 1;
      }
}

interface Parts {
  readonly place: string;
  readonly around: string;
  readonly piece: string;
  readonly layout: string;
  readonly lay: (piece: string, length: number, indent: string) => string;
}

function hostileText({ place, around, piece, layout, lay }: Parts, length: number): HostileText {
  const start = around.indexOf('@');
  const line = around.slice(around.lastIndexOf('\n', start) + 1, start);
  const indent = ' '.repeat(/^[ -]*/.exec(line)![0].length + 2);
  const run = lay(piece, length, indent);
  return {
    where: place,
    of: `${JSON.stringify(piece)} ${layout}`,
    text: around.replaceAll('@', () => run),
    at: start + (run.length >> 1),
  };
}
