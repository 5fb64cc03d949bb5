import type { Describer } from '../../../schema/describe.ts';
import type { Boat, Water } from '../boat/boat.ts';
import { keepHistory } from '../boat/keepHistory.ts';
import { type KeptEntries, readBoat } from '../boat/readBoat.ts';
import type { BoatSource } from '../boat/source.ts';
import type { Trial } from '../boat/trial.ts';
import { assembleBodies, type Bodies, type BodyCache, emptyCache } from '../bodies/assemble.ts';
import { type Passage, passageOf } from '../conditions/passage.ts';
import { floatSubmerged, type Submerged } from '../conditions/submerged.ts';
import { floatSurfaced, type Surfaced } from '../conditions/surfaced.ts';
import type { Correction } from '../corrections/correction.ts';
import { type WaterSet, waterSetOf } from '../corrections/kinds/waterSet.ts';
import { proposeCorrections } from '../corrections/propose.ts';
import type { BoatToTrim } from '../corrections/room/boatToTrim.ts';
import type { Finding } from '../findings/finding.ts';
import { judge } from '../judges/judge.ts';
import { judgeTrials } from '../judges/judgeTrials.ts';
import { judgeUncertainties } from '../judges/judgeUncertainties.ts';
import type { MeshLookup } from '../meshFiles/meshFile.ts';
import { inSteps, type Working } from '../steps/steps.ts';
import { readSyntax, type Syntax } from '../text/reading/syntax.ts';
import { type Learned, learn, type Verdict } from '../trials/learn.ts';
import type { Owner } from '../uncertainty/residualLoads.ts';
import { type Uncertainties, uncertaintiesOf } from '../uncertainty/uncertainties.ts';
import { emptyVariations, type VariationCache } from '../uncertainty/variations.ts';

/**
 * Everything that is known of one version of a boat file. Each stage is a value that the next is made from:
 * text -> syntax -> boat -> bodies -> conditions -> findings; corrections are made when first asked for.
 */
export interface Analysis {
  readonly syntax: Syntax;
  readonly boat: Boat;
  /** The boat with what it was read from, to be read again with other figures. */
  readonly source: BoatSource;
  /** What was read off the boat in the water. */
  readonly trials: readonly Trial[];
  /** By the file alone, like all that follows from it here. */
  readonly bodies: Bodies;
  readonly surfaced: Surfaced;
  readonly submerged: Submerged;
  readonly passage: Passage;
  /** Findings about the file itself, before it says what the boat does. */
  readonly ofFile: readonly Finding[];
  /** The boat as the trials have it, which is what is judged and corrected; as filed where they say nothing. */
  withTrials(): FloatedBoat;
  readonly findings: readonly Finding[];
  /** The same at once, by the file while it is not yet known what the trials say. */
  findingsSoFar(): readonly Finding[];
  /** Does a little of the work on those; true when `findings` are there at once too. */
  stepToFindings(): boolean;
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
   * The same with the trials, value and uncertainty from one estimate. Null while the file is faulty or parts are missing: that is
   * the greater uncertainty.
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
  readonly kept: Kept;
}

/** A boat with how it lies in both conditions. */
export interface FloatedBoat
  extends Pick<Analysis, 'boat' | 'source' | 'bodies' | 'surfaced' | 'submerged' | 'passage'> {}

export interface Kept {
  readonly entries: KeptEntries;
  readonly cache: BodyCache;
  readonly variations: VariationCache;
}

/**
 * Analyses a text. With the previous analysis of the same file, entries, bodies and conditions that a keystroke left as
 * they were are taken from it. `meshes` hands out the mesh files that are loaded.
 */
export function analyse(
  text: string,
  describer: Describer,
  previous?: Analysis,
  meshes: MeshLookup = () => null,
): Analysis {
  const syntax = readSyntax(text);
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
      kept,
    },
    previous,
  );
}

/** The same boat in other water: everything that follows from the water is figured anew. */
export function inOtherWater(analysis: Analysis, water: Water): Analysis {
  const { syntax, ofFile, wantedFiles, kept } = analysis;
  const source = inWater(analysis.withTrials().source, water);
  // What the trials say is in the boat already: they were made in their own water.
  return conclude({ syntax, ofFile, boat: source.boat, source, trials: [], wantedFiles, kept });
}

function inWater(source: BoatSource, water: Water): BoatSource {
  const density = { value: water.density, sigma: null, unit: null };
  return { ...source, boat: { ...source.boat, water }, water: { density } };
}

/** Everything that follows from the boat as read. */
function conclude(
  read: Pick<Analysis, 'syntax' | 'ofFile' | 'boat' | 'source' | 'trials' | 'wantedFiles'> & { readonly kept: Kept },
  previous?: Analysis,
): Analysis {
  const { boat, ofFile, kept } = read;
  const { cache } = kept;
  const bodies = assembleBodies(boat, cache);
  const isSame = previous !== undefined && sameBodies(previous, bodies, boat);
  const surfaced = isSame ? previous.surfaced : floatSurfaced(bodies, boat.length);
  const submerged = isSame ? previous.submerged : floatSubmerged(bodies);
  const passage = isSame ? previous.passage : passageOf(bodies, surfaced, submerged, boat.length);
  const isFaulty = ofFile.some(finding => finding.severity === 'error' && !isOfTrials(finding));
  const owner: Owner = { source: read.source, cache, variations: kept.variations };
  const isKnown = isSame && sameUncertainties(previous, read) && sameTrials(previous, read);
  const filedUncertainties = isKnown
    ? previous.filedUncertainties
    : once(() => uncertaintiesOf(owner, bodies, surfaced, submerged));
  const isWhole = isWholeBoat({ isFaulty, boat });
  const hasTrials = isWhole && read.trials.length > 0;
  const learned =
    isKnown && isWhole === isWholeBoat(previous)
      ? previous.learned
      : once(() => learn({ ...owner, trials: read.trials, inputs: filedUncertainties().inputs }, isWhole));
  const filed: FloatedBoat = { boat, source: read.source, bodies, surfaced, submerged, passage };
  const floated = new WeakMap<Verdict, FloatedBoat>();
  const boatBy = (verdict: Verdict | null): FloatedBoat => {
    if (!verdict) return filed;
    const { boat: pooled } = verdict;
    const known = floated.get(verdict) ?? {
      ...pooled,
      passage: passageOf(pooled.bodies, pooled.surfaced, pooled.submerged, boat.length),
    };
    floated.set(verdict, known);
    return known;
  };
  const verdict = () => (hasTrials ? learned().verdict() : null);
  const withTrials = () => boatBy(verdict());
  const uncertaintiesBy = (said: Verdict | null) => (isWhole ? (said?.uncertainties ?? filedUncertainties()) : null);
  const boatToTrim = once((): BoatToTrim | null => {
    const pooled = withTrials();
    return pooled.surfaced.status === 'afloat' && !isFaulty
      ? { ...pooled, surfaced: pooled.surfaced, cache, schema: kept.entries.schemas.made.part }
      : null;
  });
  const judged = (said: Verdict | null): readonly Finding[] => {
    const lying = boatBy(said);
    const ofBoat = [...ofFile, ...judge(lying.boat, lying.surfaced, lying.submerged, lying.passage)];
    // While something is missing from the figures, no trial can agree with them.
    return hasTrials ? [...ofBoat, ...judgeTrials(boat, learned().comparisons, said?.slips ?? [])] : ofBoat;
  };
  const waterSet = once(() => {
    const ill = boatToTrim();
    return ill && inSteps(() => waterSetOf(ill));
  });
  const stepToTrials = () => !hasTrials || learned().step();
  const soFar = () => (hasTrials ? learned().soFar() : null);
  const correcting = inSteps(function* () {
    while (!stepToTrials()) yield;
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
    kept,
    bodies,
    surfaced,
    submerged,
    passage,
    withTrials,
    get findings() {
      return judged(verdict());
    },
    findingsSoFar: () => judged(soFar()),
    stepToFindings: stepToTrials,
    isFaulty,
    corrections: correcting.all,
    stepToCorrections: correcting.step,
    get waterSet() {
      return waterSet();
    },
    filedUncertainties,
    uncertainties: () => uncertaintiesBy(verdict()),
    learned,
    openQuestions: () => {
      const said = soFar();
      const lying = boatBy(said);
      return judgeUncertainties(lying.boat, lying.surfaced, lying.submerged, uncertaintiesBy(said));
    },
    get boatToTrim() {
      return boatToTrim();
    },
  };
}

/** Nothing is missing from the figures. */
const isWholeBoat = ({ isFaulty, boat }: Pick<Analysis, 'isFaulty' | 'boat'>): boolean =>
  !isFaulty && boat.leftOut.length === 0;

/** A value made at the first call. */
function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | null = null;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

/** Tolerances of the water and of the stock stand in no entry. */
const sameUncertainties = (previous: Analysis, { source }: Pick<Analysis, 'source'>): boolean =>
  JSON.stringify([previous.source.water, previous.source.stock]) === JSON.stringify([source.water, source.stock]);

/** Trials that a keystroke left as they were are the same ones. */
const sameTrials = (previous: Analysis, { trials }: Pick<Analysis, 'trials'>): boolean =>
  previous.trials.length === trials.length &&
  trials.every((trial, i) => JSON.stringify(trial) === JSON.stringify(previous.trials[i]));

/** Trials are in no figure: a fault in one spoils none. */
const isOfTrials = ({ place }: Finding): boolean => 'path' in place && place.path[0] === 'trials';

/** The same entries in the same water: the conditions are the same too. */
function sameBodies(previous: Analysis, bodies: Bodies, boat: Boat): boolean {
  const before = previous.bodies;
  return (
    before.density === bodies.density &&
    previous.boat.length === boat.length &&
    before.weights.length === bodies.weights.length &&
    before.tanks.length === bodies.tanks.length &&
    before.displacers.length === bodies.displacers.length &&
    before.weights.every((weight, i) => weight.entry === bodies.weights[i]?.entry) &&
    before.tanks.every((tank, i) => tank === bodies.tanks[i]) &&
    before.displacers.every((displacer, i) => displacer === bodies.displacers[i])
  );
}
