import type { Bodies } from '../../bodies/assemble.ts';
import { capacityOf } from '../../bodies/tankWater.ts';
import { SUBMERGED, SURFACED } from '../../conditions/loadingCondition.ts';
import type { Submerged } from '../../conditions/submerged.ts';
import type { Surfaced } from '../../conditions/surfaced.ts';
import type { Uncertainties } from '../../uncertainty/uncertainties.ts';
import type { RowName } from './row.ts';

/**
 * What is left open of each balance, one standard uncertainty in the row's own unit (kg or kg·m); null where nothing is
 * known of it. Said as loads and not as angles: a piece that stiffens the boat does not make its weights better known.
 */
export type OpenLoads = Readonly<Partial<Record<RowName, number>>>;

/** What a kitchen scale leaves open, kg (common practice, no source): at an end of the boat it trims it. */
const UNWEIGHED = 0.0005;

/** The loads that the uncertainties of the figures stand for, in the boat as it lies, with what weighing a piece leaves open. */
export function openLoads(
  bodies: Bodies,
  surfaced: Surfaced,
  submerged: Submerged,
  uncertainties: Uncertainties | null,
  length: number,
): OpenLoads {
  const open = { ...openAfloat(surfaced, uncertainties), ...openBelow(bodies, submerged, uncertainties) };
  const ofPiece = (UNWEIGHED * length) / 2;
  return {
    ...open,
    'surfaced trim': Math.hypot(open['surfaced trim'] ?? 0, ofPiece),
    'submerged trim': Math.hypot(open['submerged trim'] ?? 0, ofPiece),
  };
}

function openAfloat(surfaced: Surfaced, uncertainties: Uncertainties | null): OpenLoads {
  const open = uncertainties?.conditions[SURFACED.id];
  if (surfaced.status !== 'afloat' || !open) return {};
  const { displacement, gm, gmLongitudinal, massPerImmersion } = surfaced;
  return {
    ...(open.draft && { 'surfaced draft': open.draft.sigma * massPerImmersion }),
    ...(open.trim && { 'surfaced trim': open.trim.sigma * displacement * gmLongitudinal }),
    ...(open.heel && { 'surfaced heel': open.heel.sigma * displacement * gm }),
    ...(open.gm && { 'surfaced metacentric height': open.gm.sigma * displacement }),
  };
}

function openBelow(bodies: Bodies, submerged: Submerged, uncertainties: Uncertainties | null): OpenLoads {
  const open = uncertainties?.conditions[SUBMERGED.id];
  if (submerged.status !== 'neutral' || !open) return {};
  const displacement = bodies.density * bodies.volume;
  const { fill, trim, heel, bgEffective, bgEffectiveLongitudinal } = open;
  return {
    ...(fill && { 'neutral fill': fill.sigma * bodies.density * capacityOf(bodies.tanks) }),
    ...(trim && { 'submerged trim': trim.sigma * displacement * submerged.bgEffectiveLongitudinal }),
    ...(heel && { 'submerged heel': heel.sigma * displacement * submerged.bgEffective }),
    ...(bgEffectiveLongitudinal && { 'submerged stiffness in trim': bgEffectiveLongitudinal.sigma * displacement }),
    ...(bgEffective && { 'submerged stiffness in heel': bgEffective.sigma * displacement }),
  };
}
