import type { Boat } from '../../boat/boat.ts';
import type { Submerged } from '../../conditions/submerged.ts';
import type { Surfaced } from '../../conditions/surfaced.ts';
import { offWaterline } from '../../figures/offWaterline.ts';
import type { Scope } from '../balance/row.ts';
import type { OpenLoads } from './open.ts';
import { chanceOutside, chanceUnder, counted, withHand } from './price.ts';
import type { RowName } from './row.ts';

/** A boat as it floats by the full model. */
export interface Floating {
  readonly boat: Boat;
  readonly surfaced: Surfaced;
  readonly submerged: Submerged;
}

/** How one figure stands to its limit: in the same unit, m, rad or a fraction, with one standard uncertainty. */
export interface LimitKept {
  readonly name: RowName;
  /** Off the middle of what is allowed; of a least figure: above it. Negative above means under it. */
  readonly figure: number;
  readonly limit: number;
  readonly isLeast: boolean;
  /** What the file leaves open; null where nothing is known of it. */
  readonly open: number | null;
}

/** What is left of a limit, 1 in its middle and 0 at its edge; of a least figure, how far above it, in limits. */
export const inHand = ({ figure, limit, isLeast }: LimitKept): number =>
  (isLeast ? figure : limit - Math.abs(figure)) / limit;

/** Every limit that the boat has in these conditions; nothing of a condition that it has no figures in. */
export function limitsKept(
  { boat, surfaced, submerged }: Floating,
  scope: Scope,
  open: OpenLoads,
): readonly LimitKept[] {
  return [
    ...(scope === 'submerged' || surfaced.status !== 'afloat' ? [] : keptAfloat(boat, surfaced, open)),
    ...(scope === 'surfaced' || submerged.status !== 'neutral' ? [] : keptBelow(boat, submerged, open)),
  ].filter(({ limit }) => limit > 0);
}

/** A load as the angle or length that it makes of the boat as it is now stiff. */
const by = (load: number | undefined, stiffness: number): number | null =>
  load === undefined || stiffness <= 0 ? null : load / stiffness;

function keptAfloat(boat: Boat, surfaced: Surfaced & { status: 'afloat' }, open: OpenLoads): readonly LimitKept[] {
  const { displacement, gm, gmLongitudinal, massPerImmersion } = surfaced;
  const off = offWaterline(boat, surfaced);
  const limits = boat.limits.surfaced;
  const kept = (name: RowName, figure: number, limit: number, stiffness: number): LimitKept => ({
    name,
    figure,
    limit,
    isLeast: false,
    open: by(open[name], stiffness),
  });
  const ofGm = 'surfaced metacentric height';
  return [
    ...(off.draft === null ? [] : [kept('surfaced draft', off.draft, limits.draft, massPerImmersion)]),
    kept('surfaced trim', off.trim, limits.trim, displacement * gmLongitudinal),
    kept('surfaced heel', off.heel, limits.heel, displacement * gm),
    { ...kept(ofGm, gm - limits.gm, limits.gm, displacement), isLeast: true },
  ];
}

function keptBelow(boat: Boat, submerged: Submerged & { status: 'neutral' }, open: OpenLoads): readonly LimitKept[] {
  const limits = boat.limits.submerged;
  const { bgEffective, bgEffectiveLongitudinal, fill } = submerged;
  const displacement = submerged.momentToTrimOneDegree / (bgEffectiveLongitudinal * Math.sin(Math.PI / 180));
  const capacity = fill > 0 ? submerged.ballast / fill : 0;
  const [low, high] = limits.fill;
  const kept = (name: RowName, figure: number, limit: number, stiffness: number, isLeast = false): LimitKept => ({
    name,
    figure,
    limit,
    isLeast,
    open: by(open[name], stiffness),
  });
  return [
    kept('submerged trim', submerged.trim, limits.trim, displacement * bgEffectiveLongitudinal),
    kept('submerged heel', submerged.heel, limits.heel, displacement * bgEffective),
    ...(capacity > 0 ? [kept('neutral fill', fill - (low + high) / 2, (high - low) / 2, capacity)] : []),
    kept('submerged stiffness in trim', bgEffectiveLongitudinal - limits.bg, limits.bg, displacement, true),
    kept('submerged stiffness in heel', bgEffective - limits.bg, limits.bg, displacement, true),
  ];
}

/**
 * How likely all limits are kept: the product over the limits. Figures that err together (trim on the surface and below)
 * make it rather likelier than that: for limits about their middles the product is a lower bound (Šidák, Journal of the
 * American Statistical Association 62, 1967, from memory).
 */
export const chanceOfAll = (limits: readonly LimitKept[]): number =>
  limits.reduce((chance, kept) => chance * (1 - chanceToMiss(kept, withHand(kept.open, kept.limit))), 1);

/** What is counted as the chance when what to do is chosen: nothing is taken for so uncertain that no place matters. */
export const countedChanceOfAll = (limits: readonly LimitKept[]): number =>
  limits.reduce((chance, kept) => chance * (1 - chanceToMiss(kept, counted(kept.open, kept.limit))), 1);

const chanceToMiss = ({ figure, limit, isLeast }: LimitKept, sigma: number): number =>
  isLeast ? chanceUnder(figure, sigma) : chanceOutside(Math.abs(figure), limit, sigma);
