import type { FileUnits } from '../../../schema/units.ts';
import { type Analysis, saidOfBoat } from '../analysis/analysis.ts';
import type { Trial } from '../boat/trial.ts';
import { pictureSteps } from '../drawing/trimSheet.ts';
import { waterWords } from '../report/textReport.ts';
import { allDone, finish, type Steps } from '../steps/steps.ts';
import { type ComparedReading, compareTrial } from '../trials/pool/compare.ts';
import { readingText } from '../trials/pool/readingWords.ts';
import { verdict } from '../trials/pool/words.ts';
import { inputsOf } from '../uncertainty/inputs.ts';
import type { Advised } from './advice.ts';
import { type AgainstFile, agreement, apartWords, toneOf } from './byFile.ts';
import { openTrials, type PoolCondition, type PoolDay, type ReadingKey } from './day.ts';
import { fieldsIn, type PoolField } from './fields.ts';

/** What is shown of a day at the pool: plain data, so that it can be sent. */
export interface PoolView {
  /** Trials are heard: what is shown is of the boat that they make likeliest. */
  readonly isSettled: boolean;
  /** Nothing is missing from the figures: otherwise there is nothing to wait for. */
  readonly isWhole: boolean;
  readonly units: FileUnits;
  readonly water: string;
  /** It has a tank to dive with. */
  readonly dives: boolean;
  readonly fields: Readonly<Record<PoolCondition, readonly PoolField[]>>;
  /** What was read, against the file. */
  readonly compared: readonly ComparedWords[];
  readonly pictures: PoolPictures;
  /** What is out of its limits, and what is wrong with the file. */
  readonly findings: readonly string[];
  /** What may be wrong with the boat, by all trials. */
  readonly verdict: readonly string[];
}

/** How the boat lies: a drawing, and in words. */
export type PoolPictures = Readonly<Record<PoolCondition, { readonly svg: string; readonly words: string }>>;

interface ComparedWords extends AgainstFile {
  readonly condition: PoolCondition;
  readonly key: ReadingKey;
  readonly station: number | null;
}

/** A day by an analysis of its text: by the file at once, with the trials once it is settled. */
export const poolView = (analysis: Analysis, day: PoolDay): PoolView => finish(viewSteps(analysis, day));

/** The same in steps. */
export function* viewSteps(analysis: Analysis, day: PoolDay): Steps<PoolView> {
  const { boat, learned, file } = analysis;
  const pictures = yield* poolPictures(analysis, null);
  yield;
  const said = file.isFaulty ? file.findings.filter(({ severity }) => severity === 'error') : saidOfBoat(analysis.said);
  return {
    isSettled: analysis.uncertainties !== null,
    isWhole: file.isWhole,
    units: boat.units,
    water: waterWords(boat),
    dives: boat.tanks.length > 0,
    fields: {
      surfaced: fieldsIn(analysis, 'surfaced', day),
      submerged: boat.tanks.length > 0 ? fieldsIn(analysis, 'submerged', day) : [],
    },
    compared: comparedIn(analysis, day),
    pictures,
    findings: said.filter(({ severity }) => severity !== 'information').map(({ message }) => message),
    verdict: learned?.verdict ? verdict(learned.verdict.told, boat.units) : [],
  };
}

/** Both side elevations; with a correction of a boat, that boat with the correction in it. */
export function* poolPictures(analysis: Analysis, corrected: Advised['drawn']): Steps<PoolPictures> {
  const shown = corrected
    ? { ...analysis, boat: corrected.boat, corrections: allDone([corrected.correction]) }
    : analysis;
  const correction = corrected?.correction ?? null;
  const pictures = yield* pictureSteps(shown, { only: ['surfaced-side', 'submerged-side'], correction });
  const of = (id: string) => {
    const picture = pictures.find(each => each.id === id);
    return { svg: picture?.svg ?? '', words: picture?.description ?? '' };
  };
  return { surfaced: of('surfaced-side'), submerged: of('submerged-side') };
}

/** The readings of the trials that are being read, against the boat by the file: those trials stand last. */
function comparedIn(analysis: Analysis, day: PoolDay): readonly ComparedWords[] {
  const open = openTrials(day);
  if (!analysis.file.isWhole || open.length === 0) return [];
  return analysis.trials.slice(-open.length).flatMap(trial => {
    const { condition } = trial;
    if (condition !== 'surfaced' && condition !== 'submerged') return [];
    return readingsOf(analysis, trial).flatMap(compared => comparedWords(analysis, condition, compared) ?? []);
  });
}

function readingsOf(
  { filed, filedUncertainties, kept, trials, learned }: Analysis,
  trial: Trial,
): readonly ComparedReading[] {
  const known = learned?.comparisons.find(comparison => comparison.trial === trial);
  if (known) return known.readings;
  const { source } = filed;
  const inputs = filedUncertainties?.inputs ?? inputsOf(source, kept.variations);
  return compareTrial({ source, inputs, cache: kept.cache, variations: kept.variations, trials }, trial).readings;
}

const KEYS: Readonly<Record<string, ReadingKey>> = {
  mark: 'marks',
  heel: 'heel',
  trim: 'trim',
  fill: 'fill',
  water: 'water',
};

function comparedWords(
  { boat: { units }, learned }: Analysis,
  condition: PoolCondition,
  { reading, predicted, score }: ComparedReading,
): ComparedWords | null {
  const key = KEYS[reading.of];
  if (!key || predicted === null) return null;
  const slip = learned?.verdict?.slips.find(one => one.reading === reading);
  const said = slip
    ? `It fits none of the others: by those it should have been ${readingText(reading, slip.expected, units)}. Read it again.`
    : agreement(score);
  return {
    condition,
    key,
    station: reading.of === 'mark' ? reading.station : null,
    tone: slip ? 'slip' : toneOf(score),
    words: `${apartWords(reading, predicted, units)} ${said}`,
  };
}
