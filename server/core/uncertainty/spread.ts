import { assembleBodies, type Bodies } from '../bodies/assemble.ts';
import type { FloatingState } from '../conditions/float.ts';
import type { StateFigure } from '../conditions/readings.ts';
import { add, subtract } from '../geometry/form/vector.ts';
import type { Steps } from '../steps/steps.ts';
import { type Arrangement, floatBoat } from './floatBoat.ts';
import type { Input } from './input.ts';
import { fifthDegreeRule, type RulePoint, type Whitened, whiten } from './normal.ts';
import type { FloatedBoat, Owner, ResidualLoad } from './residualLoads.ts';
import { type Changes, isMeshed, withInputs } from './withInputs.ts';

/** What the inputs leave open of one figure. */
export interface Uncertainty {
  /** The figure itself, SI. */
  readonly value: number;
  /** One standard uncertainty, SI. */
  readonly sigma: number;
  /** Inputs by their share in it, the largest first; they add up to 1. Empty where nothing is open. */
  readonly shares: readonly Share[];
  /** Why `sigma` is no more than a rough idea; null where it holds. */
  readonly rough: Rough | null;
  /** The same by each explanation of the trials that counts; none where the inputs alone are open. */
  readonly explained?: readonly Explained[];
}

/** What one explanation of the trials leaves open of a figure. */
export interface Explained {
  /** Which of all explanations: the same for every figure. */
  readonly rank: number;
  /** 0..1. */
  readonly odds: number;
  /** SI, as the figure. */
  readonly value: number;
  readonly sigma: number;
}

export interface Share {
  readonly input: Input;
  /** Of the variance, 0..1. */
  readonly share: number;
  /** Change of the figure when the input is more by its uncertainty, SI. */
  readonly change: number;
}

/** Why an uncertainty cannot be trusted. */
type Rough =
  /** Within the uncertainties of the inputs the boat may not come to rest here at all: it sinks, rolls over, runs off. */
  | 'may-not-rest'
  /** The figure follows the inputs along so curved a line that one number says little. */
  | 'curved';

/** Part of the variance that no straight line explains, above which an uncertainty is rough (common practice, no source). */
const CURVED = 0.4;

/**
 * Uncertainties of readings from what each input pushes (GUM, JCGM 100:2008, 5.1, carried past first order).
 *
 * However many inputs there are, a boat held in place feels them only as a weight too much and its moment: four numbers,
 * which are added up exactly. The boat's answer to those may be far from straight where it is touchy, so that it is looked
 * at on the 25 points of a rule, each with the full model: what a Monte Carlo run would do with thousands. On the surface
 * the inputs that push most are given their likely values there, so that the water finds the hull that goes with them;
 * the others are put on as bare weight.
 */
export function* spreadSteps(
  owner: Owner,
  floated: FloatedBoat,
  residuals: readonly ResidualLoad[],
  readings: readonly StateFigure[],
  belief: Belief = independent(residuals),
): Steps<readonly Uncertainty[]> {
  const { floating } = floated;
  const { columns, weights } = belief;
  const isAfloat = !['neutral', 'held'].includes(floated.arrangement.loading.kind);
  const isMajor = residuals.map(
    ({ input, isBareWeight }, i) =>
      isAfloat && !isBareWeight && square(weights[i]!) > MAJOR && !movesMesh(input, owner),
  );
  const minors = residuals.map((_, i) => (isMajor[i] ? [] : weights[i]!));
  const own = assembleBodies(owner.source.boat, owner.cache);
  const majors = residuals.flatMap(({ input }, i) => (isMajor[i] ? [{ input, weight: weights[i]! }] : []));
  const weightBy = columns.map((_, k) => bareWeightBy(residuals, minorWeights(weights, isMajor, k)));
  const points: (RulePoint & { readonly floating: FloatingState | null })[] = [];
  for (const point of fifthDegreeRule(columns.length)) {
    yield;
    const isMiddle = point.z.every(value => value === 0);
    const there = isMiddle
      ? floating
      : floatBoat(arrangedAt(owner, floated, { own, majors, weightBy, more: belief.more(point.z) }, point.z), floating);
    points.push({ ...point, floating: there });
  }
  const rests = points.every(at => at.floating !== null);
  return readings.map((reading, i) => {
    const value = reading(floating);
    const direct = residuals.map(push => push.direct[i]!);
    const ofMinors = columns.map((_, k) => direct.reduce((sum, change, n) => sum + change * (minors[n]![k] ?? 0), 0));
    const figures = points.flatMap(({ z, weight, floating: there }) =>
      there ? [{ z, weight, change: reading(there) - value + inner(ofMinors, z) }] : [],
    );
    return { value, ...uncertaintyFrom(figures, belief, residuals, direct, rests) };
  });
}

/** What is believed of the inputs of a boat, and of the load that they make up together with what is not written down. */
export interface Belief extends Whitened {
  /** The load at a z that no input pushes: its mass, and its moments. */
  more(z: readonly number[]): readonly number[];
  /** Variance of a sum over the inputs. */
  variance(sum: readonly number[]): number;
  /** What each input does by its push, where the load of each z does so much. */
  byInput(byLoad: readonly number[]): readonly number[];
  /** What each input has in the variance of a sum over the inputs and the rest of the load. */
  parts(sum: readonly number[], byLoad: readonly number[]): readonly number[];
}

/** All inputs independent, each as it is known by itself. */
function independent(residuals: readonly ResidualLoad[]): Belief {
  const whitened = whiten(
    residuals.map(({ mass, moment }) => [mass, ...moment]),
    LOADS,
  );
  return {
    ...whitened,
    more: () => NO_LOAD,
    variance: square,
    byInput: byLoad => whitened.weights.map(weight => inner(byLoad, weight)),
    parts: sum => sum.map(change => change ** 2),
  };
}

const LOADS = 4;
const NO_LOAD = [0, 0, 0, 0];

/** Part in the uncertainty of any of the four loads from which an input is one of those that push most. */
const MAJOR = 0.02;

/** Less of a variance than this is rounding. */
const NO_SHARE = 1e-9;

/** Its entry is a mesh: each try would take as long as reading the file's triangles anew. */
const movesMesh = ({ target }: Input, { source }: Owner): boolean =>
  target.on === 'entries' && target.at.some(({ list, index }) => isMeshed(source[list][index]!.checked));

interface Pushed {
  /** The boat's own entries as they are. */
  readonly own: Bodies;
  /** Inputs that are changed in earnest, with their part in each direction of the rule. */
  readonly majors: readonly { readonly input: Input; readonly weight: readonly number[] }[];
  /** Load of all other inputs for one in each direction: a weight that displaces nothing, and its moments. */
  readonly weightBy: readonly (readonly number[])[];
  readonly more: readonly number[];
}

const minorWeights = (weights: Belief['weights'], isMajor: readonly boolean[], k: number): readonly number[] =>
  weights.map((weight, i) => (isMajor[i] ? 0 : weight[k]!));

/** Mass and moments of all residual loads together, each so many times. */
function bareWeightBy(residuals: readonly ResidualLoad[], times: readonly number[]): readonly number[] {
  const sum = [...NO_LOAD];
  for (const [i, { mass, moment }] of residuals.entries()) {
    const by = times[i]!;
    sum[0]! += by * mass;
    for (let axis = 0; axis < 3; axis++) sum[axis + 1]! += by * moment[axis]!;
  }
  return sum;
}

/** The boat with its inputs where they likely are at a point: some in earnest, the others as a weight that displaces nothing. */
function arrangedAt(
  owner: Owner,
  { arrangement }: FloatedBoat,
  { own, majors, weightBy, more }: Pushed,
  z: readonly number[],
): Arrangement {
  const changes = majors.map(({ input, weight }) => [input, input.value + input.sigma * inner(weight, z)] as const);
  const bodies = changes.length > 0 ? exchanged(owner, own, arrangement.bodies, new Map(changes)) : arrangement.bodies;
  const [mass, ...moment] = more.map((load, part) =>
    weightBy.reduce((sum, by, k) => sum + by[part]! * z[k]!, load),
  ) as [number, number, number, number];
  const laden = { mass: bodies.mass + mass, massMoment: add(bodies.massMoment, moment) };
  return { ...arrangement, bodies: { ...bodies, ...laden } };
}

/** The bodies with inputs changed; what an arrangement carries besides the boat's own entries stays on board. */
function exchanged({ source, cache }: Owner, own: Bodies, bodies: Bodies, changes: Changes): Bodies {
  const changed = assembleBodies(withInputs(source, changes), cache);
  return {
    ...changed,
    mass: changed.mass + bodies.mass - own.mass,
    massMoment: add(changed.massMoment, subtract(bodies.massMoment, own.massMoment)),
  };
}

/** A figure at a point of the rule, against the figure in the middle. */
interface Figure extends RulePoint {
  readonly change: number;
}

/** What the pushes do to one figure: by way of the weight that they make up, and each directly. */
function uncertaintyFrom(
  figures: readonly Figure[],
  belief: Belief,
  residuals: readonly ResidualLoad[],
  direct: readonly number[],
  rests: boolean,
): Omit<Uncertainty, 'value'> {
  const { columns, weights } = belief;
  // The part that goes with the weight is in the points; what is left of each input's own part is independent of it.
  const common = columns.map((_, k) => direct.reduce((sum, change, i) => sum + change * weights[i]![k]!, 0));
  const apart = Math.max(0, belief.variance(direct) - square(common));
  const total = figures.reduce((sum, { weight }) => sum + weight, 0);
  const mean = figures.reduce((sum, { weight, change }) => sum + (weight / total) * change, 0);
  const variance = figures.reduce((sum, { weight, change }) => sum + (weight / total) * (change - mean) ** 2, apart);
  const slopes = columns.map((_, k) =>
    figures.reduce((sum, { z, weight, change }) => sum + (weight / total) * change * z[k]!, 0),
  );
  const straight = square(slopes) + apart;
  const byLoad = slopes.map((slope, k) => slope - common[k]!);
  const changes = belief.byInput(byLoad).map((change, i) => direct[i]! + change);
  const parts = belief.parts(changes, byLoad);
  const shares = residuals
    .flatMap(({ input }, i) => {
      const share = straight > 0 ? parts[i]! / straight : 0;
      return share > NO_SHARE ? [{ input, change: changes[i]!, share }] : [];
    })
    .sort((a, b) => b.share - a.share);
  const isCurved = variance - straight > CURVED * variance;
  return { sigma: Math.sqrt(variance), shares, rough: !rests ? 'may-not-rest' : isCurved ? 'curved' : null };
}

const inner = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, i) => sum + value * b[i]!, 0);
const square = (a: readonly number[]): number => inner(a, a);
