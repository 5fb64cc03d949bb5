import type { Boat } from '../../server/core/boat/boat.ts';
import { assembleBodies, emptyCache } from '../../server/core/bodies/assemble.ts';
import { floatSubmerged } from '../../server/core/conditions/submerged.ts';
import { floatSurfaced } from '../../server/core/conditions/surfaced.ts';

/** How a boat lies on the surface. Lengths m, angles rad, bow up and to starboard positive. */
export interface Afloat {
  /** At half length, above the baseline. */
  readonly draft: number;
  readonly trim: number;
  readonly heel: number;
  readonly gm: number;
}

/** How it hangs neutral under water. */
export interface Hanging {
  /** 0..1 of all tanks together. */
  readonly fill: number;
  readonly trim: number;
  readonly heel: number;
  /** B over G, tank water held still. */
  readonly bg: number;
  /** What is left of it where it is least, tank water moving. */
  readonly bgLeft: number;
  /** It stays level when set level. */
  readonly stable: boolean;
}

/** Null where it does not lie so: it sinks, falls over, cannot dive. */
export interface Floated {
  readonly afloat: Afloat | null;
  readonly hanging: Hanging | null;
}

export type Floater = (boat: Boat) => Floated;

/** Height of the water above the baseline at a station, m. */
export const waterAt = ({ draft, trim }: Afloat, station: number, length: number): number =>
  draft + (station - length / 2) * Math.tan(trim);

/** By the code under test. */
export const floatByCode: Floater = boat => {
  const bodies = assembleBodies(boat, emptyCache());
  const surfaced = floatSurfaced(bodies, boat.length);
  const submerged = floatSubmerged(bodies);
  return {
    afloat: surfaced.status === 'afloat' ? { ...surfaced.attitude, gm: surfaced.gm } : null,
    hanging:
      submerged.status === 'neutral'
        ? { ...submerged, bgLeft: Math.min(submerged.bgEffective, submerged.bgEffectiveLongitudinal) }
        : null,
  };
};

export const FIGURES = ['draft', 'trim', 'heel', 'gm', 'fill', 'underTrim', 'underHeel', 'bg'] as const;
export type Figure = (typeof FIGURES)[number];

/** A figure of a boat, SI; null where there is none. */
export function figureOf({ afloat, hanging }: Floated, figure: Figure): number | null {
  switch (figure) {
    case 'draft':
    case 'trim':
    case 'heel':
    case 'gm':
      return afloat?.[figure] ?? null;
    case 'fill':
      return hanging?.fill ?? null;
    case 'underTrim':
      return hanging?.trim ?? null;
    case 'underHeel':
      return hanging?.heel ?? null;
    case 'bg':
      return hanging?.bg ?? null;
  }
}

/** A figure as a share of its limit: past 1 it is out. Signed where there are two ways to be out. */
export interface Miss {
  readonly figure: Figure | 'floats' | 'hangs' | 'stable';
  readonly by: number;
}

/** A boat that does not float or hang at all counts as so many limits out. */
const LOST = 20;

/** All figures against the limits of the file and its painted waterline. */
export function missesOf({ afloat, hanging }: Floated, { limits, waterline, length }: Boat): readonly Miss[] {
  const { surfaced, submerged } = limits;
  const painted = { bow: waterline?.bow ?? 0, stern: waterline?.stern ?? 0 };
  const level = Math.atan((painted.stern - painted.bow) / length);
  const [low, high] = submerged.fill;
  return [
    ...(afloat
      ? ([
          { figure: 'draft', by: (afloat.draft - (painted.bow + painted.stern) / 2) / surfaced.draft },
          { figure: 'trim', by: (afloat.trim - level) / surfaced.trim },
          { figure: 'heel', by: afloat.heel / surfaced.heel },
          { figure: 'gm', by: atLeast(afloat.gm, surfaced.gm) },
        ] as const)
      : ([{ figure: 'floats', by: LOST }] as const)),
    ...(hanging
      ? ([
          { figure: 'fill', by: (hanging.fill - (low + high) / 2) / ((high - low) / 2) },
          { figure: 'underTrim', by: hanging.trim / submerged.trim },
          { figure: 'underHeel', by: hanging.heel / submerged.heel },
          { figure: 'bg', by: atLeast(hanging.bgLeft, submerged.bg) },
          ...(hanging.stable ? [] : ([{ figure: 'stable', by: LOST }] as const)),
        ] as const)
      : ([{ figure: 'hangs', by: LOST }] as const)),
  ];
}

/** 1 at the least that it may be, 0 at twice as much, more than 1 below. */
const atLeast = (value: number, least: number): number => Math.max(0, 2 - value / least);

export const isInTrim = (misses: readonly Miss[]): boolean => misses.every(({ by }) => Math.abs(by) <= 1);

/** How far it is out altogether, in limits; what is within does not count. */
export const wayOut = (misses: readonly Miss[]): number =>
  Math.hypot(...misses.map(({ by }) => Math.min(LOST, Math.max(0, Math.abs(by) - 1))));

/** A correction that makes it out by so much more has left it worse: cutting and placing alone do less. */
export const isWorse = (before: number, after: number): boolean => after > before + 0.5 && after > 1.1 * before;
