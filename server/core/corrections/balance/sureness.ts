import type { Boat } from '../../boat/boat.ts';
import {
  conditionsOf,
  type InCondition,
  type LoadingCondition,
  type LyingEverywhere,
} from '../../conditions/loadingCondition.ts';
import type { SubmergedNeutral } from '../../conditions/submerged.ts';
import type { SurfacedAfloat } from '../../conditions/surfaced.ts';
import { allowedIn } from '../../figures/allowed.ts';
import { offWaterline } from '../../figures/offWaterline.ts';
import { type OpenLoads, openLoadOf } from './open.ts';
import { chanceOutside, chanceUnder, counted, withHand } from './price.ts';
import { type BalancedFigure, type FigureThere, isInScope, type Scope } from './row.ts';

/** A boat as it floats by the full model. */
export interface Floating extends LyingEverywhere {
  readonly boat: Boat;
}

/** How one figure stands to its limit: in the same unit, m, rad or a fraction, with one standard uncertainty. */
export interface LimitKept extends FigureThere {
  /** Off the middle of what is allowed; of a least figure: above it. Negative above means under it. */
  readonly off: number;
  readonly limit: number;
  readonly isLeast: boolean;
  /** What the file leaves open; null where nothing is known of it. */
  readonly open: number | null;
  /** The same by each explanation of the trials; none where the inputs alone are open. */
  readonly explained: readonly ExplainedHere[];
}

interface ExplainedHere {
  readonly rank: number;
  /** 0..1. */
  readonly odds: number;
  /** How much more the figure is by this explanation. */
  readonly more: number;
  readonly open: number;
}

/** What is left of a limit, 1 in its middle and 0 at its edge; of a least figure, how far above it, in limits. */
export const inHand = ({ off, limit, isLeast }: LimitKept): number => (isLeast ? off : limit - Math.abs(off)) / limit;

/** Every limit that the boat has in these conditions; nothing of a condition that it has no figures in. */
export const limitsKept = (floating: Floating, scope: Scope, open: OpenLoads): readonly LimitKept[] =>
  conditionsOf(floating)
    .filter(({ condition }) => isInScope(condition, scope, floating.boat))
    .flatMap(inCondition => keptIn(floating.boat, inCondition, open))
    .filter(({ limit }) => limit > 0 && Number.isFinite(limit));

function keptIn(boat: Boat, { condition, state }: InCondition, open: OpenLoads): readonly LimitKept[] {
  if (state.status === 'afloat') return keptAfloat(boat, state, keeper(boat, condition, open));
  return state.status === 'neutral' ? keptBelow(state, keeper(boat, condition, open)) : [];
}

/** `stiffness` is the load, kg or kg·m, that changes the figure by one. */
interface Keeper {
  /** A figure to be about the middle of what is allowed. */
  within(figure: BalancedFigure, value: number, stiffness: number): LimitKept;
  /** One to be no less than what is allowed `of` it. */
  atLeast(figure: BalancedFigure, value: number, stiffness: number, of?: string): LimitKept;
}

function keeper(boat: Boat, condition: LoadingCondition, open: OpenLoads): Keeper {
  const kept = (figure: BalancedFigure, off: number, limit: number, stiffness: number): LimitKept => {
    // A load as the angle or length that it makes of the boat as it is now stiff.
    const load = stiffness > 0 ? openLoadOf(open, { condition, figure }) : null;
    const explained = (load?.explained ?? []).map(({ rank, odds, more, sigma }) => ({
      rank,
      odds,
      more: more / stiffness,
      open: sigma / stiffness,
    }));
    return { condition, figure, off, limit, isLeast: false, open: load && load.sigma / stiffness, explained };
  };
  return {
    within(figure, value, stiffness) {
      const { least, most } = allowedIn(figure, condition, boat);
      const middle = Number.isFinite(most) ? (least + most) / 2 : 0;
      return kept(figure, value - middle, (most - least) / 2, stiffness);
    },
    atLeast(figure, value, stiffness, of = figure) {
      const { least } = allowedIn(of, condition, boat);
      return { ...kept(figure, value - least, least, stiffness), isLeast: true };
    },
  };
}

function keptAfloat(boat: Boat, state: SurfacedAfloat, { within, atLeast }: Keeper): readonly LimitKept[] {
  const { displacement, gm, gmLongitudinal, massPerImmersion } = state;
  const off = offWaterline(boat, state);
  return [
    ...(off.draft === null ? [] : [within('draft', off.draft, massPerImmersion)]),
    within('trim', off.trim, displacement * gmLongitudinal),
    within('heel', off.heel, displacement * gm),
    atLeast('gm', gm, displacement),
  ];
}

function keptBelow(state: SubmergedNeutral, { within, atLeast }: Keeper): readonly LimitKept[] {
  const { bgEffective, bgEffectiveLongitudinal, fill, displacement, heldDown } = state;
  const capacity = fill > 0 ? state.ballast / fill : 0;
  return [
    within('trim', state.trim, displacement * bgEffectiveLongitudinal),
    within('heel', state.heel, displacement * bgEffective),
    ...(heldDown !== null ? [within('reserve', heldDown, 1)] : capacity > 0 ? [within('fill', fill, capacity)] : []),
    atLeast('bgEffectiveLongitudinal', bgEffectiveLongitudinal, displacement, 'bgLeast'),
    atLeast('bgEffective', bgEffective, displacement, 'bgLeast'),
  ];
}

/**
 * How likely all limits are kept, over all explanations of the trials; by each the product over the limits. Figures that err
 * together (trim on the surface and below) make it rather likelier than that: for limits about their middles the product is a
 * lower bound (Šidák, Journal of the American Statistical Association 62, 1967, from memory).
 */
export const chanceOfAll = (limits: readonly LimitKept[]): number => chanceBy(limits, withHand);

/** What is counted as the chance when what to do is chosen: nothing is taken for so uncertain that no place matters. */
export const countedChanceOfAll = (limits: readonly LimitKept[]): number => chanceBy(limits, counted);

const chanceBy = (limits: readonly LimitKept[], sigmaOf: typeof withHand): number =>
  explanationsOf(limits).reduce(
    (sum, { odds, kept: there }) =>
      sum + odds * there.reduce((chance, kept) => chance * (1 - chanceToMiss(kept, sigmaOf(kept.open, kept.limit))), 1),
    0,
  );

/** The same limits by one explanation. */
interface ByExplanation {
  /** 0..1, of all together 1. */
  readonly odds: number;
  readonly kept: readonly LimitKept[];
}

/** The limits by each explanation of the trials; what one of them does not tell of is as it is over all. */
export function explanationsOf(limits: readonly LimitKept[]): readonly ByExplanation[] {
  const odds = new Map(limits.flatMap(({ explained }) => explained.map(each => [each.rank, each.odds] as const)));
  if (odds.size === 0) return [{ odds: 1, kept: limits }];
  const all = [...odds.values()].reduce((sum, each) => sum + each, 0);
  return [...odds].map(([rank, each]) => ({
    odds: each / all,
    kept: limits.map(kept => {
      const by = kept.explained.find(one => one.rank === rank);
      return by ? { ...kept, off: kept.off + by.more, open: by.open } : kept;
    }),
  }));
}

const chanceToMiss = ({ off, limit, isLeast }: LimitKept, sigma: number): number =>
  isLeast ? chanceUnder(off, sigma) : chanceOutside(Math.abs(off), limit, sigma);
