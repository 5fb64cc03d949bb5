import type { Describer, KeyInfo } from '../../../schema/describe.ts';
import { materials } from '../../../schema/materials.ts';
import type { Path } from '../../../schema/path.ts';
import { dimensions, knownUnits } from '../../../schema/units.ts';
import { type UsualUncertainty, usualUncertainties } from '../../../schema/usualUncertainties.ts';
import { WORDS, type Word } from '../../../schema/words.ts';
import { catalogue, type FindingCode } from '../findings/catalogue/catalogue.ts';
import type { Steps } from '../steps/steps.ts';

/** Every word, key, unit, material and finding of the boat file in one Markdown document, made from the program's own tables. */
export function* referenceSteps(describer: Describer): Steps<string> {
  const keys = yield* keysOf([], describer, 3);
  yield;
  return [
    '# The boat file: words, keys, units, materials and findings',
    'Made from the program’s own tables; do not edit it by hand.',
    '## Words',
    'The words of figures, hovers and messages, with the letters that the trade has for them.',
    ...WORDS.map(wordLine),
    '## Keys',
    keys,
    '## Units',
    ...dimensions.map(dimension => `- ${dimension}: ${knownUnits(dimension).join(', ')}`),
    '',
    'A bare length or mass takes the file’s own units; a bare angle is in degrees, a bare temperature in °C, a bare fraction runs from 0 to 1. A tolerance after ± is one standard uncertainty.',
    '## Uncertainties',
    'A figure without a tolerance has the uncertainty that is usual for how it came about. It is one standard uncertainty (GUM, JCGM 100:2008): two times out of three the true value lies within it. Except for the handbook’s these are common practice, no source; write the tolerance that you know: `310 g ± 1 g`.',
    uncertaintiesTable(),
    'A density from the handbook is as likely anywhere in the material’s range (GUM 4.3.7: the range over 2√3), and is off alike for all entries of the material; one given for the stock, for all that is cut from it. A tolerance after a range is that of each end. Exact are the hull’s length, the painted waterline, limits and bays, and the place of a hull that begins at the bow tip and the baseline: all else is measured from it.',
    '## Materials',
    'Densities in kg/m³, to be used where the part itself is not weighed and measured: weigh the part. “From memory” says that the source was not at hand when the figure was written down.',
    materialsTable(),
    '## Findings',
    ...findingCodes().map(findingText),
  ]
    .join('\n\n')
    .replace(/\n\n- /g, '\n- ')
    .concat('\n');
}

const wordLine = ({ word, symbol, means }: Word): string =>
  `- **${word}**${symbol === undefined || symbol === word ? '' : ` (${symbol})`}: ${means}`;

const findingCodes = (): readonly FindingCode[] => (Object.keys(catalogue) as FindingCode[]).sort();

const findingHeading = (code: FindingCode): string => `### ${code}`;

function findingText(code: FindingCode): string {
  const { title, means, why, todo } = catalogue[code];
  return `${findingHeading(code)}\n\n**${title}.** ${means}\n\nWhy it matters: ${why}\n\nWhat to do: ${todo}`;
}

/** The line of the reference (from 1) that each finding's entry begins on. */
export function* findingLines(describer: Describer): Steps<ReadonlyMap<FindingCode, number>> {
  const lines = (yield* referenceSteps(describer)).split('\n');
  return new Map(findingCodes().map(code => [code, lines.indexOf(findingHeading(code)) + 1]));
}

/** The deepest that keys nest; deeper is the schema's own repetition. */
const DEEPEST = 5;

function* keysOf(path: Path, describer: Describer, depth: number): Steps<string> {
  yield;
  const keys = describer.keysAt(path);
  const lines = keys.map(info => `- ${keyLine(info)}`);
  const below: string[] = [];
  for (const info of keys) {
    if (info.holds === 'value' || path.length >= DEEPEST) continue;
    const inside: Path = info.holds === 'list' ? [...path, info.key, 0] : [...path, info.key];
    const text = yield* keysOf(inside, describer, Math.min(depth + 1, 6));
    const heading = [...path.filter(step => typeof step === 'string'), info.key].join(' › ');
    if (text !== '') below.push(`${'#'.repeat(depth)} ${heading}\n\n${text}`);
  }
  return [lines.join('\n'), ...below].filter(block => block !== '').join('\n\n');
}

function keyLine({ key, required, description, example, words }: KeyInfo): string {
  const must = required ? ' (must be given)' : '';
  const choice = words ? ` One of: ${words.join(', ')}.` : '';
  const shown = example === undefined ? '' : ` Example: \`${key}: ${example}\`.`;
  return `**${key}**${must}: ${description}${choice}${shown}`;
}

function uncertaintiesTable(): string {
  const rows = Object.values<UsualUncertainty>(usualUncertainties).map(({ what, uncertainty, why }) => [
    what,
    uncertainty,
    why,
  ]);
  return [['Figure', 'Uncertainty', 'Why'], ['---', '---', '---'], ...rows]
    .map(cells => `| ${cells.join(' | ')} |`)
    .join('\n');
}

function materialsTable(): string {
  const rows = materials.map(({ key, names, density, range, source, known, note }) =>
    [
      [key, ...names].join(', '),
      String(density),
      `${range[0]} to ${range[1]}`,
      `${source} (${known})${note ? `. ${note}` : ''}`,
    ].map(cell => cell.replace(/\|/g, '\\|')),
  );
  return [['Names', 'Density', 'Range', 'Source'], ['---', '--:', '--:', '---'], ...rows]
    .map(cells => `| ${cells.join(' | ')} |`)
    .join('\n');
}
