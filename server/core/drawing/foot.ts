import type { FileUnits } from '../../../schema/units.ts';
import { centresInset, type PlacedCentre, type Ways } from './centresInset.ts';
import { type LegendKey, legend } from './legend.ts';
import { type Markup, together } from './markup.ts';

interface Foot {
  readonly width: number;
  readonly top: number;
  readonly keys: readonly LegendKey[];
  /** Centres that the picture itself cannot tell apart. */
  readonly close: readonly PlacedCentre[];
  readonly ways: Ways;
  /** Of the picture, user units per m. */
  readonly scale: number;
  readonly units: FileUnits;
}

const MARGIN = 12;
/** A legend narrower than this goes under the inset. */
const LEAST_LEGEND = 240;

/** What stands under a drawing: close centres enlarged, and what the signs mean beside or below them. */
export function pictureFoot({ width, top, keys, close, ways, scale, units }: Foot): {
  readonly markup: Markup;
  readonly height: number;
} {
  const inset = centresInset(close, [MARGIN, top], scale, { units, ways });
  if (!inset) return legend({ left: MARGIN, right: width, top }, keys);
  const isBeside = width - inset.width - 2 * MARGIN >= LEAST_LEGEND;
  const words = legend(
    isBeside
      ? { left: 2 * MARGIN + inset.width, right: width, top }
      : { left: MARGIN, right: width, top: top + inset.height + 8 },
    keys,
  );
  return {
    markup: together([inset.markup, words.markup]),
    height: isBeside ? Math.max(inset.height, words.height) : inset.height + 8 + words.height,
  };
}
