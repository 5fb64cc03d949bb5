import type { Boat, Waterline } from '../boat/boat.ts';
import { trimBetween } from '../conditions/attitude.ts';
import type { SurfacedAfloat } from '../conditions/surfaced.ts';

/** How the floating boat differs from its painted waterline. SI; without a painted waterline, from level. */
export interface OffWaterline {
  /** Water above the painted waterline at half length (m): positive, the boat lies deep. */
  readonly draft: number | null;
  /** Trim away from the painted waterline (rad), positive bow up. */
  readonly trim: number;
  /** rad, positive to starboard. */
  readonly heel: number;
  /** How much higher than painted the bow and the stern ride (m); negative: lower. */
  readonly bowUp: number | null;
  readonly sternUp: number | null;
}

/** Trim of the painted waterline itself, rad: positive when it is painted higher at the stern. */
export const paintedTrim = (waterline: Waterline | null, length: number): number =>
  waterline ? trimBetween(waterline.bow, waterline.stern, length) : 0;

/** Height of the painted waterline at half length, m. */
export const paintedDraft = ({ waterline }: Pick<Boat, 'waterline'>): number | null =>
  waterline && (waterline.bow + waterline.stern) / 2;

export function offWaterline(boat: Boat, surfaced: SurfacedAfloat): OffWaterline {
  const { waterline } = boat;
  const { draft, trim, heel } = surfaced.attitude;
  const painted = paintedDraft(boat);
  return {
    draft: painted === null ? null : draft - painted,
    trim: trim - paintedTrim(waterline, boat.length),
    heel,
    bowUp: waterline ? waterline.bow - surfaced.draftBow : null,
    sternUp: waterline ? waterline.stern - surfaced.draftStern : null,
  };
}
