import type { Describer } from '../../../schema/describe.ts';
import type { Boat, Water } from '../boat/boat.ts';
import { type KeptEntries, readBoat } from '../boat/readBoat.ts';
import { sameData } from '../boat/sameData.ts';
import type { BoatSource } from '../boat/source.ts';
import type { Trial } from '../boat/trial.ts';
import { assembleBodies, type Bodies, type BodyCache, emptyCache } from '../bodies/assemble.ts';
import { floatIn, type InCondition, inBoth } from '../conditions/loadingCondition.ts';
import { type Passage, passageOf } from '../conditions/passage.ts';
import { floatSubmerged, type Submerged } from '../conditions/submerged.ts';
import { floatSurfaced, type Surfaced } from '../conditions/surfaced.ts';
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
import { inSteps, type Working } from '../steps/steps.ts';
import { readSyntax, type Syntax } from '../text/reading/syntax.ts';
import { type Learned, learn } from '../trials/learn.ts';
import { nextReading } from '../trials/nextReading.ts';
import { conditionOnTrials } from '../trials/pool/condition.ts';
import type { Slip } from '../trials/pool/reconcile.ts';
import { readablesOf, rowsRead } from '../trials/readables.ts';
import type { Owner } from '../uncertainty/residualLoads.ts';
import type { Uncertainty } from '../uncertainty/spread.ts';
import { type Uncertainties, uncertaintySteps } from '../uncertainty/uncertainties.ts';
import { emptyVariations, type VariationCache } from '../uncertainty/variations.ts';
import { keepHistory } from './keepHistory.ts';

/**
 * Everything that is known of one version of a boat file. Each stage is a value that the next is made from:
 * text -> syntax -> boat -> bodies -> conditions -> findings; corrections are made when first asked for.
 */
export interface Analysis {
  readonly syntax: Syntax;
  readonly boat: Boat;
  /** The boat with what it was read from, to be read again with other figures. */
  readonly source: BoatSource;
  /** What was read off the boat in the water; in no figure of it. */
  readonly trials: readonly Trial[];
  readonly bodies: Bodies;
  readonly surfaced: Surfaced;
  readonly submerged: Submerged;
  /** Every loading condition with the boat in it: surfaced and submerged, then the scheme's others. */
  readonly conditions: readonly InCondition[];
  /** The figures and loading conditions that it was analysed by. */
  readonly scheme: Scheme;
  readonly passage: Passage;
  /** Findings about the file itself, before it says what the boat does. */
  readonly ofFile: readonly Finding[];
  readonly findings: readonly Finding[];
  /** Those of the file and of the boat, which wait for nothing. */
  readonly ofBoat: readonly Finding[];
  /** Does a little of the work on uncertainties, then on slips; true when `findings` and `uncertainties` are there at once too. */
  stepToFindings(): boolean;
  /** Whether `uncertainties` are there at once, and with them all that the trials say but slips. */
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
   * The same, where the trials that an entry of the file was made of are known too. Null while the file is faulty or parts
   * are missing: that is the greater uncertainty.
   */
  uncertainties(): Uncertainties | null;
  /**
   * What the uncertainties leave open of the limits, and what to weigh next; computed once, at the first call, apart from
   * `findings`, which are there at once.
   */
  openQuestions(): readonly Finding[];
  /** What the trials tell of the file; computed once, at the first call. */
  learned(): Learned;
  /** For what corrections can tell besides (room that would do, bays to begin with, reach); null where there are none. */
  readonly boatToTrim: BoatToTrim | null;
  /** Parts for the next analysis of the same file. */
  readonly kept: Kept & { readonly uncertainties: () => Uncertainties; readonly filed: Working<Uncertainties> };
}

export interface Afterthoughts {
  /** But for readings of which it is not known yet whether they are slips. */
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
  const { syntax, ofFile, trials, wantedFiles, scheme, kept } = analysis;
  const boat: Boat = { ...analysis.boat, water };
  const density = { value: water.density, sigma: null, unit: null };
  return conclude({
    syntax,
    ofFile,
    boat,
    source: { ...analysis.source, boat, water: { density } },
    trials,
    wantedFiles,
    scheme,
    kept,
  });
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
  const isSame = previous !== undefined && sameBodies(previous, bodies, boat);
  const surfaced = isSame ? previous.surfaced : floatSurfaced(bodies, boat.length);
  const submerged = isSame ? previous.submerged : floatSubmerged(bodies);
  const conditions =
    isSame && previous.scheme === scheme
      ? previous.conditions
      : [
          ...inBoth(surfaced, submerged),
          ...scheme.others.map(condition => {
            const there = condition.aboard ? assembleBodies(condition.aboard(read.source).boat, cache) : bodies;
            return floatIn(condition, there, boat.length);
          }),
        ];
  const passage = isSame ? previous.passage : passageOf(bodies, surfaced, submerged, boat.length);
  const isFaulty = ofFile.some(finding => finding.severity === 'error' && !isOfTrials(finding));
  const boatToTrim: BoatToTrim | null =
    surfaced.status === 'afloat' && !isFaulty
      ? { boat, bodies, surfaced, submerged, cache, schema: kept.entries.schemas.made.part }
      : null;
  const owner: Owner = { source: read.source, cache, variations: kept.variations };
  const isKnown =
    isSame && previous.scheme === scheme && sameUncertainties(previous, read) && sameTrials(previous, read);
  const filed = isKnown
    ? previous.kept.filed
    : inSteps(() => uncertaintySteps(owner, bodies, conditions, scheme.figures));
  const isWhole = isWholeBoat({ isFaulty, boat });
  const learned =
    isKnown && isWhole === isWholeBoat(previous)
      ? previous.learned
      : once(() => learn({ ...owner, trials: read.trials, inputs: filed.all().inputs }, isWhole));
  const allUncertainties = isKnown
    ? previous.kept.uncertainties
    : once(() =>
        read.trials.length > 0 ? conditionOnTrials(filed.all(), learned().comparisons, read.source) : filed.all(),
      );
  const uncertainties = () => (isWhole ? allUncertainties() : null);
  const readables = once(() => {
    const trialSet = { ...owner, trials: read.trials, inputs: filed.all().inputs };
    // Uncertainties that heed the trials have their readings in them already.
    const known = uncertainties() === filed.all() ? [] : rowsRead(trialSet, learned().comparisons);
    return { readables: readablesOf(trialSet), known };
  });
  const next = ({ shares }: Uncertainty) => {
    const changes = new Map(shares.map(({ input, change }) => [input.id, change]));
    const figure = filed.all().inputs.map(({ id }) => changes.get(id) ?? 0);
    return nextReading(figure, readables().known, readables().readables);
  };
  const ofBoat = [...ofFile, ...judge(boat, surfaced, submerged, passage)];
  // While something is missing from the figures, no trial can agree with them.
  const hasTrials = isWhole && read.trials.length > 0;
  const ofTrials = (slipsOf: (learned: Learned) => readonly Slip[]): readonly Finding[] =>
    hasTrials ? judgeTrials(boat, learned().comparisons, slipsOf(learned())) : [];
  const ofTrialsSoFar = () => ofTrials(known => known.slipsSoFar());
  const hasUncertainties = () => !isWhole || filed.isDone();
  const openQuestions = once(() => judgeUncertainties(boat, conditions, scheme.figures, uncertainties(), next));
  const correcting =
    boatToTrim &&
    inSteps(function* () {
      const corrections = yield* proposeCorrections(boatToTrim);
      // The trials so far were made without them.
      return corrections.map(correction => ({
        ...correction,
        changes: keepHistory(correction.changes, read.syntax, read.trials),
      }));
    });
  return {
    ...read,
    kept: { ...kept, uncertainties: allUncertainties, filed },
    bodies,
    surfaced,
    submerged,
    conditions,
    passage,
    ofBoat,
    get findings() {
      return [...ofBoat, ...ofTrials(known => known.slips())];
    },
    stepToFindings: () => {
      if (!hasUncertainties()) return filed.step() && !hasTrials;
      return !hasTrials || learned().stepToSlips();
    },
    hasUncertainties,
    afterthoughts: () => ({ ofTrials: ofTrialsSoFar(), openQuestions: openQuestions() }),
    isFaulty,
    corrections: () => correcting?.all() ?? [],
    stepToCorrections: () => correcting?.step() ?? true,
    waterSet: boatToTrim && inSteps(() => waterSetOf(boatToTrim)),
    filedUncertainties: filed.all,
    uncertainties,
    learned,
    openQuestions,
    boatToTrim,
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
  sameData(previous.source.water, source.water) && sameData(previous.source.stock, source.stock);

/** Trials that a keystroke left as they were are the same ones. */
const sameTrials = (previous: Analysis, { trials }: Pick<Analysis, 'trials'>): boolean =>
  previous.trials.length === trials.length && trials.every((trial, i) => sameData(trial, previous.trials[i]));

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
