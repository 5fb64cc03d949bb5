import type { Bodies } from '../bodies/assemble.ts';
import type { Submerged } from '../conditions/submerged.ts';
import type { Surfaced } from '../conditions/surfaced.ts';
import type { Steps } from '../steps.ts';
import type { Input } from './input.ts';
import { inputsOf } from './inputs.ts';
import { type Arrangement, layBoat } from './lie.ts';
import { type Owner, pushSteps } from './pushes.ts';
import {
  type Reading,
  recommendedCapacity,
  type SubmergedFigure,
  type SurfacedFigure,
  submergedReadings,
  surfacedReadings,
} from './readings.ts';
import { type Doubt, spreadSteps } from './spread.ts';

/** What the inputs leave open of every headline figure; a figure that cannot be had has no doubt either. */
export interface Doubts {
  readonly inputs: readonly Input[];
  readonly surfaced: Readonly<Record<SurfacedFigure, Doubt>> | null;
  /** Of a boat that does not stay level only what does not hang on where it runs to. */
  readonly submerged: Partial<Readonly<Record<SubmergedFigure, Doubt>>> | null;
  /** Of the capacity that each tank should have, in the order of the boat's tanks; empty where it cannot hang neutral. */
  readonly tanks: readonly Doubt[];
}

/** Doubts of both conditions. */
export function* doubtSteps(owner: Owner, bodies: Bodies, surfaced: Surfaced, submerged: Submerged): Steps<Doubts> {
  const { boat } = owner.source;
  const inputs = inputsOf(owner.source, owner.variations);
  return {
    inputs,
    surfaced:
      surfaced.status === 'afloat'
        ? yield* doubtsIn(owner, inputs, { bodies, loading: { kind: 'own' } }, surfacedReadings(boat.length), ['gm'])
        : null,
    ...(yield* underWater(owner, inputs, bodies, submerged)),
  };
}

function* underWater(
  owner: Owner,
  inputs: readonly Input[],
  bodies: Bodies,
  submerged: Submerged,
): Steps<Pick<Doubts, 'submerged' | 'tanks'>> {
  if (submerged.status !== 'neutral') return { submerged: null, tanks: [] };
  const { fill, bg, bgEffective, bgEffectiveLongitudinal } = submergedReadings;
  const figures = submerged.stable ? submergedReadings : { fill, bg, bgEffective, bgEffectiveLongitudinal };
  const capacities = Object.fromEntries(bodies.tanks.map((_, i) => [`tank ${i}`, recommendedCapacity(i)]));
  const arrangement: Arrangement = { bodies, loading: { kind: 'neutral' }, isHeld: !submerged.stable };
  const all = yield* doubtsIn<string>(owner, inputs, arrangement, { ...figures, ...capacities }, [
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

function* doubtsIn<Figure extends string>(
  owner: Owner,
  inputs: readonly Input[],
  arrangement: Arrangement,
  figures: Readonly<Record<Figure, Reading>>,
  stiffness: readonly NoInfer<Figure>[],
): Steps<Readonly<Record<Figure, Doubt>> | null> {
  const lie = layBoat(arrangement);
  if (!lie) return null;
  const laid = { arrangement, lie };
  const names = Object.keys(figures) as Figure[];
  const readings = names.map(name => figures[name]);
  const pushes = yield* pushSteps(owner, inputs, laid, readings);
  const doubts = yield* spreadSteps(owner, laid, pushes, readings);
  const isTender = stiffness.some(name => {
    const { value, sigma } = doubts[names.indexOf(name)]!;
    return value < SURE_OF_REST * sigma;
  });
  const told = (name: Figure, doubt: Doubt): Doubt =>
    isTender && (name === 'trim' || name === 'heel') ? { ...doubt, rough: 'may-not-rest' } : doubt;
  return Object.fromEntries(names.map((name, i) => [name, told(name, doubts[i]!)])) as Record<Figure, Doubt>;
}
