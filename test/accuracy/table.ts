import type { Check, Evaluated, Outcome } from './check.ts';
import { SOURCES } from './sources.ts';

/**
 * The table of all checks as Markdown. Stable text: figures are rounded to the digits that agree and small errors are
 * given as bounds, so that it is the same on every machine. `measure` is the measure of the whole job as it was last
 * taken (`test/builder`), which is too long to be taken every time.
 */
export function accuracyTable(sections: readonly Evaluated[], measure: string): string {
  const outcomes = sections.flatMap(section => section.outcomes);
  const passed = outcomes.filter(outcome => outcome.passes).length;
  return [
    '# Accuracy',
    '',
    'Written by `npm run accuracy`. Every “got” is computed by the program; every “expected” comes from outside it.',
    '',
    '- **seen**: read in a public copy of the source; **from memory**: quoted from memory, and agreeing',
    '  with a recomputation; **derived**: the source’s formula, our instance; **computed**: worked out another way, by',
    '  quadrature written for the check, by minimising energy, or by a solid modelling library.',
    '- Errors are relative, except where the expected figure is 0.',
    '',
    `${passed} of ${outcomes.length} checks hold.`,
    '',
    ...sections.flatMap(sectionLines),
    measure,
    '## Sources',
    '',
    ...SOURCES.map(([name, words]) => `- **${name}**: ${words}`),
    '',
  ].join('\n');
}

const HEADINGS = ['Check', 'Source', 'Known', 'Expected', 'Got', 'Error', 'Allowed'];

function sectionLines({ title, about, checks, outcomes }: Evaluated): readonly string[] {
  return [
    `## ${title}`,
    '',
    ...(about ? [about, ''] : []),
    row(HEADINGS),
    row(HEADINGS.map(() => '---')),
    ...checks.map((check, i) => row(cellsOf(check, outcomes[i]!))),
    '',
  ];
}

const row = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;

function cellsOf(check: Check, outcome: Outcome): readonly string[] {
  return [
    check.what,
    check.source,
    check.known,
    withUnit(expectedWords(check), check.unit),
    withUnit(gotWords(check, outcome), check.unit),
    outcome.passes ? errorWords(check, outcome.error) : `**${outcome.error.toExponential(1)}, too much**`,
    allowedWords(check),
  ];
}

const expectedWords = ({ expected }: Check): string =>
  typeof expected === 'number' ? figure(expected, 11) : `${figure(expected[0], 11)} to ${figure(expected[1], 11)}`;

/** What should be nothing is told by how much it is not. */
const gotWords = (check: Check, { got, error }: Outcome): string =>
  check.expected === 0 ? errorWords(check, error) : figure(got, digitsFor(check, error));

const withUnit = (words: string, unit: string): string => (unit === '' ? words : `${words} ${unit}`);

/** Digits up to where the two figures part, and a few more. */
function digitsFor(check: Check, error: number): number {
  if (typeof check.expected !== 'number') return 6;
  const agreeing = Math.floor(-Math.log10(Math.max(error, 1e-9)));
  return Math.min(agreeing + 3, 9);
}

/** Rungs of bounds for errors too small to be the same on every machine. */
const BOUNDS = [1e-12, 1e-9, 1e-7];

function errorWords(check: Check, error: number): string {
  if (typeof check.expected !== 'number') return 'inside';
  const bound = BOUNDS.find(rung => 3 * error < rung);
  return bound === undefined ? error.toExponential(0) : `< ${bound.toExponential(0)}`;
}

function allowedWords({ expected, within, unit }: Check): string {
  if (typeof expected !== 'number' || !within) return 'the range';
  return 'absolute' in within ? withUnit(`±${within.absolute}`, unit) : `${within.relative.toExponential(0)} relative`;
}

/** A number with so many significant digits, without needless zeros. */
function figure(value: number, digits: number): string {
  if (value === 0) return '0';
  if (Math.abs(value) < 1e-9) return '0';
  const rounded = Number(value.toPrecision(digits));
  const size = Math.abs(rounded);
  return size < 1e-4 || size >= 1e9 ? rounded.toExponential() : String(rounded);
}
