import { assembleBodies, type Bodies } from '../bodies/assemble.ts';
import { type InCondition, SUBMERGED } from '../conditions/loadingCondition.ts';
import { recommendedCapacity, type StateFigure } from '../conditions/readings.ts';
import type { Figure } from '../figures/figure.ts';
import { figuresOf, statesOf } from '../figures/figured.ts';
import type { Steps } from '../steps/steps.ts';
import { type Arrangement, type FloatedBoat, floatBoat } from './floatBoat.ts';
import type { Input } from './input.ts';
import { inputSteps } from './inputs.ts';
import type { Owner } from './owner.ts';
import { residualLoadSteps } from './residualLoads.ts';
import { spreadSteps, type Uncertainty } from './spread.ts';

/** Of each figure by its id; a figure that cannot be had has none. */
export type FigureUncertainties = Readonly<Partial<Record<string, Uncertainty>>>;

/** What the inputs leave open of every figure. */
export interface Uncertainties {
  readonly inputs: readonly Input[];
  /**
   * By the id of the loading condition; of a boat that does not stay level only what does not hang on where it runs to, and
   * nothing of one that comes to no rest.
   */
  readonly conditions: Readonly<Partial<Record<string, FigureUncertainties>>>;
  /** Of the capacity that each tank should have, in the order of the boat's tanks; empty where it cannot hang neutral. */
  readonly tanks: readonly Uncertainty[];
}

/** Uncertainties of the figures in every condition that the boat is floated in. */
export function* uncertaintySteps(
  owner: Owner,
  bodies: Bodies,
  conditions: readonly InCondition[],
  figures: readonly Figure[],
  known?: KnownSpread,
): Steps<Uncertainties> {
  const spread = known?.spread ?? spreadAlone;
  const inputs = known?.inputs ?? (yield* inputSteps(owner.source, owner.variations));
  const capacities = Object.fromEntries(bodies.tanks.map((_, i) => [tankKey(i), recommendedCapacity(i)]));
  const found: (readonly [string, FigureUncertainties | null])[] = [];
  for (const inCondition of conditions) {
    const { id } = inCondition.condition;
    const aboard = yield* aboardIn(owner, bodies, inputs, inCondition);
    const besides = id === SUBMERGED.id ? capacities : {};
    found.push([id, yield* uncertaintiesIn(aboard, inCondition, { figures, besides, spread })]);
  }
  const all = Object.fromEntries(found);
  return {
    inputs,
    conditions: Object.fromEntries(
      found.flatMap(([id, uncertainties]) =>
        uncertainties ? [[id, withoutKeys(uncertainties, Object.keys(capacities))] as const] : [],
      ),
    ),
    tanks: bodies.tanks.flatMap((_, i) => all[SUBMERGED.id]?.[tankKey(i)] ?? []),
  };
}

const tankKey = (index: number): string => `tank ${index}`;

const withoutKeys = (uncertainties: FigureUncertainties, keys: readonly string[]): FigureUncertainties =>
  Object.fromEntries(Object.entries(uncertainties).filter(([key]) => !keys.includes(key)));

/** What is uncertain of a boat, and what spreads it to the figures. */
export interface KnownSpread {
  readonly inputs: readonly Input[];
  readonly spread: Spreading;
}

/** What is left open of some readings of a boat in a condition; `floated` is how it lies by its source. */
export type Spreading = (
  aboard: Aboard,
  inCondition: InCondition,
  floated: FloatedBoat,
  readings: readonly StateFigure[],
) => Steps<readonly Uncertainty[]>;

/** All inputs independent, each as it is known by itself. */
const spreadAlone: Spreading = function* ({ owner, inputs }, { condition }, floated, readings) {
  const residuals = yield* residualLoadSteps(owner, inputs, floated, readings);
  return yield* spreadSteps(owner, floated, residuals, { readings, name: condition.id });
};

interface Aboard {
  readonly owner: Owner;
  readonly bodies: Bodies;
  readonly inputs: readonly Input[];
}

/** Whose inputs count in a condition: of the boat as it is loaded there. */
function* aboardIn(owner: Owner, bodies: Bodies, inputs: readonly Input[], { condition }: InCondition): Steps<Aboard> {
  if (!condition.aboard) return { owner, bodies, inputs };
  const source = condition.aboard(owner.source);
  return {
    owner: { ...owner, source },
    bodies: assembleBodies(source.boat, owner.cache),
    inputs: yield* inputSteps(source, owner.variations),
  };
}

/**
 * Stiffness that is not so many uncertainties away from none: the boat may not rest like this, and its trim and heel be anything
 * (common practice, no source).
 */
const SURE_OF_REST = 3;

interface Asked {
  readonly figures: readonly Figure[];
  readonly besides: Readonly<Record<string, StateFigure>>;
  readonly spread: Spreading;
}

function* uncertaintiesIn(
  aboard: Aboard,
  inCondition: InCondition,
  { figures, besides, spread }: Asked,
): Steps<FigureUncertainties | null> {
  const { owner, bodies } = aboard;
  const { condition, state } = inCondition;
  const states = statesOf(state);
  if (!states) return null;
  const isHeld = states.rest !== states.level;
  const arrangement: Arrangement = { bodies, loading: condition.loading, isHeld };
  const floating = floatBoat(arrangement);
  if (!floating) return null;
  const { boat } = owner.source;
  const known = figuresOf(condition, figures).filter(
    ({ readOff, of }) => !(isHeld && readOff === 'rest') && of(floating, boat) !== null,
  );
  const names = [...known.map(({ id }) => id), ...Object.keys(besides)];
  const readings = [
    ...known.map(
      ({ of }): StateFigure =>
        at =>
          of(at, boat) ?? Number.NaN,
    ),
    ...Object.values(besides),
  ];
  const floated = { arrangement, floating };
  const uncertainties = yield* spread(aboard, inCondition, floated, readings);
  const isTender = known.some(({ holdsRest }, i) => {
    const { value, sigma } = uncertainties[i]!;
    return holdsRest && value < SURE_OF_REST * sigma;
  });
  const told = (i: number): Uncertainty =>
    isTender && known[i]?.hangsOnRest ? { ...uncertainties[i]!, rough: 'may-not-rest' } : uncertainties[i]!;
  return Object.fromEntries(
    names.flatMap((name, i) => (Number.isFinite(uncertainties[i]!.sigma) ? [[name, told(i)] as const] : [])),
  );
}
