import { closest } from './closest.ts';
import { tradeTables } from './tradeWordTables.ts';
import type { FileUnits } from './units.ts';

const foldedTable = (table: Readonly<Record<string, string>>): ReadonlyMap<string, readonly string[]> => {
  const meanings = new Map<string, string[]>();
  for (const [meant, words] of Object.entries(table))
    for (const word of words.split('|')) meanings.set(fold(word), [...(meanings.get(fold(word)) ?? []), meant]);
  return meanings;
};

const fold = (word: string): string => word.toLowerCase().replace(/[-_\s.]+/g, '');

const keys = foldedTable(tradeTables.keys);
const words = foldedTable(tradeTables.words);

/** Of the keys that a place may still take, the one that a builder means by a word; null where none is near. */
export const keyMeant = (word: string, free: readonly string[]): string | null => meant(word, free, keys);

/** Of a few words, the one that a builder means by another; null where none is near. */
export const wordMeant = (word: string, few: readonly string[]): string | null => meant(word, few, words);

function meant(word: string, known: readonly string[], table: ReadonlyMap<string, readonly string[]>): string | null {
  const folded = fold(word);
  const same = known.find(each => fold(each) === folded);
  return same ?? table.get(folded)?.find(each => known.includes(each)) ?? closest(word, known);
}

/** The materials of the handbook that a builder may mean by a shop name that stands for several. */
export const materialsMeant = (name: string): readonly string[] =>
  Object.entries(tradeTables.materials).find(([word]) => fold(word) === fold(name))?.[1] ?? [];

const LENGTHS = ['mm', 'cm', 'm', 'in', 'ft'] as const;
const MASSES = ['g', 'kg', 'oz', 'lb'] as const;

/** The units that a word or two stand for: `inches`, `metric`, `mm and g`; null where nobody can tell. */
export function unitsMeant(said: string): FileUnits | null {
  const parts = said.split(/[\s,;&/+]+|\band\b/i).filter(part => part !== '');
  const found = <T extends string>(few: readonly T[]): T | null =>
    parts.map(part => few.find(each => each === wordMeant(part, few)) ?? null).find(each => each !== null) ?? null;
  const length = found(LENGTHS);
  const mass = found(MASSES);
  if (length === null && mass === null) return null;
  return { length: length ?? (mass === 'oz' || mass === 'lb' ? 'in' : 'mm'), mass: mass ?? massBeside(length!) };
}

/** The unit that goes with a length on the bench. */
const massBeside = (length: FileUnits['length']): FileUnits['mass'] =>
  length === 'ft' ? 'lb' : length === 'in' ? 'oz' : length === 'm' ? 'kg' : 'g';
