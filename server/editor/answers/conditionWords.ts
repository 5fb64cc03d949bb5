import type { Analysis } from '../../core/analysis/analysis.ts';
import { offWaterline } from '../../core/figures/offWaterline.ts';
import { heelWords, lengthText, massText, percentText, trimWords } from '../../core/wording/numbers.ts';

/** How the boat lies, in words to choose from; or what keeps it from lying so. */
export type Lie =
  | { readonly lies: true; readonly trim: string; readonly heel: string; readonly water: string }
  | { readonly lies: false; readonly why: string };

/** On the surface, trim and heel off the painted waterline; `water` is the draft at half length. */
export function surfacedLie({ boat, surfaced }: Analysis): Lie {
  switch (surfaced.status) {
    case 'afloat': {
      const off = offWaterline(boat, surfaced);
      const water = `draft ${lengthText(surfaced.attitude.draft, boat.units)}`;
      return { lies: true, trim: trimWords(off.trim), heel: heelWords(off.heel), water };
    }
    case 'sinks':
      return without(`sinks, ${massText(surfaced.excess, boat.units)} too heavy`);
    case 'overturns':
      return without('turns over');
    case 'unsettled':
    case 'empty':
      return without('not known');
  }
}

/** Under water; `water` is how full the tank is. */
export function submergedLie({ boat, submerged }: Analysis): Lie {
  switch (submerged.status) {
    case 'neutral': {
      const trim = submerged.stable ? trimWords(submerged.trim) : 'does not stay level';
      return { lies: true, trim, heel: heelWords(submerged.heel), water: `tank ${percentText(submerged.fill)}` };
    }
    case 'heavy':
      return without(`${massText(submerged.excess, boat.units)} too heavy`);
    case 'light':
      return without(submerged.hasTank ? `${massText(submerged.lack, boat.units)} too light` : 'no tank');
    case 'unsettled':
    case 'empty':
      return without('not known');
  }
}

const without = (why: string): Lie => ({ lies: false, why });
