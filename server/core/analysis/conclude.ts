import type { Boat } from '../boat/boat.ts';
import { sameData } from '../boat/sameData.ts';
import type { BoatSource } from '../boat/source.ts';
import type { Trial } from '../boat/trial.ts';
import { bodySteps, sameBodies } from '../bodies/assemble.ts';
import { waterSetOf } from '../corrections/kinds/waterSet.ts';
import { proposeCorrections } from '../corrections/propose.ts';
import type { ReadSoFar } from '../corrections/room/boatToTrim.ts';
import { judge, judgeMotion } from '../judges/judge.ts';
import { judgeTrials } from '../judges/judgeTrials.ts';
import { judgeUncertainties } from '../judges/judgeUncertainties.ts';
import { allDone, finish, inSteps, type Steps, through, type Working } from '../steps/steps.ts';
import { nextReading, UNREAD } from '../trials/nextReading.ts';
import { readablesOf } from '../trials/readables.ts';
import type { Uncertainty } from '../uncertainty/spread.ts';
import { type Analysis, type Said, saying, type Unsaid } from './analysis.ts';
import { type BoatInWater, floated, inWaterOf } from './inWater.ts';
import { keepHistory } from './keepHistory.ts';
import { type Heard, hear, type Parts, type TaughtBefore } from './kept.ts';
import { soundOffers } from './soundOffers.ts';

/** A boat as it was read. */
export interface BoatAsRead extends Pick<Analysis, 'syntax' | 'file' | 'trials' | 'scheme'> {
  readonly source: BoatSource;
  readonly parts: Parts;
  /** What trials taught that are in the boat as it was read already. */
  readonly taught?: TaughtBefore;
}

/** Everything that follows from the boat as read; what the previous analysis has alike is taken from it. */
export const conclude = (read: BoatAsRead, previous?: Analysis): Analysis => finish(conclusion(read, previous));

/** The same in steps. */
export function* conclusion(read: BoatAsRead, previous?: Analysis): Steps<Analysis> {
  const { source, file, scheme, parts, trials, taught } = read;
  const { cache, variations } = parts;
  const filed = yield* putInWater(read, previous);
  yield;
  const isSameBoat = previous !== undefined && holdsStill(read, filed, previous);
  const knownUncertainties =
    isSameBoat && previous.kept.heard.isDone() ? previous.kept.heard.all().filedUncertainties : undefined;
  const heard: Working<Heard> =
    isSameBoat && sameTrials(trials, previous.trials)
      ? previous.kept.heard
      : // While something is missing from the figures, no trial can agree with them.
        inSteps(() =>
          hear(
            filed,
            { source, cache, variations, trials: file.isWhole ? trials : [], scheme },
            { uncertainties: knownUncertainties, taught },
          ),
        );
  const settled: Working<Analysis> = inSteps(function* () {
    // What is asked of it next are its findings.
    yield* through(file.places.found);
    if (!file.isWhole) return atOnce;
    return yield* settle(known, said, yield* through(heard), taught);
  });
  // What is figured without a part is no figure of this boat: nothing is said of it, and the slip is the one finding.
  const ofBoat = file.isWhole ? { ofBoat: judge(filed, scheme.figures), inMotion: inMotion(filed) } : NOTHING_OF_BOAT;
  const said: Said = { ...ofBoat, ofTrials: [], openQuestions: [] };
  const known: Unsaid = {
    ...filed,
    syntax: read.syntax,
    file,
    trials,
    scheme,
    filed,
    withTrials: taught !== undefined,
    uncertainties: null,
    filedUncertainties: null,
    learned: null,
    settled,
    corrections: inSteps(function* () {
      const found = yield* foundToTrim(settled);
      const corrections = found ? yield* proposeCorrections(found) : [];
      // The trials so far were made without them.
      return corrections.map(correction => ({
        ...correction,
        changes: keepHistory(correction.changes, read.syntax, trials),
      }));
    }),
    offers: inSteps(function* () {
      return yield* soundOffers(yield* through(settled));
    }),
    waterSet: inSteps(function* () {
      const found = yield* foundToTrim(settled);
      return found && (yield* waterSetOf(found));
    }),
    shapes: cache.shapes,
    neighbours: parts.neighbours,
    kept: { ...parts, heard, mends: new Map() },
  };
  const owner = { file, parts, taught, filed: filed.boat };
  const atOnce = saying(known, said, () => boatToTrim(owner, filed, null));
  return atOnce;
}

const NOTHING_OF_BOAT: Pick<Said, 'ofBoat' | 'inMotion'> = { ofBoat: [], inMotion: allDone([]) };

/** What does not float goes nowhere. */
const inMotion = (inWater: BoatInWater): Said['inMotion'] =>
  inWater.surfaced.status === 'afloat' ? inSteps(() => judgeMotion(inWater)) : allDone([]);

/** The boat by the file; as it lay before where neither it nor what is asked of it has changed. */
function* putInWater({ source, scheme, parts: { cache } }: BoatAsRead, previous?: Analysis): Steps<BoatInWater> {
  const { boat } = source;
  const bodies = yield* bodySteps(boat, cache);
  const before = previous?.filed;
  const isSame =
    previous?.scheme === scheme && before?.boat.length === boat.length && sameBodies(before.bodies, bodies);
  if (isSame) return { ...inWaterOf(before), boat, source, bodies };
  return yield* floated(source, scheme, cache);
}

/** What is left open of the boat by its file holds still: tolerances of the water and of the stock stand in no entry. */
const holdsStill = ({ source, file }: BoatAsRead, filed: BoatInWater, previous: Analysis): boolean =>
  filed.conditions === previous.filed.conditions &&
  file.isWhole === previous.file.isWhole &&
  sameData(previous.filed.source.water, source.water) &&
  sameData(previous.filed.source.stock, source.stock);

const sameTrials = (trials: readonly Trial[], before: readonly Trial[]): boolean =>
  before.length === trials.length && trials.every((trial, i) => sameData(trial, before[i]));

type Owner = Pick<BoatAsRead, 'file' | 'parts'> & { readonly taught: TaughtBefore | undefined; readonly filed: Boat };

/** The boat lay free in the water. */
const isInWater = ({ condition }: Trial): boolean => condition !== 'bench' && condition !== 'hung';

function readSoFar(heard: Heard | null): ReadSoFar {
  if (heard?.learned?.comparisons.some(({ trial }) => isInWater(trial))) return 'in the water';
  return heard?.pooled ? 'ashore' : 'nowhere';
}

/** A painted waterline tells where a boat that does not float yet belongs. */
const hasAim = ({ surfaced, boat }: Pick<BoatInWater, 'surfaced' | 'boat'>): boolean =>
  surfaced.status === 'afloat' || (surfaced.status !== 'empty' && boat.waterline !== null);

/** The boat to trim of what is settled; its bays are cut to what is free of them in steps. */
function* foundToTrim(settled: Analysis['settled']): Steps<Analysis['boatToTrim']> {
  const analysis = yield* through(settled);
  if (hasAim(analysis) && !analysis.file.isFaulty) yield* analysis.neighbours.freeBaySteps(analysis.source);
  return analysis.boatToTrim;
}

function boatToTrim({ file, parts, taught, filed }: Owner, inWater: BoatInWater, heard: Heard | null) {
  const { surfaced, ...rest } = inWater;
  if (!hasAim(inWater) || file.isFaulty) return null;
  const uncertainties = heard && (heard.pooled?.uncertainties ?? heard.filedUncertainties);
  // Pieces go where there is room, whatever the bay says.
  const bays = parts.neighbours.freeBays(inWater.source);
  const boat = bays === rest.boat.bays ? rest.boat : { ...rest.boat, bays };
  return {
    ...rest,
    boat,
    filed,
    surfaced,
    uncertainties,
    readSoFar: taught?.readSoFar ?? readSoFar(heard),
    cache: parts.cache,
    schema: parts.entries.schemas.inUse.made.part,
  };
}

/** The analysis once more, with what was heard. */
function* settle(known: Unsaid, atOnce: Said, heard: Heard, taught?: TaughtBefore): Steps<Analysis> {
  const { file, kept, filed, scheme } = known;
  const { filedUncertainties, learned, pooled } = heard;
  const inWater = pooled?.inWater ?? filed;
  const uncertainties = pooled?.uncertainties ?? filedUncertainties;
  const withTrials = known.withTrials || pooled !== null;
  yield;
  const said: Said = {
    ofBoat: pooled ? judge(inWater, scheme.figures) : atOnce.ofBoat,
    inMotion: pooled ? inMotion(inWater) : atOnce.inMotion,
    ofTrials: learned ? judgeTrials(filed.boat, learned.comparisons, learned.verdict?.slips ?? []) : [],
    openQuestions: yield* judgeUncertainties(
      inWater.boat,
      inWater.conditions,
      scheme.figures,
      uncertainties,
      nextFor(known, heard),
    ),
  };
  yield* through(said.inMotion);
  const owner = { file, parts: kept, taught, filed: filed.boat };
  return saying({ ...known, ...inWater, withTrials, uncertainties, filedUncertainties, learned }, said, () =>
    boatToTrim(owner, inWater, heard),
  );
}

/** What to read or weigh next for a figure: asked of the one that is nearest to its limit, and of none where all is told. */
function nextFor({ filed, trials, kept }: Unsaid, { filedUncertainties: { inputs }, learned, pooled }: Heard) {
  return function* (figure: Uncertainty) {
    const trialSet = { source: filed.source, cache: kept.cache, variations: kept.variations, trials, inputs };
    const readables = readablesOf(trialSet);
    const taught = pooled && learned?.verdict?.openAbout(figure, inputs);
    if (taught) return yield* nextReading(taught.figure, taught.open, readables);
    const changes = new Map(figure.shares.map(({ input, change }) => [input.id, change]));
    const row = { inputs: inputs.map(({ id }) => changes.get(id) ?? 0), loads: [] };
    return yield* nextReading(row, UNREAD, readables);
  };
}
