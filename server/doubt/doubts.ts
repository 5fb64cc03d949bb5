import type { Boat } from '../boat/boat.ts';
import type { Bodies } from '../bodies/assemble.ts';
import type { Submerged } from '../conditions/submerged.ts';
import type { Surfaced } from '../conditions/surfaced.ts';
import type { Input } from './input.ts';
import { inputsOf } from './inputs.ts';
import { type Arrangement, layBoat } from './lie.ts';
import { type Owner, pushesOf } from './pushes.ts';
import {
  type Reading,
  recommendedCapacity,
  type SubmergedFigure,
  type SurfacedFigure,
  submergedReadings,
  surfacedReadings,
} from './readings.ts';
import { type Doubt, spreadOf } from './spread.ts';

/** What the inputs leave open of every headline figure; a figure that cannot be had has no doubt either. */
export interface Doubts {
  readonly inputs: readonly Input[];
  readonly surfaced: Readonly<Record<SurfacedFigure, Doubt>> | null;
  /** Of a boat that does not stay level only what does not hang on where it runs to. */
  readonly submerged: Partial<Readonly<Record<SubmergedFigure, Doubt>>> | null;
  /** Of the capacity that each tank should have, in the order of the boat's tanks; empty where it cannot hang neutral. */
  readonly tanks: readonly Doubt[];
}

/** What is left open of some readings of a boat as it lies; null where it finds no rest. */
export type Spreading = (arrangement: Arrangement, readings: readonly Reading[]) => readonly Doubt[] | null;

/** A boat in both conditions. */
export interface Lying {
  readonly boat: Boat;
  readonly bodies: Bodies;
  readonly surfaced: Surfaced;
  readonly submerged: Submerged;
}

/** Doubts of both conditions. */
export function doubtsOf(owner: Owner, bodies: Bodies, surfaced: Surfaced, submerged: Submerged): Doubts {
  const inputs = inputsOf(owner.source, owner.variations);
  return doubtsBy({ boat: owner.source.boat, bodies, surfaced, submerged }, inputs, (arrangement, readings) => {
    const lie = layBoat(arrangement);
    if (!lie) return null;
    const laid = { arrangement, lie };
    return spreadOf(owner, laid, pushesOf(owner, inputs, laid, readings), readings);
  });
}

/** The same, whatever spreads the doubts of the inputs. */
export const doubtsBy = (lying: Lying, inputs: readonly Input[], spread: Spreading): Doubts => ({
  inputs,
  surfaced:
    lying.surfaced.status === 'afloat'
      ? doubtsIn(spread, { bodies: lying.bodies, loading: { kind: 'own' } }, surfacedReadings(lying.boat.length), [
          'gm',
        ])
      : null,
  ...underWater(lying, spread),
});

function underWater({ bodies, submerged }: Lying, spread: Spreading): Pick<Doubts, 'submerged' | 'tanks'> {
  if (submerged.status !== 'neutral') return { submerged: null, tanks: [] };
  const { fill, bg, bgEffective, bgEffectiveLongitudinal } = submergedReadings;
  const figures = submerged.stable ? submergedReadings : { fill, bg, bgEffective, bgEffectiveLongitudinal };
  const capacities = Object.fromEntries(bodies.tanks.map((_, i) => [`tank ${i}`, recommendedCapacity(i)]));
  const arrangement: Arrangement = { bodies, loading: { kind: 'neutral' }, isHeld: !submerged.stable };
  const all = doubtsIn<string>(spread, arrangement, { ...figures, ...capacities }, [
    'bgEffective',
    'bgEffectiveLongitudinal',
  ]);
  if (!all) return { submerged: null, tanks: [] };
  return { submerged: all, tanks: bodies.tanks.flatMap((_, i) => all[`tank ${i}`] ?? []) };
}

/**
 * Stiffness that is not so many doubts away from none: the boat may not rest like this, and its trim and heel be anything
 * (common practice, no source).
 */
const SURE_OF_REST = 3;

function doubtsIn<Figure extends string>(
  spread: Spreading,
  arrangement: Arrangement,
  figures: Readonly<Record<Figure, Reading>>,
  stiffness: readonly NoInfer<Figure>[],
): Readonly<Record<Figure, Doubt>> | null {
  const names = Object.keys(figures) as Figure[];
  const doubts = spread(
    arrangement,
    names.map(name => figures[name]),
  );
  if (!doubts) return null;
  const isTender = stiffness.some(name => {
    const { value, sigma } = doubts[names.indexOf(name)]!;
    return value < SURE_OF_REST * sigma;
  });
  const told = (name: Figure, doubt: Doubt): Doubt =>
    isTender && (name === 'trim' || name === 'heel') ? { ...doubt, rough: 'may-not-rest' } : doubt;
  return Object.fromEntries(names.map((name, i) => [name, told(name, doubts[i]!)])) as Record<Figure, Doubt>;
}
