import { placedAt } from '../../../schema/places.ts';
import { type Dimension, type FileUnits, toSi, unitNamed } from '../../../schema/units.ts';
import { jug } from '../boat/readingUncertainties.ts';
import type { Reading } from '../boat/trial.ts';
import { DIFFERS, readingText, scoreWords, sizeText, wayOff } from '../trials/pool/readingWords.ts';
import type { PoolReading } from './day.ts';

/** What a reading should be by the file: plain data, from which the page itself tells at once how far it is from that. SI. */
export interface ByFile {
  readonly of: Reading['of'];
  readonly predicted: number;
  /** One standard uncertainty of that. */
  readonly uncertainty: number;
  /** One standard uncertainty of such a reading; of water it goes by how much is read. */
  readonly sigma: number;
}

/** How far a reading is from the file, in words. */
export interface AgainstFile {
  readonly tone: 'agrees' | 'differs' | 'slip';
  readonly words: string;
}

/** A reading as it was entered against the file; null while it is not read. */
export function againstFile(reading: PoolReading, byFile: ByFile, units: FileUnits): AgainstFile | null {
  const value = siOf(reading, units);
  if (value === null) return null;
  const { of, predicted, uncertainty } = byFile;
  const sigma = of === 'water' ? jug(value) : byFile.sigma;
  const score = (value - predicted) / Math.hypot(sigma, uncertainty);
  return { tone: toneOf(score), words: `${apartWords({ of, value }, predicted, units)} ${agreement(score)}` };
}

/** "12 mm more than by the file (67 mm)." */
export function apartWords(
  reading: { readonly of: Reading['of']; readonly value: number },
  predicted: number,
  units: FileUnits,
): string {
  const off = reading.value - predicted;
  const size = sizeText(reading, off, units);
  const byFile = readingText(reading, predicted, units);
  return /[1-9]/.test(size) ? `${size} ${wayOff(reading, off)} than by the file (${byFile}).` : 'As by the file.';
}

export const agreement = (score: number): string => `${scoreWords(score).replace(/^t/, 'T')}.`;

export const toneOf = (score: number): 'agrees' | 'differs' => (Math.abs(score) > DIFFERS ? 'differs' : 'agrees');

const DIMENSIONS: Readonly<Record<string, Dimension>> = { '°': 'angle', '%': 'fraction', ml: 'volume', in3: 'volume' };

export const unitOfReading = (name: string) => unitNamed(name, DIMENSIONS[name] ?? 'length');

/** As the boat file would be read, SI; an angle needs its side. */
function siOf({ key, size, unit, way }: PoolReading, units: FileUnits): number | null {
  const known = unitOfReading(unit);
  if (size === null || !known || (unit === '°' && way === null && size !== 0)) return null;
  const written = toSi(way === -1 ? -size : size, known);
  return key === 'marks' ? placedAt(written, 'height', units) : written;
}
