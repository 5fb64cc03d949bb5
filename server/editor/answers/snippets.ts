import type { KeyInfo } from '../../../schema/describe.ts';
import type { Path } from '../../../schema/path.ts';
import { type Counted, countedAt } from '../../../schema/places.ts';
import type { FileUnits } from '../../../schema/units.ts';
import { quoteScalar } from '../../core/text/reading/quoteScalar.ts';
import { massText, tapeText } from '../../core/wording/numbers.ts';

/** A whole list entry to fill in, in the syntax of editor snippets. */
export interface EntrySnippet {
  readonly label: string;
  readonly detail: string;
  /** As keys below each other, the first one without indentation. */
  block(indent: string): string;
  /** Between braces on one line. */
  readonly flow: string;
}

/** The boat that an entry is for: its figures are written as its own are. */
export interface SnippetBoat {
  readonly units: FileUnits;
  /** Of the hull, m; zero where it has none yet. */
  readonly length: number;
  /** The name of the compartment that a new thing most likely lies in. */
  readonly compartment: string;
}

/** A field of an entry, as it stands in a boat. */
type Field = readonly [key: string, stop: (of: SnippetBoat) => string];

/** A place to type in, with what could stand there, given for a boat of 900 mm in mm and g. */
const stop =
  (number: number, text: string, counted: Counted | null = null) =>
  (of: SnippetBoat): string =>
    `\${${number}:${escaped(ownFigure(text, of, counted))}}`;
const fixed = (text: string) => (): string => text;
const LENGTH_MEANT = 0.9;

/** A figure in the units of a boat; a station at the same share of its length, places as the file counts them. */
function ownFigure(text: string, { units, length, compartment }: SnippetBoat, counted: Counted | null): string {
  if (text === COMPARTMENT) return quoteScalar(compartment, true);
  const [, first, joint, second, unit] = /^(-?[\d.]+)(?:( to | x )(-?[\d.]+))? (mm|g)$/.exec(text) ?? [];
  if (first === undefined) return text;
  const by = counted === 'station' && length > 0 ? length / LENGTH_MEANT : 1;
  const at = (figure: string): number =>
    counted ? countedAt((Number(figure) / 1000) * by, counted, units) : Number(figure) / 1000;
  const written = (metres: number): string => (unit === 'g' ? massText(metres, units) : tapeText(metres, units));
  if (second === undefined || joint === undefined) return written(at(first));
  const ends = [at(first), at(second)] as const;
  const [a, b] = joint === ' to ' ? [Math.min(...ends), Math.max(...ends)] : ends;
  return `${written(a).replace(/ [^ \d]+$/, '')}${joint}${written(b)}`;
}

/** Stands for the name of a compartment. */
const COMPARTMENT = 'COMPARTMENT';
const choice = (number: number, words: readonly string[]) => (): string =>
  `\${${number}|${words.map(word => escaped(word).replace(/[,|]/g, '\\$&')).join(',')}|}`;
const escaped = (text: string): string => text.replace(/[\\$}]/g, '\\$&');

/** Keys between braces, and one thing between brackets. */
const braces =
  (fields: readonly Field[]) =>
  (of: SnippetBoat): string =>
    `{ ${fields.map(([key, text]) => `${key}: ${text(of)}`).join(', ')} }`;
const brackets =
  (item: Field[1]) =>
  (of: SnippetBoat): string =>
    `[${item(of)}]`;

const entry =
  (label: string, detail: string, fields: readonly Field[]) =>
  (of: SnippetBoat): EntrySnippet => {
    const lines = fields.map(([key, text]) => `${key}: ${text(of)}`);
    return { label, detail, block: indent => lines.join(`\n${indent}`), flow: `{ ${lines.join(', ')} }` };
  };

type Entry = ReturnType<typeof entry>;

const place = (from: number, station: string, height: string): readonly Field[] => [
  ['station', stop(from, station, 'station')],
  ['height', stop(from + 1, height, 'height')],
];

/** A reading at two stations, fore and aft. */
const pairAt =
  (key: string, ...ends: readonly (readonly [number: number, station: string])[]) =>
  (of: SnippetBoat): string =>
    `[${ends.map(([at, station]) => `{ station: ${stop(at, station, 'station')(of)}, ${key}: $${at + 1} }`).join(', ')}]`;

const parts: readonly Entry[] = [
  entry('part in a compartment', 'weighs; displaces nothing of its own', [
    ['name', stop(1, 'battery')],
    ['mass', stop(2, '310 g')],
    ...place(3, '260 to 340 mm', '24 mm'),
    ['in', stop(5, COMPARTMENT)],
  ]),
  entry('part in the water', 'weighs, and displaces by its form', [
    ['name', stop(1, 'rudder')],
    ['material', stop(2, 'brass')],
    ['mass', stop(3, '40 g')],
    ...place(4, '840 mm', '50 mm'),
  ]),
  entry('lead', 'a strip; what is not given follows from the mass', [
    ['name', stop(1, 'keel lead')],
    ['material', fixed('lead')],
    ['mass', stop(2, '120 g')],
    ...place(3, '150 to 400 mm', '3 to 9 mm'),
  ]),
  entry('foam', 'a block, weighed by the program', [
    ['name', stop(1, 'bow foam')],
    ['material', fixed('foam')],
    ['box', stop(2, '34 x 16 mm')],
    ...place(3, '90 to 190 mm', '66 mm'),
  ]),
];

const hullEntries: Readonly<Record<string, readonly Entry[]>> = {
  shells: [
    entry('shell', 'free-flooding: only its wall displaces', [
      ['name', stop(1, 'outer hull')],
      ['material', stop(2, 'fibreglass')],
      ['mass', stop(3, '640 g')],
      ['profile', stop(4, '[[0, 0], [40, 40], [700, 40], [860, 4]]')],
      ['height', stop(5, '40 mm', 'height')],
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
      ['in', stop(2, COMPARTMENT)],
      ['round', stop(3, '70 mm')],
      ...place(4, '360 to 560 mm', '46 mm'),
      ['kind', choice(6, ['sealed', 'vented', 'piston', 'bladder'])],
    ]),
  ],
};

const bays: readonly Entry[] = [
  entry('bay', 'room where lead or foam can still go', [
    ['name', stop(1, 'keel forward')],
    ['takes', choice(2, ['lead', 'foam'])],
    ['station', stop(3, '40 to 190 mm', 'station')],
    ['offset', stop(4, '-10 to 10 mm')],
    ['height', stop(5, '2 to 10 mm', 'height')],
  ]),
];

const conditions: readonly Entry[] = [
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

const trials: readonly Entry[] = [
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

function entriesFor(list: Path): readonly Entry[] {
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
  if (words && words.length > 0) return `${key}: ${choice(1, words)()}`;
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
