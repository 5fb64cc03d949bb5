import type { Bodies } from '../bodies/assemble.ts';
import type { FloatingState } from '../conditions/float.ts';
import type { StateFigure } from '../conditions/readings.ts';
import { add } from '../geometry/form/vector.ts';
import { keepLast } from '../geometry/shapes/once.ts';
import type { Steps } from '../steps/steps.ts';
import { changeableBodies } from './changeable.ts';
import type { Arrangement, FloatedBoat } from './floatBoat.ts';
import type { Input } from './input.ts';
import { areAsBefore, awayFrom, floatAsBefore } from './lain.ts';
import { fifthDegreeRule, product, type RulePoint, type Whitened, whiten } from './normal.ts';
import type { Owner } from './owner.ts';
import type { ResidualLoads } from './residualLoads.ts';
import { type Changes, isMeshed } from './withInputs.ts';

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
  /** What it hangs on by straight lines, with trials. */
  readonly hangsOn?: HangsOn;
}

/** A figure as a sum, SI. */
interface HangsOn {
  readonly inputs: readonly Input[];
  /** Its change for each of them, by its uncertainty. */
  readonly changes: ArrayLike<number>;
  /** That for a kilogram too much, and for a moment of a kilogram-metre along each axis: afloat, under water, ashore in turn. */
  readonly loads: readonly number[];
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
  residuals: ResidualLoads,
  { readings, name, belief = independent(residuals) }: SpreadAsked,
): Steps<readonly Uncertainty[]> {
  const { floating } = floated;
  const { columns, weights } = belief;
  const isMajor = majorsOf(owner, floated, residuals, weights);
  const minors = weights.map(row => row.map((weight, i) => (isMajor[i] ? 0 : weight)));
  const majors = residuals.inputs.flatMap((input, i) =>
    isMajor[i] ? [{ input, weight: weights.map(row => row[i]!) }] : [],
  );
  const { bodies } = floated.arrangement;
  const inEarnest =
    majors.length > 0
      ? changeableBodies(
          owner.source,
          bodies,
          owner.cache,
          majors.map(({ input }) => input),
        )
      : null;
  const weightBy = minors.map(row => residuals.loads.map(load => product(load, row)));
  const points: (RulePoint & { readonly floating: FloatingState | null })[] = [];
  const last = owner.variations.lain.get(name);
  const before = last && areAsBefore(last, columns) ? last.away : [];
  const away: (Float64Array | null)[] = [];
  for (const [i, point] of fifthDegreeRule(columns.length).entries()) {
    yield;
    const isMiddle = point.z.every(value => value === 0);
    const there = isMiddle
      ? floating
      : floatAsBefore(
          yield* arrangedAt(floated, { inEarnest, majors, weightBy, more: belief.more(point.z) }, point.z),
          floating,
          before[i] ?? null,
        );
    away.push(there && awayFrom(floating, there));
    points.push({ ...point, floating: there });
  }
  keepLast(owner.variations.lain, name, { columns, away }, MOST_LAIN);
  const rests = points.every(at => at.floating !== null);
  return readings.map((reading, r) => {
    const value = reading(floating);
    const direct = residuals.direct[r]!;
    const ofMinors = minors.map(row => product(direct, row));
    const figures = points.flatMap(({ z, weight, floating: there }) =>
      there ? [{ z, weight, change: reading(there) - value + inner(z, ofMinors) }] : [],
    );
    return uncertaintyOf(value, figures, { belief, inputs: residuals.inputs, direct, rests });
  });
}

interface SpreadAsked {
  readonly readings: readonly StateFigure[];
  /** What is remembered of it is found by, for the next time. */
  readonly name: string;
  readonly belief?: Belief;
}

/** Inputs that push so much that they are changed in earnest. */
function majorsOf(
  owner: Owner,
  { arrangement }: FloatedBoat,
  { inputs, isBareWeight }: ResidualLoads,
  weights: Belief['weights'],
) {
  const isAfloat = !['neutral', 'held'].includes(arrangement.loading.kind);
  return inputs.map((input, i) => {
    if (!isAfloat || isBareWeight[i] === 1) return false;
    const part = weights.reduce((sum, row) => sum + row[i]! ** 2, 0);
    return part > MAJOR && !movesMesh(input, owner);
  });
}

/** What is believed of the inputs of a boat, and of the load that they make up together with what is not written down. */
export interface Belief extends Whitened {
  /** The load at a z that no input pushes: its mass, and its moments. */
  more(z: readonly number[]): readonly number[];
  /** Variance of a sum over the inputs. */
  variance(sum: Float64Array): number;
  /** What each input does by its push, where the load of each z does so much. */
  byInput(byLoad: readonly number[]): Float64Array;
  /** What each input has in the variance of a sum over the inputs and the rest of the load. */
  parts(sum: Float64Array, byLoad: readonly number[]): Float64Array;
}

/** All inputs independent, each as it is known by itself. */
function independent({ inputs, loads }: ResidualLoads): Belief {
  const whitened = whiten(loads);
  return {
    ...whitened,
    more: () => NO_LOAD,
    variance: sum => product(sum, sum),
    byInput: byLoad =>
      Float64Array.from(inputs, (_, i) => whitened.weights.reduce((sum, row, k) => sum + byLoad[k]! * row[i]!, 0)),
    parts: sum => sum.map(change => change ** 2),
  };
}

const NO_LOAD = [0, 0, 0, 0];

/** Conditions of which it is remembered how they lay: more than a boat has, for their names are typed. */
const MOST_LAIN = 16;

/** Part in the uncertainty of any of the four loads from which an input is one of those that push most. */
const MAJOR = 0.02;

/** Less of a variance than this is rounding. */
const NO_SHARE = 1e-9;

/** Its entry is a mesh: each try would take as long as reading the file's triangles anew. */
const movesMesh = ({ target }: Input, { source }: Owner): boolean =>
  target.on === 'entries' && target.at.some(({ list, index }) => isMeshed(source[list][index]!.checked));

interface Pushed {
  /** The boat with some inputs changed in earnest; null where none is. */
  readonly inEarnest: ((changes: Changes) => Steps<Bodies>) | null;
  /** Those inputs, with their part in each direction of the rule. */
  readonly majors: readonly { readonly input: Input; readonly weight: readonly number[] }[];
  /** Load of all other inputs for one in each direction: a weight that displaces nothing, and its moments. */
  readonly weightBy: readonly (readonly number[])[];
  readonly more: readonly number[];
}

/** The boat with its inputs where they likely are at a point: some in earnest, the others as a weight that displaces nothing. */
function* arrangedAt(
  { arrangement }: FloatedBoat,
  { inEarnest, majors, weightBy, more }: Pushed,
  z: readonly number[],
): Steps<Arrangement> {
  const changes = majors.map(({ input, weight }) => [input, input.value + input.sigma * inner(weight, z)] as const);
  const bodies = inEarnest ? yield* inEarnest(new Map(changes)) : arrangement.bodies;
  const [mass, ...moment] = more.map((load, part) =>
    weightBy.reduce((sum, by, k) => sum + by[part]! * z[k]!, load),
  ) as [number, number, number, number];
  const laden = { mass: bodies.mass + mass, massMoment: add(bodies.massMoment, moment) };
  return { ...arrangement, bodies: { ...bodies, ...laden } };
}

/** A figure at a point of the rule, against the figure in the middle. */
interface Figure extends RulePoint {
  readonly change: number;
}

interface Known {
  readonly belief: Belief;
  readonly inputs: readonly Input[];
  readonly direct: Float64Array;
  readonly rests: boolean;
}

/** What the pushes do to one figure: by way of the weight that they make up, and each directly. */
function uncertaintyOf(
  value: number,
  figures: readonly Figure[],
  { belief, inputs, direct, rests }: Known,
): Uncertainty {
  const { columns, weights } = belief;
  // The part that goes with the weight is in the points; what is left of each input's own part is independent of it.
  const common = weights.map(row => product(direct, row));
  const apart = Math.max(0, belief.variance(direct) - inner(common, common));
  const total = figures.reduce((sum, { weight }) => sum + weight, 0);
  const mean = figures.reduce((sum, { weight, change }) => sum + (weight / total) * change, 0);
  const variance = figures.reduce((sum, { weight, change }) => sum + (weight / total) * (change - mean) ** 2, apart);
  const slopes = columns.map((_, k) =>
    figures.reduce((sum, { z, weight, change }) => sum + (weight / total) * change * z[k]!, 0),
  );
  const straight = inner(slopes, slopes) + apart;
  const byLoad = slopes.map((slope, k) => slope - common[k]!);
  const isCurved = variance - straight > CURVED * variance;
  return uncertainty(
    { value, sigma: Math.sqrt(variance), rough: !rests ? 'may-not-rest' : isCurved ? 'curved' : null },
    () => {
      if (!(straight > 0)) return [];
      const changes = belief.byInput(byLoad).map((change, i) => direct[i]! + change);
      const parts = belief.parts(changes, byLoad);
      return inputs
        .flatMap((input, i) => {
          const share = parts[i]! / straight;
          return share > NO_SHARE ? [{ input, change: changes[i]!, share }] : [];
        })
        .sort((a, b) => b.share - a.share);
    },
  );
}

/** An uncertainty whose shares are told apart when first asked for: of most figures nobody asks. */
function uncertainty(known: Omit<Uncertainty, 'shares'>, sharesOf: () => readonly Share[]): Uncertainty {
  let shares: readonly Share[] | null = null;
  return {
    ...known,
    get shares() {
      shares ??= sharesOf();
      return shares;
    },
  };
}

/** The same of a few numbers. */
const inner = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, i) => sum + value * b[i]!, 0);
