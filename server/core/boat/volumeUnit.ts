import type { Quantity } from '../../../schema/quantity.ts';
import type { FileUnits } from '../../../schema/units.ts';

/** The unit that a volume was given in: the first of those that have one. What tanks hold is told in it throughout. */
export function volumeUnit(volumes: readonly (Quantity | undefined)[]): Pick<FileUnits, 'volume'> {
  const written = volumes.find(each => each?.unit)?.unit ?? '';
  const volume = UNITS[written];
  return volume ? { volume } : {};
}

/** Units in which water of a tank is told, by those in which people give it. */
const UNITS: Readonly<Record<string, FileUnits['volume']>> = {
  ml: 'ml',
  cm3: 'ml',
  dl: 'ml',
  l: 'l',
  in3: 'in3',
  'fl oz': 'fl oz',
};
