import type { Describer } from '../../../schema/describe.ts';
import type { Water } from '../boat/boat.ts';
import { type KeptEntries, readBoat } from '../boat/readBoat.ts';
import { sameData } from '../boat/sameData.ts';
import type { BoatSource } from '../boat/source.ts';
import type { Trial } from '../boat/trial.ts';
import { assembleBodies, type BodyCache, emptyCache, sameBodies } from '../bodies/assemble.ts';
import type { Correction } from '../corrections/correction.ts';
import { type WaterSet, waterSetOf } from '../corrections/kinds/waterSet.ts';
import { proposeCorrections } from '../corrections/propose.ts';
import type { BoatToTrim } from '../corrections/room/boatToTrim.ts';
import { type Scheme, STANDARD } from '../figures/scheme.ts';
import type { Finding } from '../findings/finding.ts';
import { judge } from '../judges/judge.ts';
import { judgeTrials } from '../judges/judgeTrials.ts';
import { judgeUncertainties } from '../judges/judgeUncertainties.ts';
import type { MeshLookup } from '../meshFiles/meshFile.ts';
import { once } from '../steps/once.ts';
import { inSteps, type Steps, type Working } from '../steps/steps.ts';
import { readSyntax, type Syntax } from '../text/reading/syntax.ts';
import { type Learned, learn, type Verdict } from '../trials/learn.ts';
import { nextReading } from '../trials/nextReading.ts';
import { readablesOf, rowsRead } from '../trials/readables.ts';
import type { Owner } from '../uncertainty/residualLoads.ts';
import type { Uncertainty } from '../uncertainty/spread.ts';
import { type Uncertainties, uncertaintySteps } from '../uncertainty/uncertainties.ts';
import { emptyVariations, type VariationCache } from '../uncertainty/variations.ts';
import { type BoatInWater, floated, inWaterOf } from './inWater.ts';
import { keepHistory } from './keepHistory.ts';

/**
 * Everything that is known of one version of a boat file. Each stage is a value that the next is made from:
 * text -> syntax -> boat -> bodies -> conditions -> findings; corrections are made when first asked for. The boat here is that
 * of the file alone.
 */
export interface Analysis extends BoatInWater {
  readonly syntax: Syntax;
  /** What was read off the boat in the water. */
  readonly trials: readonly Trial[];
  /** The figures and loading conditions that it was analysed by. */
  readonly scheme: Scheme;
  /** Findings about the file itself, before it says what the boat does. */
  readonly ofFile: readonly Finding[];
  /** The boat as the trials have it, which is what is judged and corrected; as filed where they say nothing. */
  withTrials(): BoatInWater;
  readonly findings: readonly Finding[];
  /** Those of the file and of the boat, which wait for nothing: by the file while it is not yet known what the trials say. */
  readonly ofBoat: readonly Finding[];
  /** Does a little of the work on uncertainties and on what the trials say; true when `findings` and `uncertainties` are there at once too. */
  stepToFindings(): boolean;
  /** Whether `uncertainties` are there at once, and with them all that the trials say. */
  hasUncertainties(): boolean;
  /** What is told after the rest, because it waits for the uncertainties. */
  afterthoughts(): Afterthoughts;
  /** The file itself has errors: something may be missing from the figures. */
  readonly isFaulty: boolean;
  /** Mesh files that the boat is made of, by name; one that was still being loaded is in no figure yet. */
  readonly wantedFiles: readonly string[];
  /** Computed once, at the first call; none while the file is faulty, for the fault may be in what the boat weighs. */
  corrections(): readonly Correction[];
  /** Does a few milliseconds of that work; true when all of it is done. */
  stepToCorrections(): boolean;
  /** The pieces that change between fresh and sea water; null where there is nothing to be trimmed. */
  readonly waterSet: Working<WaterSet | null> | null;
  /** What the uncertainties of masses, places and sizes leave open of every figure; computed once, at the first call. */
  filedUncertainties(): Uncertainties;
  /**
   * The same with the trials, value and uncertainty from one estimate. Null while the file is faulty or parts are missing:
   * that is the greater uncertainty.
   */
  uncertainties(): Uncertainties | null;
  /**
   * What the uncertainties leave open of the limits, and what to weigh next; computed once, at the first call, apart from
   * `findings`, which are there at once.
   */
  openQuestions(): readonly Finding[];
  /** What the trials tell of the boat; computed once, at the first call. */
  learned(): Learned;
  /** For what corrections can tell besides (room that would do, bays to begin with, reach); null where there are none. */
  readonly boatToTrim: BoatToTrim | null;
  /** Parts for the next analysis of the same file. */
  readonly kept: Kept & { readonly filed: Working<Uncertainties>; readonly pooled: Working<Pooled | null> };
}

/** What the trials say of the boat, and the boat that they say it of. */
interface Pooled {
  readonly verdict: Verdict;
  readonly inWater: BoatInWater;
  readonly uncertainties: Uncertainties;
}

export interface Afterthoughts {
  readonly ofTrials: readonly Finding[];
  readonly openQuestions: readonly Finding[];
}

interface Kept {
  readonly entries: KeptEntries;
  readonly cache: BodyCache;
  readonly variations: VariationCache;
}

/**
 * Analyses a text. With the previous analysis of the same file, entries, bodies and conditions that a keystroke left as
 * they were are taken from it. `meshes` hands out the mesh files that are loaded; `scheme` says what is figured.
 */
export function analyse(
  text: string,
  describer: Describer,
  previous?: Analysis,
  meshes: MeshLookup = () => null,
  scheme: Scheme = STANDARD,
): Analysis {
  const syntax = readSyntax(text, previous?.syntax);
  const cache = previous?.kept.cache ?? emptyCache();
  const reading = readBoat(syntax, describer, previous?.kept.entries, { meshes, shapes: cache.shapes });
  const variations = previous?.kept.variations ?? emptyVariations();
  const kept: Kept = { entries: reading.kept, cache, variations };
  const ofFile = [...syntax.findings, ...reading.findings];
  return conclude(
    {
      syntax,
      ofFile,
      boat: reading.boat,
      source: reading.source,
      trials: reading.trials,
      wantedFiles: reading.meshNames,
      scheme,
      kept,
    },
    previous,
  );
}

/** The same boat in other water: everything that follows from the water is figured anew. */
export function inOtherWater(analysis: Analysis, water: Water): Analysis {
  const { syntax, ofFile, wantedFiles, scheme, kept } = analysis;
  const known = analysis.withTrials().source;
  const density = { value: water.density, sigma: null, unit: null };
  const source: BoatSource = { ...known, boat: { ...known.boat, water }, water: { density } };
  // What the trials say is in the boat already: they were made in their own water.
  return conclude({ syntax, ofFile, boat: source.boat, source, trials: [], wantedFiles, scheme, kept });
}

/** What can be told before the uncertainties are figured, for whoever does not wait for them. */
export const withoutUncertainties = (analysis: Analysis): Analysis =>
  Object.create(analysis, { uncertainties: { value: () => null } }) as Analysis;

/** Everything that follows from the boat as read. */
function conclude(
  read: Pick<Analysis, 'syntax' | 'ofFile' | 'boat' | 'source' | 'trials' | 'wantedFiles' | 'scheme'> & {
    readonly kept: Kept;
  },
  previous?: Analysis,
): Analysis {
  const { boat, ofFile, scheme, kept } = read;
  const { cache } = kept;
  const bodies = assembleBodies(boat, cache);
  const isSame =
    previous?.scheme === scheme && previous.boat.length === boat.length && sameBodies(previous.bodies, bodies);
  const filedBoat: BoatInWater = isSame
    ? { ...inWaterOf(previous), boat, source: read.source, bodies }
    : floated(read.source, scheme, cache);
  const { conditions } = filedBoat;
  const isFaulty = ofFile.some(finding => finding.severity === 'error' && !isOfTrials(finding));
  const owner: Owner = { source: read.source, cache, variations: kept.variations };
  const isKnown = isSame && sameUncertainties(previous, read) && sameTrials(previous, read);
  const filed = isKnown
    ? previous.kept.filed
    : inSteps(() => uncertaintySteps(owner, bodies, conditions, scheme.figures));
  const isWhole = isWholeBoat({ isFaulty, boat });
  const learned =
    isKnown && isWhole === isWholeBoat(previous)
      ? previous.learned
      : once(() => learn({ ...owner, trials: read.trials, inputs: filed.all().inputs }, isWhole));
  // While something is missing from the figures, no trial can agree with them.
  const hasTrials = isWhole && read.trials.length > 0;
  const pooled =
    isKnown && isWhole === isWholeBoat(previous)
      ? previous.kept.pooled
      : inSteps(function* (): Steps<Pooled | null> {
          while (!filed.step()) yield;
          if (!hasTrials) return null;
          while (!learned().step()) yield;
          const verdict = learned().verdict();
          if (!verdict) return null;
          const inWater = floated(verdict.source, scheme, cache);
          yield;
          return {
            verdict,
            inWater,
            uncertainties: yield* verdict.uncertainties({ ...inWater, figures: scheme.figures }),
          };
        });
  const pooledSoFar = () => (hasTrials && pooled.isDone() ? pooled.all() : null);
  const withTrials = () => (hasTrials ? pooled.all()?.inWater : null) ?? filedBoat;
  const uncertainties = () => (isWhole ? ((hasTrials ? pooled.all()?.uncertainties : null) ?? filed.all()) : null);
  const boatToTrim = once((): BoatToTrim | null => {
    const { surfaced, ...inWater } = withTrials();
    if (surfaced.status !== 'afloat' || isFaulty) return null;
    return { ...inWater, surfaced, uncertainties, cache, schema: kept.entries.schemas.made.part };
  });
  const readables = once(() => {
    const trialSet = { ...owner, trials: read.trials, inputs: filed.all().inputs };
    // Uncertainties that heed the trials have their readings in them already.
    const known = !hasTrials || pooled.all() === null ? [] : rowsRead(trialSet, learned().comparisons);
    return { readables: readablesOf(trialSet), known };
  });
  const next = ({ shares }: Uncertainty) => {
    const changes = new Map(shares.map(({ input, change }) => [input.id, change]));
    const figure = filed.all().inputs.map(({ id }) => changes.get(id) ?? 0);
    return nextReading(figure, readables().known, readables().readables);
  };
  const judged = (inWater: BoatInWater) => [...ofFile, ...judge(inWater, scheme.figures)];
  const ofTrials = (): readonly Finding[] =>
    hasTrials ? judgeTrials(boat, learned().comparisons, pooled.all()?.verdict.slips ?? []) : [];
  const hasUncertainties = () => !isWhole || pooled.isDone();
  const openQuestions = once(() => {
    const inWater = withTrials();
    return judgeUncertainties(inWater.boat, inWater.conditions, scheme.figures, uncertainties(), next);
  });
  const waterSet = once(() => {
    const ill = boatToTrim();
    return ill && inSteps(() => waterSetOf(ill));
  });
  const correcting = inSteps(function* () {
    while (hasTrials && !pooled.step()) yield;
    const ill = boatToTrim();
    const corrections = ill ? yield* proposeCorrections(ill) : [];
    // The trials so far were made without them.
    return corrections.map(correction => ({
      ...correction,
      changes: keepHistory(correction.changes, read.syntax, read.trials),
    }));
  });
  return {
    ...read,
    ...filedBoat,
    kept: { ...kept, filed, pooled },
    withTrials,
    get ofBoat() {
      return judged(pooledSoFar()?.inWater ?? filedBoat);
    },
    get findings() {
      return [...judged(withTrials()), ...ofTrials()];
    },
    stepToFindings: () => !isWhole || pooled.step(),
    hasUncertainties,
    afterthoughts: () => ({ ofTrials: ofTrials(), openQuestions: openQuestions() }),
    isFaulty,
    corrections: correcting.all,
    stepToCorrections: correcting.step,
    get waterSet() {
      return waterSet();
    },
    filedUncertainties: filed.all,
    uncertainties,
    learned,
    openQuestions,
    get boatToTrim() {
      return boatToTrim();
    },
  };
}

/** Nothing is missing from the figures. */
const isWholeBoat = ({ isFaulty, boat }: Pick<Analysis, 'isFaulty' | 'boat'>): boolean =>
  !isFaulty && boat.leftOut.length === 0;

/** Tolerances of the water and of the stock stand in no entry. */
const sameUncertainties = (previous: Analysis, { source }: Pick<Analysis, 'source'>): boolean =>
  sameData(previous.source.water, source.water) && sameData(previous.source.stock, source.stock);

/** Trials that a keystroke left as they were are the same ones. */
const sameTrials = (previous: Analysis, { trials }: Pick<Analysis, 'trials'>): boolean =>
  previous.trials.length === trials.length && trials.every((trial, i) => sameData(trial, previous.trials[i]));

/** Trials are in no figure: a fault in one spoils none. */
const isOfTrials = ({ place }: Finding): boolean => 'path' in place && place.path[0] === 'trials';
