import type { KeyInfo } from '../../../schema/describe.ts';
import type { Path } from '../../../schema/path.ts';

/** A whole list entry to fill in, in the syntax of editor snippets. */
export interface EntrySnippet {
  readonly label: string;
  readonly detail: string;
  /** As keys below each other, the first one without indentation. */
  block(indent: string): string;
  /** Between braces on one line. */
  readonly flow: string;
}

type Field = readonly [key: string, stop: string];

/** A place to type in, with what could stand there. */
const stop = (number: number, text: string): string => `\${${number}:${escaped(text)}}`;
const choice = (number: number, words: readonly string[]): string =>
  `\${${number}|${words.map(word => escaped(word).replace(/[,|]/g, '\\$&')).join(',')}|}`;
const escaped = (text: string): string => text.replace(/[\\$}]/g, '\\$&');

function entry(label: string, detail: string, fields: readonly Field[]): EntrySnippet {
  const lines = fields.map(([key, text]) => `${key}: ${text}`);
  return { label, detail, block: indent => lines.join(`\n${indent}`), flow: `{ ${lines.join(', ')} }` };
}

const place = (from: number, station: string, height: string): readonly Field[] => [
  ['station', stop(from, station)],
  ['height', stop(from + 1, height)],
];

const parts: readonly EntrySnippet[] = [
  entry('part in a compartment', 'weighs; displaces nothing of its own', [
    ['name', stop(1, 'battery')],
    ['mass', stop(2, '310 g')],
    ...place(3, '260 to 340 mm', '24 mm'),
    ['in', stop(5, 'dry cylinder')],
  ]),
  entry('part in the water', 'weighs, and displaces by its form', [
    ['name', stop(1, 'rudder')],
    ['material', stop(2, 'brass')],
    ['mass', stop(3, '40 g')],
    ...place(4, '840 mm', '50 mm'),
  ]),
  entry('lead', 'a strip; what is not given follows from the mass', [
    ['name', stop(1, 'keel lead')],
    ['material', 'lead'],
    ['mass', stop(2, '120 g')],
    ...place(3, '150 to 400 mm', '3 to 9 mm'),
  ]),
  entry('foam', 'a block, weighed by the program', [
    ['name', stop(1, 'bow foam')],
    ['material', 'foam'],
    ['box', stop(2, '34 x 16 mm')],
    ...place(3, '90 to 190 mm', '66 mm'),
  ]),
];

const hullEntries: Readonly<Record<string, readonly EntrySnippet[]>> = {
  shells: [
    entry('shell', 'free-flooding: only its wall displaces', [
      ['name', stop(1, 'outer hull')],
      ['material', stop(2, 'fibreglass')],
      ['mass', stop(3, '640 g')],
      ['profile', stop(4, '[[0, 0], [60, 40], [700, 40], [860, 4]]')],
      ['height', stop(5, '52 mm')],
    ]),
  ],
  compartments: [
    entry('compartment', 'watertight: its outer form displaces', [
      ['name', stop(1, 'dry cylinder')],
      ['mass', stop(2, '410 g')],
      ['round', stop(3, '76 mm')],
      ...place(4, '200 to 680 mm', '46 mm'),
    ]),
  ],
  tanks: [
    entry('tank', 'ballast water', [
      ['name', stop(1, 'main ballast')],
      ['in', stop(2, 'dry cylinder')],
      ['round', stop(3, '70 mm')],
      ...place(4, '360 to 560 mm', '46 mm'),
      ['kind', choice(6, ['sealed', 'vented', 'piston', 'bladder'])],
    ]),
  ],
};

const bays: readonly EntrySnippet[] = [
  entry('bay', 'room where lead or foam can still go', [
    ['name', stop(1, 'keel forward')],
    ['takes', choice(2, ['lead', 'foam'])],
    ['station', stop(3, '40 to 190 mm')],
    ['offset', stop(4, '-10 to 10 mm')],
    ['height', stop(5, '2 to 10 mm')],
  ]),
];

const conditions: readonly EntrySnippet[] = [
  entry('awash', 'afloat with the tanks filled so far', [
    ['name', stop(1, 'awash')],
    ['fill', stop(2, '45 %')],
    ['limits', `{ trim: ${stop(3, '2°')}, heel: ${stop(4, '1°')}, gm: ${stop(5, '3 mm')} }`],
  ]),
  entry('lighter, afloat', 'something left ashore', [
    ['name', stop(1, 'without the long mast')],
    ['without', `[${stop(2, 'long mast')}]`],
    ['limits', `{ trim: ${stop(3, '0.5°')}, heel: ${stop(4, '1°')} }`],
  ]),
  entry('submerged otherwise', 'hanging neutral with something else aboard', [
    ['name', stop(1, 'small battery')],
    ['condition', 'submerged'],
    ['without', `[${stop(2, 'battery')}]`],
    [
      'aboard',
      `[{ name: ${stop(3, 'small battery')}, mass: ${stop(4, '210 g')}, station: ${stop(5, '280 mm')}, height: ${stop(6, '30 mm')}, in: ${stop(7, 'dry cylinder')} }]`,
    ],
    ['limits', `{ trim: ${stop(8, '1°')}, heel: ${stop(9, '1°')}, bg: ${stop(10, '5 mm')} }`],
  ]),
];

const trials: readonly EntrySnippet[] = [
  entry('surfaced trial', 'where the water stood on the hull, at rest', [
    ['date', stop(1, '2026-05-02')],
    ['condition', 'surfaced'],
    ['marks', `[{ station: ${stop(2, '60 mm')}, height: $3 }, { station: ${stop(4, '840 mm')}, height: $5 }]`],
    ['heel', stop(6, '0° ± 0.5°')],
  ]),
  entry('submerged trial', 'how full the tank was when she hung neutral, and her trim', [
    ['date', stop(1, '2026-05-02')],
    ['condition', 'submerged'],
    ['fill', stop(2, '63 % ± 3 %')],
    ['trim', stop(3, '2° ± 0.5°')],
  ]),
  entry('inclining trial', 'a weight moved athwart, and the heel that it made', [
    ['date', stop(1, '2026-05-02')],
    ['condition', 'inclining'],
    ['mass', stop(2, '50 g')],
    ['moved', stop(3, '40 mm')],
    ['heel', stop(4, '4.2° ± 0.2°')],
  ]),
  entry('boat on two scales', 'the whole boat, dry and level: its mass and where it balances', [
    ['date', stop(1, '2026-05-02')],
    ['condition', 'bench'],
    ['scales', `[{ station: ${stop(2, '150 mm')}, reads: $3 }, { station: ${stop(4, '700 mm')}, reads: $5 }]`],
  ]),
  entry('boat on a knife edge', 'the whole boat, dry: where it balances', [
    ['date', stop(1, '2026-05-02')],
    ['condition', 'bench'],
    ['balance', stop(2, '412 mm ± 1 mm')],
  ]),
  entry('boat hung under water', 'flooded, on two spring balances: its weight in water and where that acts', [
    ['date', stop(1, '2026-05-02')],
    ['condition', 'hung'],
    ['fill', stop(2, '100 %')],
    ['hooks', `[{ station: ${stop(3, '120 mm')}, reads: $4 }, { station: ${stop(5, '620 mm')}, reads: $6 }]`],
  ]),
];

/** Entries for the list at a path. */
export function entrySnippets(list: Path): readonly EntrySnippet[] {
  const [section, inHull] = list;
  if (list.length === 1 && section === 'payload') return parts;
  if (list.length === 1 && section === 'bays') return bays;
  if (list.length === 1 && section === 'conditions') return conditions;
  if (list.length === 1 && section === 'trials') return trials;
  return list.length === 2 && section === 'hull' ? (hullEntries[String(inHull)] ?? []) : [];
}

/** A key with its colon and a value to type over, or what stands below it. */
export function keySnippet(info: KeyInfo, path: Path, isFlow: boolean): string {
  const { key, holds, words, example } = info;
  if (words && words.length > 0) return `${key}: ${choice(1, words)}`;
  const [first] = holds === 'list' ? entrySnippets(path) : [];
  if (first) return isFlow ? `${key}: [${first.flow}]` : `${key}:\n  - ${first.block('    ')}`;
  if (example !== undefined) return `${key}: ${stop(1, example)}`;
  if (holds === 'map') return isFlow ? `${key}: { $1 }` : `${key}:\n  $0`;
  return holds === 'list' ? `${key}: [$1]` : `${key}: $0`;
}
