import type { Boat } from '../boat/boat.ts';
import type { Bodies } from '../bodies/assemble.ts';
import type { Submerged } from '../conditions/submerged.ts';
import type { Surfaced } from '../conditions/surfaced.ts';
import {
  type Reading,
  recommendedCapacity,
  type SubmergedFigure,
  type SurfacedFigure,
  submergedFigures,
  surfacedFigures,
} from './figures.ts';
import { type Arrangement, floatBoat } from './floatBoat.ts';
import type { Input } from './input.ts';
import { inputsOf } from './inputs.ts';
import { type Owner, residualLoadsOf } from './residualLoads.ts';
import { spreadOf, type Uncertainty } from './spread.ts';

/** What the inputs leave open of every headline figure; a figure that cannot be had has no doubt either. */
export interface Uncertainties {
  readonly inputs: readonly Input[];
  readonly surfaced: Readonly<Record<SurfacedFigure, Uncertainty>> | null;
  /** Of a boat that does not stay level only what does not hang on where it runs to. */
  readonly submerged: Partial<Readonly<Record<SubmergedFigure, Uncertainty>>> | null;
  /** Of the capacity that each tank should have, in the order of the boat's tanks; empty where it cannot hang neutral. */
  readonly tanks: readonly Uncertainty[];
}

/** What is left open of some readings of a boat as it lies; null where it finds no rest. */
export type Spreading = (arrangement: Arrangement, readings: readonly Reading[]) => readonly Uncertainty[] | null;

/** A boat in both conditions. */
export interface Lying {
  readonly boat: Boat;
  readonly bodies: Bodies;
  readonly surfaced: Surfaced;
  readonly submerged: Submerged;
}

/** Uncertainties of both conditions. */
export function uncertaintiesOf(owner: Owner, bodies: Bodies, surfaced: Surfaced, submerged: Submerged): Uncertainties {
  const inputs = inputsOf(owner.source, owner.variations);
  return uncertaintiesBy({ boat: owner.source.boat, bodies, surfaced, submerged }, inputs, (arrangement, readings) => {
    const floating = floatBoat(arrangement);
    if (!floating) return null;
    const floated = { arrangement, floating };
    return spreadOf(owner, floated, residualLoadsOf(owner, inputs, floated, readings), readings);
  });
}

/** The same, whatever spreads the uncertainties of the inputs. */
export const uncertaintiesBy = (lying: Lying, inputs: readonly Input[], spread: Spreading): Uncertainties => ({
  inputs,
  surfaced:
    lying.surfaced.status === 'afloat'
      ? uncertaintiesIn(
          spread,
          { bodies: lying.bodies, loading: { kind: 'own' } },
          surfacedFigures(lying.boat.length),
          ['gm'],
        )
      : null,
  ...underWater(lying, spread),
});

function underWater({ bodies, submerged }: Lying, spread: Spreading): Pick<Uncertainties, 'submerged' | 'tanks'> {
  if (submerged.status !== 'neutral') return { submerged: null, tanks: [] };
  const { fill, bg, bgEffective, bgEffectiveLongitudinal } = submergedFigures;
  const figures = submerged.stable ? submergedFigures : { fill, bg, bgEffective, bgEffectiveLongitudinal };
  const capacities = Object.fromEntries(bodies.tanks.map((_, i) => [`tank ${i}`, recommendedCapacity(i)]));
  const arrangement: Arrangement = { bodies, loading: { kind: 'neutral' }, isHeld: !submerged.stable };
  const all = uncertaintiesIn<string>(spread, arrangement, { ...figures, ...capacities }, [
    'bgEffective',
    'bgEffectiveLongitudinal',
  ]);
  if (!all) return { submerged: null, tanks: [] };
  return { submerged: all, tanks: bodies.tanks.flatMap((_, i) => all[`tank ${i}`] ?? []) };
}

/**
 * Stiffness that is not so many uncertainties away from none: the boat may not rest like this, and its trim and heel be anything
 * (common practice, no source).
 */
const SURE_OF_REST = 3;

function uncertaintiesIn<Figure extends string>(
  spread: Spreading,
  arrangement: Arrangement,
  figures: Readonly<Record<Figure, Reading>>,
  stiffness: readonly NoInfer<Figure>[],
): Readonly<Record<Figure, Uncertainty>> | null {
  const names = Object.keys(figures) as Figure[];
  const uncertainties = spread(
    arrangement,
    names.map(name => figures[name]),
  );
  if (!uncertainties) return null;
  const isTender = stiffness.some(name => {
    const { value, sigma } = uncertainties[names.indexOf(name)]!;
    return value < SURE_OF_REST * sigma;
  });
  const told = (name: Figure, uncertainty: Uncertainty): Uncertainty =>
    isTender && (name === 'trim' || name === 'heel') ? { ...uncertainty, rough: 'may-not-rest' } : uncertainty;
  return Object.fromEntries(names.map((name, i) => [name, told(name, uncertainties[i]!)])) as Record<
    Figure,
    Uncertainty
  >;
}
