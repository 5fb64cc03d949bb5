import type { Bodies } from '../../bodies/assemble.ts';
import { capacityOf } from '../../bodies/tankWater.ts';
import { conditionsOf, type InCondition, type LyingEverywhere } from '../../conditions/loadingCondition.ts';
import type { Explained } from '../../uncertainty/spread.ts';
import type { FigureUncertainties, Uncertainties } from '../../uncertainty/uncertainties.ts';
import type { BalancedFigure, FigureThere } from './row.ts';

/**
 * What is left open of each balance, by condition and figure; nothing where nothing is known of it. Said as loads and not as
 * angles: a piece that stiffens the boat does not make its weights better known.
 */
export type OpenLoads = Readonly<Partial<Record<string, OpenThere>>>;

type OpenThere = Readonly<Partial<Record<BalancedFigure, OpenLoad>>>;

/** In the row's own unit, kg or kg·m. */
export interface OpenLoad {
  /** One standard uncertainty. */
  readonly sigma: number;
  /** The same by each explanation of the trials; none where the inputs alone are open. */
  readonly explained: readonly ExplainedLoad[];
}

interface ExplainedLoad extends Pick<Explained, 'rank' | 'odds' | 'sigma'> {
  /** How much more it is by this explanation than is shown. */
  readonly more: number;
}

/** What is left open of one balance, one standard uncertainty; null where nothing is known of it. */
export const openOf = (open: OpenLoads, figure: FigureThere): number | null => openLoadOf(open, figure)?.sigma ?? null;

export const openLoadOf = (open: OpenLoads, { condition, figure }: FigureThere): OpenLoad | null =>
  open[condition.id]?.[figure] ?? null;

/** What a kitchen scale leaves open, kg (common practice, no source): at an end of the boat it trims it. */
const UNWEIGHED = 0.0005;

/** The loads that the uncertainties of the figures stand for, in the boat as it lies, with what weighing a piece leaves open. */
export function openLoads(
  bodies: Bodies,
  lying: LyingEverywhere,
  uncertainties: Uncertainties | null,
  length: number,
): OpenLoads {
  const ofPiece = (UNWEIGHED * length) / 2;
  return Object.fromEntries(
    conditionsOf(lying).map(inCondition => {
      const known = uncertainties?.conditions[inCondition.condition.id];
      const open = known ? openIn(inCondition, bodies, known) : {};
      return [inCondition.condition.id, { ...open, trim: withPiece(open.trim ?? NOTHING_OPEN, ofPiece) }];
    }),
  );
}

const NOTHING_OPEN: OpenLoad = { sigma: 0, explained: [] };

const withPiece = ({ sigma, explained }: OpenLoad, ofPiece: number): OpenLoad => ({
  sigma: Math.hypot(sigma, ofPiece),
  explained: explained.map(each => ({ ...each, sigma: Math.hypot(each.sigma, ofPiece) })),
});

function openIn(inCondition: InCondition, bodies: Bodies, known: FigureUncertainties): OpenThere {
  const loads = loadsPer(inCondition, bodies);
  return Object.fromEntries(
    Object.entries(loads).flatMap(([figure, load]) => {
      const uncertainty = known[figure];
      if (!uncertainty) return [];
      const explained = (uncertainty.explained ?? []).map(
        ({ rank, odds, value, sigma }): ExplainedLoad => ({
          rank,
          odds,
          more: (value - uncertainty.value) * load,
          sigma: sigma * load,
        }),
      );
      return [[figure, { sigma: uncertainty.sigma * load, explained }]];
    }),
  );
}

/** What load, kg or kg·m, changes a figure by one (m, rad, or all the tank). */
function loadsPer(
  { where, state }: InCondition,
  { density, volume, tanks }: Bodies,
): Readonly<Partial<Record<BalancedFigure, number>>> {
  if (where === 'afloat') {
    if (state.status !== 'afloat') return {};
    const { displacement, gm, gmLongitudinal, massPerImmersion } = state;
    return {
      draft: massPerImmersion,
      trim: displacement * gmLongitudinal,
      heel: displacement * gm,
      gm: displacement,
    };
  }
  if (state.status !== 'neutral') return {};
  const displacement = density * volume;
  return {
    fill: density * capacityOf(tanks),
    reserve: 1,
    trim: displacement * state.bgEffectiveLongitudinal,
    heel: displacement * state.bgEffective,
    bgEffectiveLongitudinal: displacement,
    bgEffective: displacement,
  };
}
