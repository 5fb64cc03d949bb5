import { type DocumentSymbol, SymbolKind } from 'vscode-languageserver-types';
import { type Path, pathKey } from '../../../schema/path.ts';
import type { Analysis } from '../../core/analysis/analysis.ts';
import type { Boat } from '../../core/boat/boat.ts';
import { extentOf } from '../../core/text/reading/extent.ts';
import { rangeOf } from '../../core/text/reading/rangeOf.ts';
import type { Syntax } from '../../core/text/reading/syntax.ts';
import { entriesOf, keysOf, valueAt } from '../../core/text/reading/values.ts';
import { massText, stationWords, volumeText } from '../../core/wording/numbers.ts';
import { lspRange } from './lspRange.ts';

/** Of each list and each group so many are in the outline: twice what of anything is read, and more than anybody looks for. */
const MOST = 2000;

const outlined = <T>(all: readonly T[]): readonly T[] => all.slice(0, MOST);

/** The outline of the file: its sections, and every entry with its mass and place. */
export function symbolsOf(analysis: Analysis): readonly DocumentSymbol[] {
  const details = entryDetails(analysis.boat);
  return outlined(keysOf(analysis.syntax, [])).flatMap(key => sectionSymbol(analysis, details, [key]));
}

function sectionSymbol(
  analysis: Analysis,
  details: ReadonlyMap<string, string>,
  path: Path,
): readonly DocumentSymbol[] {
  const { syntax } = analysis;
  const entries = outlined(entriesOf(syntax, path)).flatMap(entry => entrySymbol(analysis, details, entry.path));
  const isHull = path.length === 1 && path[0] === 'hull';
  const below = isHull
    ? outlined(keysOf(syntax, path)).flatMap(key => sectionSymbol(analysis, details, [...path, key]))
    : entries;
  const value = valueAt(syntax, path);
  const isPlain = typeof value === 'string' || typeof value === 'number';
  const kind = isHull || entries.length > 0 ? SymbolKind.Namespace : SymbolKind.Property;
  return symbol(analysis, path, { name: String(path.at(-1)), detail: isPlain ? String(value) : '', kind, below });
}

function entrySymbol(analysis: Analysis, details: ReadonlyMap<string, string>, path: Path): readonly DocumentSymbol[] {
  const { syntax } = analysis;
  const isTrial = path[0] === 'trials';
  const name = wordsAt(syntax, [...path, isTrial ? 'date' : 'name']);
  const detail = isTrial ? wordsAt(syntax, [...path, 'condition']) : (details.get(pathKey(path)) ?? '');
  return symbol(analysis, path, {
    name: name || `entry ${Number(path.at(-1)) + 1}`,
    detail,
    kind: SymbolKind.Object,
    below: [],
  });
}

function wordsAt(syntax: Syntax, path: Path): string {
  const value = valueAt(syntax, path);
  return typeof value === 'string' || typeof value === 'number' ? String(value).trim() : '';
}

interface Outline {
  readonly name: string;
  readonly detail: string;
  readonly kind: SymbolKind;
  readonly below: readonly DocumentSymbol[];
}

function symbol({ syntax }: Analysis, path: Path, { name, detail, kind, below }: Outline): readonly DocumentSymbol[] {
  const extent = extentOf(syntax, path);
  if (extent === null || name.trim() === '') return [];
  const mark = rangeOf(syntax, { on: 'entry', path });
  const selection = mark[0] >= extent[0] && mark[1] <= extent[1] ? mark : ([extent[0], extent[0]] as const);
  return [
    {
      name,
      detail,
      kind,
      range: lspRange(syntax, extent),
      selectionRange: lspRange(syntax, selection),
      children: [...below],
    },
  ];
}

/** By the path of its entry: what weighs has mass and station, a tank what it holds, a bay what it takes. */
function entryDetails({ shells, compartments, tanks, payload, bays, units }: Boat): ReadonlyMap<string, string> {
  const weighed = [...shells, ...compartments, ...payload].map(
    ({ path, mass, centroid }) =>
      [pathKey(path), `${massText(mass, units)}, ${stationWords(centroid[0], units)}`] as const,
  );
  const held = tanks.map(({ path, capacity }) => [pathKey(path), volumeText(capacity, units)] as const);
  const taken = bays.map(({ path, takes }) => [pathKey(path), `takes ${takes}`] as const);
  return new Map([...weighed, ...held, ...taken]);
}
