import { type Path, samePath } from '../../../schema/path.ts';
import type { BoatReading } from '../boat/readBoat.ts';
import type { Finding } from '../findings/finding.ts';
import type { Steps } from '../steps/steps.ts';
import { compareTrial } from '../trials/pool/compare.ts';
import type { Offer } from '../trials/pool/offers.ts';
import { DIFFERS } from '../trials/pool/readingWords.ts';
import { inputSteps } from '../uncertainty/inputs.ts';
import type { Analysis, SoundOffer } from './analysis.ts';
import { arranged } from './arranged.ts';
import { readInstead, textWith } from './readInstead.ts';

/** So many ways to write down what may be wrong with the boat are offered at most. */
const MOST_OFFERED = 3;

/**
 * What the trials teach of a settled boat, each tried on the text: it puts nothing where it cannot lie, and says which of
 * what the trials found it clears. Slips to be struck out stand first, as in what was learned.
 */
export function* soundOffers(analysis: Analysis): Steps<readonly SoundOffer[]> {
  const sound: SoundOffer[] = [];
  let ofBoat = 0;
  for (const offer of analysis.learned?.verdict?.offers ?? []) {
    if (offer.strikesOut) {
      const { path } = offer.strikesOut;
      sound.push({ ...offer, clears: analysis.said.ofTrials.filter(finding => isAbout(finding, path)) });
      continue;
    }
    if (ofBoat === MOST_OFFERED) break;
    yield;
    const reading = yield* readAfter(analysis, offer);
    if (!reading) continue;
    ofBoat += 1;
    sound.push({ ...offer, clears: yield* cleared(analysis, reading) });
  }
  return sound;
}

const isAbout = ({ place }: Finding, path: Path): boolean => 'path' in place && samePath(place.path, path);

/** The boat with what is offered; null where that cannot be written, or something would lie where it cannot. */
function* readAfter(analysis: Analysis, { changes }: Offer): Steps<BoatReading | null> {
  const text = textWith(analysis, changes);
  if (text === null) return null;
  yield;
  const { syntax, reading } = yield* readInstead(analysis, text);
  const { file, kept } = analysis;
  const known = new Set(file.findings.map(sayingOf));
  const isHarm = (finding: Finding): boolean => isFault(finding) && !known.has(sayingOf(finding));
  const found = [...syntax.findings, ...reading.findings, ...(yield* arranged(syntax, reading, kept.neighbours))];
  return found.some(isHarm) ? null : reading;
}

const isFault = ({ severity }: Finding): boolean => severity === 'error' || severity === 'warning';
const sayingOf = ({ code, message }: Finding): string => `${code} ${message}`;

/** Readings that differed and no longer do, by the same measure; what all others call a slip stays one. */
function* cleared({ said, kept }: Analysis, { source, trials }: BoatReading): Steps<readonly Finding[]> {
  const differing = said.ofTrials.filter(({ code }) => code === 'trial-differs');
  const { cache, variations } = kept;
  const trialSet = { source, cache, variations, trials, inputs: yield* inputSteps(source, variations) };
  const clears: Finding[] = [];
  for (const trial of trials) {
    const own = differing.filter(finding => trial.readings.some(({ path }) => isAbout(finding, path)));
    if (own.length === 0) continue;
    yield;
    const { floatedTrial, readings } = compareTrial(trialSet, trial);
    const agreeing = floatedTrial ? readings.filter(({ score }) => Math.abs(score) <= DIFFERS) : [];
    clears.push(...own.filter(finding => agreeing.some(({ reading }) => isAbout(finding, reading.path))));
  }
  return clears;
}
