import { inOtherWater } from '../analysis/analyse.ts';
import type { Analysis } from '../analysis/analysis.ts';
import { waterOfKind } from '../boat/readWater.ts';
import { lengthText, massText, percentText, trimWords } from '../wording/numbers.ts';
import type { Row } from './rows.ts';

/** Densities closer than this are the same water, kg/m3. */
const SAME_WATER = 1;

/** What the boat does in fresh and in sea water where that is not the water of the file. */
export const otherWaterRows = (analysis: Analysis): readonly Row[] =>
  (['fresh', 'sea'] as const).flatMap((kind): readonly Row[] => {
    const water = waterOfKind(kind, analysis.boat.water.temperature);
    if (Math.abs(water.density - analysis.boat.water.density) < SAME_WATER) return [];
    return [{ name: water.words, value: changeWords(analysis, inOtherWater(analysis, water)) }];
  });

function changeWords(before: Analysis, after: Analysis): string {
  const { units } = before.boat;
  const words: string[] = [];
  if (before.surfaced.status === 'afloat' && after.surfaced.status === 'afloat') {
    const rise = before.surfaced.attitude.draft - after.surfaced.attitude.draft;
    words.push(`floats ${lengthText(Math.abs(rise), units)} ${rise > 0 ? 'higher' : 'deeper'}`);
    const held = before.surfaced.displacement * (after.boat.water.density / before.boat.water.density - 1);
    const lead = Math.abs(held) / (1 - after.boat.water.density / before.boat.stock.lead.density);
    words.push(`${massText(lead, units)} of lead ${held > 0 ? 'more' : 'less'}, in the water, would hold its draft`);
  }
  if (after.submerged.status === 'neutral') {
    if (after.submerged.heldDown !== null)
      words.push(`leaves ${massText(after.submerged.heldDown, units)} to hold down`);
    else words.push(`hangs neutral at ${percentText(after.submerged.fill)}, ${trimWords(after.submerged.trim)}`);
  } else if (after.submerged.status === 'light' && after.submerged.hasTank) {
    words.push(`cannot submerge: ${massText(after.submerged.lack, units)} too light with full tanks`);
  } else if (after.submerged.status === 'heavy') {
    words.push(`is ${massText(after.submerged.excess, units)} too heavy to hang neutral`);
  }
  return words.join('; ');
}
