import type { Analysis } from '../analysis/analysis.ts';
import type { LearnedTrial } from '../trials/learn.ts';
import { readingName, readingText } from '../trials/pool/readingWords.ts';
import { verdict as verdictWords } from '../trials/pool/words.ts';
import { lengthText, massText } from '../wording/numbers.ts';
import { heightText } from '../wording/places.ts';
import type { Paint } from './rows.ts';

/** The trials in the order of the file, how the boat came into trim: what was on board, read, and predicted. */
export function trialsBlock(analysis: Analysis, paint: Paint): string {
  const { learned } = analysis;
  if (!learned) return '';
  const { verdict } = learned;
  const slips = new Set((verdict?.slips ?? []).map(({ reading }) => reading));
  const lines = learned.comparisons.flatMap(comparison => [
    heading(analysis, comparison),
    ...columns(readingLines(analysis, comparison, slips)),
    ...(isSilent(comparison) ? [`    ${SILENT}`] : []),
    ...incliningLines(analysis, comparison),
    ...(comparison.trial.note === null ? [] : [`    note: ${comparison.trial.note}`]),
  ]);
  const said = verdict ? verdictWords(verdict.told, analysis.boat.units).map(words => `  ${words}`) : [];
  const offers = analysis.offers.all().map(({ title }, i) => `  ${i + 1}. ${title}`);
  return [
    paint.heading('Trials'),
    ...lines,
    ...(said.length > 0 ? ['', paint.heading('What the trials say'), ...said] : []),
    ...(offers.length > 0 ? ['', paint.heading('What can be written down of it'), ...offers] : []),
  ].join('\n');
}

/** What is struck out is left out on purpose. */
export const isSilent = ({ isHeard, readings }: LearnedTrial): boolean =>
  !isHeard && readings.some(({ reading }) => !reading.isSlip);

const SILENT =
  'it teaches nothing yet: by the file the boat could not have shown this; look for what is missing in the file, or was on board that day';

function heading({ boat: { units } }: Analysis, { trial, floatedTrial }: LearnedTrial): string {
  const pieces = trial.aboard.map(({ entry }) => `“${entry.name}” (${massText(entry.mass, units)})`);
  const extra = [
    ...(pieces.length > 0 ? [`with ${pieces.join(', ')}`] : []),
    ...(trial.without.length > 0 ? [`without ${trial.without.map(name => `“${name}”`).join(', ')}`] : []),
    ...(trial.water ? [trial.water.words] : []),
    ...(floatedTrial === null ? ['by the file it could not have lain so'] : []),
  ];
  return `  ${[trial.name, trial.condition, ...extra].join(', ')}`;
}

/** Each reading: what, read, by the file, and how far apart in what both leave open. */
function readingLines(
  { boat: { units } }: Analysis,
  { readings }: LearnedTrial,
  slips: ReadonlySet<unknown>,
): readonly (readonly string[])[] {
  return readings.flatMap(({ reading, predicted, score }) => {
    if (predicted === null) return [];
    const apart = reading.isSlip
      ? 'struck out'
      : slips.has(reading)
        ? 'fits nothing: a slip?'
        : `difference (in ±) ${Math.abs(score).toFixed(1)}`;
    const byFile = `by the file ${readingText(reading, predicted, units)}`;
    return [[readingName(reading, units), readingText(reading, reading.value, units), byFile, apart]];
  });
}

function columns(rows: readonly (readonly string[])[]): readonly string[] {
  const widths = (rows[0] ?? []).map((_, k) => Math.max(...rows.map(row => row[k]!.length)));
  return rows.map(row => `    ${row.map((cell, k) => cell.padEnd(widths[k]!)).join('  ')}`.trimEnd());
}

function incliningLines({ boat: { units } }: Analysis, { inclined }: LearnedTrial): readonly string[] {
  if (!inclined) return [];
  const { gm, gmOfFile, heightOfG, heightOfGOfFile } = inclined;
  const length = (metres: number) => lengthText(metres, units);
  const height = (metres: number) => heightText(metres, units);
  return [
    `    metacentric height ${length(gm.value)} ± ${length(gm.sigma)}, by the file ${length(gmOfFile)}; centre of mass at height ${height(heightOfG.value)} ± ${length(heightOfG.sigma)}, by the file ${height(heightOfGOfFile)}`,
  ];
}
