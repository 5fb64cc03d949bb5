import type { Path } from '../../../schema/path.ts';
import type { Boat, Limits } from '../boat/boat.ts';
import type { BoatSource } from '../boat/source.ts';
import type { Bodies } from '../bodies/assemble.ts';
import type { Loading } from './float.ts';
import { floatSubmerged, type Submerged } from './submerged.ts';
import { floatSurfaced, type Surfaced } from './surfaced.ts';

/** What is asked of the boat, by the word that stands under `limits:`; rad, m, 0..1. */
export type Asked = Readonly<Partial<Record<string, number | readonly [least: number, most: number]>>>;

/** A state of the boat that it is floated and judged in: what is aboard, what is in its tanks, what is asked of it there. */
export interface LoadingCondition {
  /** Its key in the report for machines. */
  readonly id: string;
  /** "Surfaced". */
  readonly title: string;
  /** Where the file has it; those that every boat has stand nowhere. */
  readonly path?: Path;
  /** The boat as it is loaded there; null: everything in the file. */
  readonly aboard: ((source: BoatSource) => BoatSource) | null;
  readonly loading: Loading;
  readonly asked: (limits: Limits) => Asked;
}

/** Nothing is asked of the boat there: it is shown and no more. */
export const asksNothing = ({ asked }: LoadingCondition, { limits }: { readonly limits: Limits }): boolean =>
  Object.keys(asked(limits)).length === 0;

export const SURFACED: LoadingCondition = {
  id: 'surfaced',
  title: 'Surfaced',
  aboard: null,
  loading: { kind: 'own' },
  asked: limits => limits.surfaced,
};

export const SUBMERGED: LoadingCondition = {
  id: 'submerged',
  title: 'Submerged',
  aboard: null,
  loading: { kind: 'neutral' },
  asked: ({ submerged: { reserve: _, ...asked } }) => asked,
};

/** The same of a boat that is meant to stay a little light: held under with its tanks full. */
const HELD: LoadingCondition = {
  ...SUBMERGED,
  loading: { kind: 'held' },
  asked: ({ submerged: { fill: _, reserve, ...asked } }) => (reserve ? { ...asked, reserve } : asked),
};

/** A boat that is to be trimmed for under water too: with a tank, or held under by its planes. */
export const divesAtAll = ({ tanks, limits }: Pick<Boat, 'tanks' | 'limits'>): boolean =>
  tanks.length > 0 || limits.submerged.reserve !== null;

/** How a boat is meant to be under water. */
export const submergedOf = ({ limits }: { readonly limits: Limits }): LoadingCondition =>
  limits.submerged.reserve ? HELD : SUBMERGED;

/** Whether the boat lies at the surface or hangs under it: other figures mean something there. */
export type Where = 'afloat' | 'submerged';

export const whereIn = ({ loading }: LoadingCondition): Where =>
  loading.kind === 'neutral' || loading.kind === 'held' ? 'submerged' : 'afloat';

/** The boat floated in a condition. */
export type InCondition =
  | { readonly condition: LoadingCondition; readonly where: 'afloat'; readonly state: Surfaced }
  | { readonly condition: LoadingCondition; readonly where: 'submerged'; readonly state: Submerged };

/** The same with what is aboard there. */
export type LoadedCondition = InCondition & { readonly bodies: Bodies };

export const floatIn = (condition: LoadingCondition, bodies: Bodies, hullLength: number): LoadedCondition =>
  whereIn(condition) === 'submerged'
    ? { condition, bodies, where: 'submerged', state: floatSubmerged(bodies, condition.loading) }
    : { condition, bodies, where: 'afloat', state: floatSurfaced(bodies, hullLength, condition.loading) };

export type BuiltIn = 'surfaced' | 'submerged';

/** A value for each of some conditions, surfaced and submerged among them, by their ids. */
export const byCondition = <C extends InCondition, T>(
  conditions: readonly C[],
  make: (inCondition: C) => T,
): Readonly<Record<BuiltIn, T> & Record<string, T>> =>
  Object.fromEntries(conditions.map(inCondition => [inCondition.condition.id, make(inCondition)])) as Record<
    BuiltIn,
    T
  >;

/** How a boat lies in every condition that is looked at. */
export interface LyingEverywhere {
  readonly surfaced: Surfaced;
  readonly submerged: Submerged;
  /** Loading conditions besides those two. */
  readonly others: readonly LoadedCondition[];
}

/** All of them: surfaced, submerged, then the others. */
export const conditionsOf = ({ surfaced, submerged, others }: LyingEverywhere): readonly InCondition[] => [
  ...inBoth(surfaced, submerged),
  ...others,
];

/** The two conditions that every boat is trimmed for. */
export const inBoth = (surfaced: Surfaced, submerged: Submerged): readonly InCondition[] => [
  { condition: SURFACED, where: 'afloat', state: surfaced },
  {
    condition: submerged.status === 'neutral' && submerged.heldDown !== null ? HELD : SUBMERGED,
    where: 'submerged',
    state: submerged,
  },
];
