import { isInside, type Path } from '../../../schema/path.ts';
import type { Analysis } from '../../core/analysis/analysis.ts';
import type { Reading } from '../../core/boat/trial.ts';
import { GOOD_FILL } from '../../core/conditions/tankSizing.ts';
import type { LearnedTrial } from '../../core/trials/learn.ts';
import type { ComparedReading } from '../../core/trials/pool/compare.ts';
import {
  readingName,
  readingText,
  scoreWords,
  sizeText,
  trialName,
  wayOff,
} from '../../core/trials/pool/readingWords.ts';
import { tankAsRead } from '../../core/trials/pool/tankAsRead.ts';
import { verdict } from '../../core/trials/pool/words.ts';
import { capital } from '../../core/wording/capital.ts';
import { lengthText, percentText, volumeText } from '../../core/wording/numbers.ts';
import { heightText } from '../../core/wording/places.ts';
import { escapedMarkdown, table } from './markdown.ts';

/** A trial, or the reading of it under the cursor, against what the file says. */
export function trialHover(analysis: Analysis, path: Path): string | null {
  const trial = analysis.learned?.comparisons.find(comparison => isInside(path, comparison.trial.path));
  if (!trial) return null;
  if (trial.floatedTrial === null)
    return 'By the file the boat could not have lain so: there is nothing to compare with, and the trial teaches nothing yet.';
  const under = trial.readings.filter(({ reading }) => isAbout(path, reading));
  const blocks =
    under.length > 0 && path.length > 2
      ? under.flatMap(compared => readingWords(analysis, trial, compared))
      : [
          comparisonTable(analysis, trial),
          ...aboutBoat(analysis),
          ...aboutTanks(analysis, trial),
          ...aboutInclining(analysis, trial),
        ];
  return blocks.filter(block => block !== '').join('\n\n');
}

/** On its value, its key, or the entry that holds it. */
const isAbout = (path: Path, reading: Reading): boolean =>
  isInside(reading.path, path) || (path.length > 3 && isInside(reading.path, path.slice(0, 4)));

function readingWords(
  analysis: Analysis,
  trial: LearnedTrial,
  { reading, predicted, sigma, uncertainty, score }: ComparedReading,
): readonly string[] {
  if (predicted === null) return [];
  const { units } = analysis.boat;
  const slip = analysis.learned?.verdict?.slips.find(each => each.reading === reading);
  const off = reading.value - predicted;
  const isSame = sizeText(reading, off, units).startsWith('0 ') || sizeText(reading, off, units) === '0°';
  return [
    table([
      [capital(readingName(reading, units)), '', 'give or take'],
      ['Read', readingText(reading, reading.value, units), sizeText(reading, sigma, units)],
      ['By the file', readingText(reading, predicted, units), sizeText(reading, uncertainty, units)],
    ]),
    reading.isSlip ? 'Struck out: taken for nothing.' : '',
    isSame
      ? 'Read as predicted.'
      : `Read ${sizeText(reading, off, units)} ${wayOff(reading, off)}, ${Math.abs(score).toFixed(1)} times what both leave open: ${scoreWords(score)}.`,
    slip
      ? `By all other readings it should have been ${readingText(reading, slip.expected, units)}: likely a slip.`
      : '',
    ...(reading.of === 'tilt' ? aboutInclining(analysis, trial) : []),
    ...(reading.of === 'fill' || reading.of === 'water' || reading.of === 'level' ? aboutTanks(analysis, trial) : []),
  ];
}

function comparisonTable({ boat: { units } }: Analysis, { trial, readings }: LearnedTrial): string {
  const rows = readings.map(({ reading, predicted, score }) => [
    reading.isSlip ? `${readingName(reading, units)} (struck out)` : readingName(reading, units),
    readingText(reading, reading.value, units),
    predicted === null ? '' : readingText(reading, predicted, units),
    Math.abs(score).toFixed(1),
  ]);
  return [
    `**${escapedMarkdown(capital(trialName(trial)))}**, ${trial.condition}.`,
    table([['', 'Read', 'By the file', 'Apart (in what is open)'], ...rows]),
  ].join('\n\n');
}

/** What all trials say of the boat together, as far as it is known already. */
function aboutBoat(analysis: Analysis): readonly string[] {
  const said = analysis.learned?.verdict;
  return said ? verdict(said.told, analysis.boat.units).map(escapedMarkdown) : [];
}

/** What was in the tanks of the boat that hung neutral, and what they should hold. */
function aboutTanks({ boat }: Analysis, trial: LearnedTrial): readonly string[] {
  const read = tankAsRead(trial);
  if (!read) return [];
  const wanted = volumeText(read.wanted, boat.units);
  const whose = boat.tanks.length > 1 ? 'Tanks' : 'A tank';
  return [
    `As read it hung neutral with the tank ${percentText(read.fill)} full. ${whose} of ${wanted} in all would be neutral at ${percentText(GOOD_FILL)}, which leaves room both ways.`,
  ];
}

function aboutInclining({ boat: { units } }: Analysis, { inclined }: LearnedTrial): readonly string[] {
  if (!inclined) return [];
  const { gm, gmOfFile, heightOfG, heightOfGOfFile } = inclined;
  const length = (metres: number) => lengthText(metres, units);
  const height = (metres: number) => heightText(metres, units);
  return [
    table([
      ['By the shifts', 'As tried', 'give or take', 'By the file'],
      ['Metacentric height', length(gm.value), length(gm.sigma), length(gmOfFile)],
      ['Height of the centre of mass', height(heightOfG.value), length(heightOfG.sigma), height(heightOfGOfFile)],
    ]),
  ];
}
