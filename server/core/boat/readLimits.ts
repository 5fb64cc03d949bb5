import type { StockEntry } from '../../../schema/bays.ts';
import { DEFAULT_LIMITS, type LimitsEntry } from '../../../schema/limits.ts';
import { findMaterial } from '../../../schema/materials.ts';
import type { Limits, Stock, StockMaterial } from './boat.ts';
import type { StockDensities } from './density.ts';

/** The limits of the file, with the defaults for what it leaves out. */
export function readLimits(entry: LimitsEntry | null): Limits {
  const { surfaced, submerged, transit } = DEFAULT_LIMITS;
  return {
    surfaced: {
      trim: entry?.trim?.surfaced?.value ?? surfaced.trim,
      heel: entry?.heel?.surfaced?.value ?? surfaced.heel,
      draft: entry?.draft?.value ?? surfaced.draft,
      gm: entry?.gm?.value ?? surfaced.gm,
    },
    submerged: {
      trim: entry?.trim?.submerged?.value ?? submerged.trim,
      heel: entry?.heel?.submerged?.value ?? submerged.heel,
      bg: entry?.bg?.value ?? submerged.bg,
      fill: entry?.fill ? [entry.fill.from, entry.fill.to] : submerged.fill,
      reserve: entry?.reserve ? [entry.reserve.from, entry.reserve.to] : null,
    },
    transit: {
      trim: entry?.trim?.transit?.value ?? transit.trim,
      heel: entry?.heel?.transit?.value ?? transit.heel,
    },
  };
}

/** Densities that the file gives for its stock. */
export const stockDensities = (entry: StockEntry | null): StockDensities => ({
  lead: entry?.lead?.density?.value ?? null,
  foam: entry?.foam?.density?.value ?? null,
  shot: entry?.lead?.shot ? (entry.lead.shot.density?.value ?? null) : null,
});

const SHOT = findMaterial('lead shot')!;

/** What corrections are cut from; handbook lead and foam in any cross-section where the file says nothing. */
export function readStock(entry: StockEntry | null): Stock {
  const of = (key: 'lead' | 'foam'): StockMaterial => {
    const stock = entry?.[key];
    return {
      density: stock?.density?.value ?? findMaterial(key)!.density,
      strip: stock?.strip ? [stock.strip.first, stock.strip.second] : null,
      pieces: stock?.pieces?.map(piece => piece.value) ?? [],
      shot: key === 'lead' && entry?.lead?.shot ? (entry.lead.shot.density?.value ?? SHOT.poured!.density) : null,
    };
  };
  return { lead: of('lead'), foam: of('foam') };
}
