import type { TankEntry } from '../../../schema/hull.ts';
import type { Quantity } from '../../../schema/quantity.ts';
import type { FileUnits } from '../../../schema/units.ts';
import { usualUncertainties } from '../../../schema/usualUncertainties.ts';
import { volumeText } from '../wording/numbers.ts';
import { plusMinus, sigmaText } from '../wording/withUncertainty.ts';
import { formVolumeSigma } from './formUncertainty.ts';
import { APART } from './measuredTwice.ts';
import type { Placed } from './placed.ts';
import { type Setting, tell } from './readingContext.ts';
import { volumeUnit } from './volumeUnit.ts';

/** What the jug says a tank holds, held against its form (m3) where sizes give that. */
export function checkCapacity(
  entry: TankEntry,
  capacity: Quantity,
  placed: Placed,
  byForm: number,
  setting: Setting,
): void {
  if (!placed.measured) return;
  const units: FileUnits = { ...setting.around.units, ...volumeUnit([capacity]) };
  const byJug = capacity.sigma ?? usualUncertainties.capacity.of(capacity.value);
  const bySizes = formVolumeSigma(entry, placed, byForm);
  if (Math.abs(byForm - capacity.value) <= APART * Math.hypot(byJug, bySizes)) return;
  const told = (value: number, sigma: number) => plusMinus(volumeText(value, units), sigmaText(sigma, 'volume', units));
  tell(
    setting,
    'capacity-disagrees',
    ['capacity'],
    `By the jug this tank holds ${told(capacity.value, byJug)}, by its form ${told(byForm, bySizes)}: further apart than both leave open. The jug counts. Check the sizes: those of its inside are wanted.`,
    { severity: 'warning' },
  );
}
