import type { KeyInfo } from '../../../schema/describe.ts';
import type { Path } from '../../../schema/path.ts';
import {
  braces,
  brackets,
  COMPARTMENT,
  choiceOf,
  diameter,
  type EntryMaker,
  type EntrySnippet,
  entry,
  fixed,
  type Lies,
  lying,
  named,
  ownFigure,
  pairAt,
  type SnippetBoat,
  stop,
} from './snippetFields.ts';

const parts: readonly EntryMaker[] = [
  lying(
    'part in a compartment',
    'weighs; displaces nothing of its own',
    { kind: 'part', isInside: true, station: '260 to 340 mm', height: '24 mm', half: [0, 0] },
    {
      before: [
        ['name', named('battery')],
        ['mass', stop(2, '310 g')],
      ],
      from: 3,
      after: [['in', stop(5, COMPARTMENT)]],
    },
  ),
  lying(
    'part in the water',
    'weighs, and displaces by its form',
    { kind: 'part', isInside: false, station: '840 mm', height: '50 mm', half: [0, 0] },
    {
      before: [
        ['name', named('rudder')],
        ['material', stop(2, 'brass')],
        ['mass', stop(3, '40 g')],
      ],
      from: 4,
    },
  ),
  lying(
    'lead',
    'a strip; what is not given follows from the mass',
    { kind: 'part', isInside: false, station: '150 to 400 mm', height: '3 to 9 mm', half: [0.007, 0], isFitted: true },
    {
      before: [
        ['name', named('keel lead')],
        ['material', fixed('lead')],
        ['mass', stop(2, '120 g')],
      ],
      from: 3,
    },
  ),
  lying(
    'foam',
    'a block, weighed by the program',
    { kind: 'part', isInside: false, station: '90 to 190 mm', height: '66 mm', half: [0.017, 0.008], isFitted: true },
    {
      before: [
        ['name', named('bow foam')],
        ['material', fixed('foam')],
        ['box', stop(2, '34 x 16 mm')],
      ],
      from: 3,
    },
  ),
];

const hullEntries: Readonly<Record<string, readonly EntryMaker[]>> = {
  shells: [
    entry('shell', 'free-flooding: only its wall displaces', [
      ['name', named('outer hull')],
      ['material', stop(2, 'fibreglass')],
      ['mass', stop(3, '640 g')],
      ['profile', stop(4, '[[0, 0], [40, 40], [700, 40], [860, 4]]')],
      ['height', stop(5, '40 mm', 'height')],
    ]),
  ],
  compartments: [
    lying(
      'compartment',
      'watertight: its outer form displaces',
      { kind: 'compartment', isInside: false, station: '200 to 680 mm', height: '46 mm', half: [0.038, 0.038] },
      {
        before: [
          ['name', named('dry cylinder')],
          ['mass', stop(2, '410 g')],
          ['round', stop(3, '76 mm')],
        ],
        from: 4,
      },
    ),
  ],
  tanks: [
    lying(
      'tank',
      'ballast water',
      { kind: 'tank', isInside: true, station: '360 to 560 mm', height: '46 mm', half: [0.035, 0.035] },
      {
        before: [
          ['name', named('main ballast')],
          ['in', stop(2, COMPARTMENT)],
          ['round', diameter(3, '70 mm')],
        ],
        from: 4,
        after: [['kind', choiceOf(6, ['sealed', 'vented', 'piston', 'bladder'])]],
      },
    ),
  ],
};

const BAY: Lies = {
  kind: 'bay',
  isInside: false,
  station: '40 to 190 mm',
  height: '2 to 10 mm',
  half: [0.01, 0],
  isFitted: true,
};

const bays: readonly EntryMaker[] = [
  entry(
    'bay',
    'room where lead or foam can still go',
    [
      ['name', named('keel forward')],
      ['takes', choiceOf(2, ['lead', 'foam'])],
      ['station', stop(3, BAY.station, 'station')],
      ['offset', stop(4, '-10 to 10 mm')],
      ['height', stop(5, BAY.height, 'height')],
    ],
    BAY,
  ),
];

const conditions: readonly EntryMaker[] = [
  entry('awash', 'afloat with the tanks filled so far', [
    ['name', stop(1, 'awash')],
    ['fill', stop(2, '45 %')],
    [
      'limits',
      braces([
        ['trim', stop(3, '2°')],
        ['heel', stop(4, '1°')],
        ['gm', stop(5, '3 mm')],
      ]),
    ],
  ]),
  entry('lighter, afloat', 'something left ashore', [
    ['name', stop(1, 'without the long mast')],
    ['without', brackets(stop(2, 'long mast'))],
    [
      'limits',
      braces([
        ['trim', stop(3, '0.5°')],
        ['heel', stop(4, '1°')],
      ]),
    ],
  ]),
  entry('held under by its planes', 'a little light with full tanks', [
    ['name', stop(1, 'at speed')],
    ['condition', fixed('submerged')],
    [
      'limits',
      braces([
        ['reserve', stop(2, '10 to 30 g')],
        ['trim', stop(3, '2°')],
        ['heel', stop(4, '1°')],
        ['bg', stop(5, '5 mm')],
      ]),
    ],
  ]),
  entry('submerged otherwise', 'hanging neutral with something else aboard', [
    ['name', stop(1, 'small battery')],
    ['condition', fixed('submerged')],
    ['without', brackets(stop(2, 'battery'))],
    [
      'aboard',
      brackets(
        braces([
          ['name', stop(3, 'small battery')],
          ['mass', stop(4, '210 g')],
          ['station', stop(5, '280 mm', 'station')],
          ['height', stop(6, '30 mm', 'height')],
          ['in', stop(7, COMPARTMENT)],
        ]),
      ),
    ],
    [
      'limits',
      braces([
        ['trim', stop(8, '1°')],
        ['heel', stop(9, '1°')],
        ['bg', stop(10, '5 mm')],
      ]),
    ],
  ]),
];

const trials: readonly EntryMaker[] = [
  entry('surfaced trial', 'where the water stood on the hull, at rest', [
    ['date', stop(1, '2026-05-02')],
    ['condition', fixed('surfaced')],
    ['marks', pairAt('height', [2, '60 mm'], [4, '840 mm'])],
    ['heel', stop(6, 'upright ± 0.5°')],
  ]),
  entry('submerged trial', 'how full the tank was when it hung neutral, and its trim', [
    ['date', stop(1, '2026-05-02')],
    ['condition', fixed('submerged')],
    ['fill', stop(2, '63 % ± 3 %')],
    ['trim', stop(3, '2° ± 0.5°')],
  ]),
  entry('inclining trial', 'a weight moved athwart, and the heel that it made', [
    ['date', stop(1, '2026-05-02')],
    ['condition', fixed('inclining')],
    ['mass', stop(2, '50 g')],
    ['moved', stop(3, '40 mm')],
    ['heel', stop(4, '4.2° ± 0.2°')],
  ]),
  entry('boat on two scales', 'the whole boat, dry and level: its mass and where it balances', [
    ['date', stop(1, '2026-05-02')],
    ['condition', fixed('bench')],
    ['scales', pairAt('reads', [2, '150 mm'], [4, '700 mm'])],
  ]),
  entry('boat on a knife edge', 'the whole boat, dry: where it balances', [
    ['date', stop(1, '2026-05-02')],
    ['condition', fixed('bench')],
    ['balance', stop(2, '412 mm ± 1 mm')],
  ]),
  entry('boat hung under water', 'flooded, on two spring balances: its weight in water and where that acts', [
    ['date', stop(1, '2026-05-02')],
    ['condition', fixed('hung')],
    ['fill', stop(2, '100 %')],
    ['hooks', pairAt('reads', [3, '120 mm'], [5, '620 mm'])],
  ]),
];

/** Entries for the list at a path, as they stand in a boat. */
export const entrySnippets = (list: Path, of: SnippetBoat): readonly EntrySnippet[] =>
  entriesFor(list).map(make => make(of));

function entriesFor(list: Path): readonly EntryMaker[] {
  const [section, inHull] = list;
  if (list.length === 1 && section === 'payload') return parts;
  if (list.length === 1 && section === 'bays') return bays;
  if (list.length === 1 && section === 'conditions') return conditions;
  if (list.length === 1 && section === 'trials') return trials;
  return list.length === 2 && section === 'hull' ? (hullEntries[String(inHull)] ?? []) : [];
}

/** A key with its colon and a value to type over, or what stands below it. */
export function keySnippet(info: KeyInfo, path: Path, isFlow: boolean, of: SnippetBoat): string {
  const { key, holds, words } = info;
  if (words && words.length > 0) return `${key}: ${choiceOf(1, words)()}`;
  const [first] = holds === 'list' ? entrySnippets(path, of) : [];
  if (first) return isFlow ? `${key}: [${first.flow}]` : `${key}:\n  - ${first.block('    ')}`;
  const example = ownExample(info, of);
  if (example !== undefined) return `${key}: ${stop(1, example)(of)}`;
  if (holds === 'map') return isFlow ? `${key}: { $1 }` : `${key}:\n  $0`;
  return holds === 'list' ? `${key}: [$1]` : `${key}: $0`;
}

/** An example of a key's value as it would stand in a boat. */
export function ownExample({ key, example }: KeyInfo, of: SnippetBoat): string | undefined {
  if (example === undefined) return undefined;
  const counted = of.units.origin && (key === 'station' || key === 'height') ? key : null;
  return ownFigure(key === 'in' ? COMPARTMENT : example, of, counted);
}
