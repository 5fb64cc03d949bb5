import type { Boat } from '../boat/boat.ts';
import type { Finding } from '../findings/finding.ts';
import type { LearnedTrial } from '../trials/learn.ts';
import type { ComparedReading } from '../trials/pool/compare.ts';
import { DIFFERS, readingName, readingText, sizeText, trialName, wayOff } from '../trials/pool/readingWords.ts';
import type { ReadingSlip } from '../trials/pool/told.ts';
import { capital } from '../wording/capital.ts';

/** Where the boat was not as its file has it, and readings that fit nothing. */
export function judgeTrials(
  { units }: Boat,
  comparisons: readonly LearnedTrial[],
  slips: readonly ReadingSlip[],
): readonly Finding[] {
  return comparisons.flatMap((comparison): readonly Finding[] => {
    if (comparison.floatedTrial === null) return [notComparable(comparison)];
    return comparison.readings.flatMap(compared => {
      const slip = slips.find(({ reading }) => reading === compared.reading);
      if (compared.reading.isSlip) return [];
      if (slip) return [slipFinding(slip, units)];
      return Math.abs(compared.score) > DIFFERS ? [differs(comparison, compared, units)] : [];
    });
  });
}

type Units = Boat['units'];

function notComparable({ trial }: LearnedTrial): Finding {
  const how = trial.condition === 'submerged' ? 'have hung under water' : 'have floated upright';
  return {
    code: 'trial-not-comparable',
    severity: 'information',
    about: 'trials',
    message: `By the file the boat could not ${how} in ${trialName(trial)}, so its readings have nothing to be compared with, and teach nothing yet. Look for what is missing in the file, and for what was on board that day.`,
    place: { on: 'entry', path: trial.path },
  };
}

function differs({ trial }: LearnedTrial, { reading, predicted, score }: ComparedReading, units: Units): Finding {
  const expected = predicted ?? reading.value;
  const off = reading.value - expected;
  const [read, byFile] = [readingText(reading, reading.value, units), readingText(reading, expected, units)];
  const times = Math.abs(score).toFixed(1);
  return {
    code: 'trial-differs',
    severity: 'warning',
    about: 'trials',
    message: `In ${trialName(trial)} ${readingName(reading, units)} was read as ${read}, by the file it is ${byFile}: ${sizeText(reading, off, units)} ${wayOff(reading, off)}, ${times} times what both leave open.`,
    place: { on: 'value', path: reading.path },
  };
}

function slipFinding({ reading, expected, sigma }: ReadingSlip, units: Units): Finding {
  return {
    code: 'trial-slip',
    severity: 'warning',
    about: 'trials',
    message: `${capital(readingName(reading, units))} fits neither the file nor the other readings: by those it is ${readingText(reading, expected, units)} ± ${sizeText(reading, sigma, units)}. Likely a slip of the tape or of the pen, and left out: look at your notes, or read it again.`,
    place: { on: 'value', path: reading.path },
  };
}
