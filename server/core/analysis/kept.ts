import type { Describer } from '../../../schema/describe.ts';
import type { Neighbours } from '../arrangement/neighbours.ts';
import type { OwnCondition } from '../boat/ownCondition.ts';
import type { KeptEntries } from '../boat/sectionReader.ts';
import type { BodyCache } from '../bodies/assemble.ts';
import type { ReadSoFar } from '../corrections/room/boatToTrim.ts';
import type { Scheme } from '../figures/scheme.ts';
import type { Finding, Mend } from '../findings/finding.ts';
import type { MeshLookup } from '../meshFiles/meshFile.ts';
import type { Steps, Working } from '../steps/steps.ts';
import { type Learned, learn } from '../trials/learn.ts';
import type { FiguresAsked } from '../trials/pool/figures.ts';
import type { TrialSet } from '../trials/pool/trialSet.ts';
import { type Uncertainties, uncertaintySteps } from '../uncertainty/uncertainties.ts';
import type { VariationCache } from '../uncertainty/variations.ts';
import { type BoatInWater, floated } from './inWater.ts';

/** What is figured by a scheme of a file with conditions of its own. */
export interface LoadedScheme {
  readonly base: Scheme;
  readonly conditions: readonly OwnCondition[];
  /** Both together. */
  readonly scheme: Scheme;
}

/** What the next analysis of the same file is made with. */
export interface Parts {
  readonly describer: Describer;
  readonly meshes: MeshLookup;
  readonly entries: KeptEntries;
  readonly cache: BodyCache;
  readonly neighbours: Neighbours;
  readonly variations: VariationCache;
  readonly loaded: LoadedScheme;
}

export interface Kept extends Parts {
  readonly heard: Working<Heard>;
  /** The mends of findings that do no harm, as they are tried. */
  readonly mends: Map<Finding, Working<readonly Mend[]>>;
}

/** What takes long: the uncertainties by the file, and what the trials make of the boat. */
export interface Heard {
  readonly filedUncertainties: Uncertainties;
  /** Null without trials. */
  readonly learned: Learned | null;
  /** The boat as the trials have it, with the uncertainties that they leave; null where they say nothing. */
  readonly pooled: Pooled | null;
}

interface Pooled {
  readonly inWater: BoatInWater;
  readonly uncertainties: Uncertainties;
}

/** Trials of the same boat in other water: where it was read, and what that leaves open. */
export interface TaughtBefore {
  readonly readSoFar: ReadSoFar;
  uncertainties(asked: FiguresAsked): Steps<Uncertainties>;
}

interface Known {
  readonly uncertainties?: Uncertainties | undefined;
  readonly taught?: TaughtBefore | undefined;
}

/** Figures the uncertainties of the boat as filed, unless they are known, and hears its trials. */
export function* hear(
  filed: BoatInWater,
  asked: Omit<TrialSet, 'inputs'> & { readonly scheme: Scheme },
  { uncertainties: known, taught }: Known = {},
): Steps<Heard> {
  const { scheme, ...trialSet } = asked;
  const { figures } = scheme;
  const alone = () =>
    taught
      ? taught.uncertainties({ ...filed, figures })
      : uncertaintySteps(trialSet, filed.bodies, filed.conditions, figures);
  const filedUncertainties = known ?? (yield* alone());
  if (trialSet.trials.length === 0) return { filedUncertainties, learned: null, pooled: null };
  const learned = yield* learn({ ...trialSet, inputs: filedUncertainties.inputs });
  const { verdict } = learned;
  if (!verdict) return { filedUncertainties, learned, pooled: null };
  const inWater = yield* floated(verdict.source, scheme, trialSet.cache);
  yield;
  const uncertainties = yield* verdict.uncertainties({ ...inWater, figures });
  return { filedUncertainties, learned, pooled: { inWater, uncertainties } };
}
