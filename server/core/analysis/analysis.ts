import type { Neighbours } from '../arrangement/neighbours.ts';
import type { Entry } from '../boat/boat.ts';
import type { Trial } from '../boat/trial.ts';
import type { Correction } from '../corrections/correction.ts';
import type { WaterSet } from '../corrections/kinds/waterSet.ts';
import type { BoatToTrim } from '../corrections/room/boatToTrim.ts';
import type { Scheme } from '../figures/scheme.ts';
import type { Finding } from '../findings/finding.ts';
import type { Shapes } from '../geometry/shapes/shapes.ts';
import { type Working, whenAsked } from '../steps/steps.ts';
import type { Syntax } from '../text/reading/syntax.ts';
import type { Learned } from '../trials/learn.ts';
import type { Offer } from '../trials/pool/offers.ts';
import type { Uncertainties } from '../uncertainty/uncertainties.ts';
import type { BoatInWater } from './inWater.ts';
import type { Kept } from './kept.ts';

/**
 * Everything that is known of one version of a boat file. Each stage is a value that the next is made from:
 * text -> syntax -> boat -> bodies -> conditions -> findings. What `analyse` gives is known at once, the boat that of the file
 * alone; `settled` is the same once the uncertainties are figured and the trials heard, the boat then that of the pool.
 */
export interface Analysis extends BoatInWater {
  readonly syntax: Syntax;
  /** What the reading of the file came to. */
  readonly file: FileReading;
  /** What was read off the boat, in the water or on the bench. */
  readonly trials: readonly Trial[];
  /** The figures and loading conditions that it was analysed by. */
  readonly scheme: Scheme;
  /** The boat by the file alone. */
  readonly filed: BoatInWater;
  /** The figures are those of the boat as the trials have it. */
  readonly withTrials: boolean;
  readonly said: Said;
  /** Of the file, the boat and the trials, as far as they are known; places and motion are looked at when they are asked for. */
  readonly findings: readonly Finding[];
  /** What is left open of every figure, trials heard; null until settled, and while parts are missing: that is the greater uncertainty. */
  readonly uncertainties: Uncertainties | null;
  /** The same by the file alone. */
  readonly filedUncertainties: Uncertainties | null;
  /** What the trials tell of the boat; null until settled, and without trials. */
  readonly learned: Learned | null;
  /** The boat as corrections find it; null where nothing can be corrected: it does not float, or the file has errors. */
  readonly boatToTrim: BoatToTrim | null;
  /** The same with uncertainties and trials. */
  readonly settled: Working<Analysis>;
  /** None while the file is faulty, for the fault may be in what the boat weighs. */
  readonly corrections: Working<readonly Correction[]>;
  /** What the trials teach, to be written into the file; none without trials. */
  readonly offers: Working<readonly SoundOffer[]>;
  /** The pieces that change between fresh and sea water; null where there is nothing to be trimmed. */
  readonly waterSet: Working<WaterSet | null>;
  /** What was made from forms. */
  readonly shapes: Shapes;
  /** What was found between its things. */
  readonly neighbours: Neighbours;
  /** Parts for the next analysis of the same file; nobody else looks into them. */
  readonly kept: Kept;
}

/** What the trials teach, as an edit that was tried on the text. */
export interface SoundOffer extends Offer {
  /** What the trials have found and no longer would. */
  readonly clears: readonly Finding[];
}

/** What is known of a file without floating the boat. */
export type AsRead = Pick<Analysis, 'syntax' | 'boat' | 'source' | 'trials' | 'neighbours'>;

interface FileReading {
  /** About the file itself, before it says what the boat does: what is written in it, and where that lies. */
  readonly findings: readonly Finding[];
  /** Those about what is written. */
  readonly written: readonly Finding[];
  readonly places: Places;
  /** It has errors: something may be missing from the figures. */
  readonly isFaulty: boolean;
  /** Nothing is missing from the figures. */
  readonly isWhole: boolean;
  /** Mesh files that the boat is made of, by name; one that was still being loaded is in no figure yet. */
  readonly wantedFiles: readonly string[];
}

/** What lies where it cannot: no error, so that no figure waits for it. */
export interface Places {
  readonly found: Working<readonly Finding[]>;
  /** The things that it is about; null where things of a trial or a condition are among them. */
  readonly of: readonly Entry[] | null;
}

/** Findings by what they wait for. */
export interface Said {
  /** What the boat does where it rests, as far as it is known. */
  readonly ofBoat: readonly Finding[];
  /** What it does on the way down and knocked over, which takes about as long to find as all else that is known at once. */
  readonly inMotion: Working<readonly Finding[]>;
  /** Trials that differ from the file, slips; none until settled. */
  readonly ofTrials: readonly Finding[];
  /** What the uncertainties leave open of the limits, and what to weigh next; none until settled. */
  readonly openQuestions: readonly Finding[];
}

/** An analysis but for what it says, and what is made of it when asked for. */
export type Unsaid = Omit<Analysis, 'said' | 'findings' | 'boatToTrim'>;

/** The same with what it says. */
export function saying(analysis: Unsaid, said: Said, boatToTrim: () => BoatToTrim | null): Analysis {
  const findings = whenAsked(() => findingsOf(analysis.file.findings, said));
  const toTrim = whenAsked(boatToTrim);
  return {
    ...analysis,
    said,
    get boatToTrim() {
      return toTrim();
    },
    get findings() {
      return findings();
    },
  };
}

/** All findings, after those about the file. */
export const findingsOf = (ofFile: readonly Finding[], said: Said): readonly Finding[] => [
  ...ofFile,
  ...saidOfBoat(said),
  ...said.ofTrials,
];

/** What the boat does, where it rests and in motion. */
export const saidOfBoat = ({ ofBoat, inMotion }: Said): readonly Finding[] => [...ofBoat, ...inMotion.all()];

/** All that is known by now. */
export const knownBy = (analysis: Analysis): Analysis =>
  analysis.settled.isDone() ? analysis.settled.all() : analysis;
