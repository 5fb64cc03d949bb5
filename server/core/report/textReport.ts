import type { Analysis } from '../analysis/analysis.ts';
import { waitingWords } from '../analysis/waitingWords.ts';
import type { Boat } from '../boat/boat.ts';
import { MOST_PIECES } from '../corrections/search/search.ts';
import { scale } from '../geometry/form/vector.ts';
import { judgeSurfaced } from '../judges/judgeSurfaced.ts';
import { lengthText, massText } from '../wording/numbers.ts';
import { pointWords } from './conditionFacts.ts';
import { type Paint, plainPaint, rowSection } from './rows.ts';
import { sectionsOf } from './sections.ts';
import { trialsBlock } from './trialsReport.ts';
import { uncertaintyBlock } from './uncertaintyBlock.ts';

/** The report that a builder reads: both conditions against their limits, what is wrong, and what would mend it. */
export function textReport(analysis: Analysis, paint: Paint = plainPaint, sections = sectionsOf(analysis)): string {
  const blocks = [
    [paint.heading(boatTitle(analysis.boat)), waterWords(analysis.boat)].join('\n'),
    massWords(analysis),
    ...sections.map(({ title, rows }) => rowSection(title, rows, paint)),
    ...saidBlocks(analysis, paint),
  ];
  return `${blocks.join('\n\n')}\n`;
}

/** What is said besides the figures, each block under its heading. */
export const saidBlocks = (analysis: Analysis, paint: Paint = plainPaint): readonly string[] =>
  [
    uncertaintyBlock(analysis, paint),
    trialsBlock(analysis, paint),
    findingsBlock(analysis, paint),
    correctionsBlock(analysis, paint),
  ].filter(block => block !== '');

export function boatTitle(boat: Boat): string {
  const name = boat.name || 'Boat without a name';
  if (boat.scale === null) return `${name}, ${lengthText(boat.length, boat.units)} long`;
  const metres = boat.length / boat.scale;
  return `${name}, ${lengthText(boat.length, boat.units)} long (1:${Number((1 / boat.scale).toFixed(2))}, full size ${metres.toFixed(1)} m)`;
}

export const waterWords = ({ water }: Boat): string => `Water: ${water.words}, ${water.density.toFixed(1)} kg/m³`;

export function massWords(analysis: Analysis): string {
  const { boat, bodies, filed, withTrials } = analysis;
  const heading = withTrials ? 'With the trials, mass without ballast water' : 'Mass without ballast water';
  const [weighs, byFile] = [bodies, filed.bodies].map(({ mass }) => massText(mass, boat.units));
  const mass =
    bodies.mass > 0
      ? `${heading} ${weighs}${byFile === weighs ? '' : ` (by the file ${byFile})`}, centre of mass at ${pointWords(scale(bodies.massMoment, 1 / bodies.mass), boat)}`
      : 'Nothing in the file weighs anything yet.';
  const waiting = waitingWords(analysis);
  return waiting === null ? mass : `${mass}\n${waiting}`;
}

function findingsBlock(analysis: Analysis, paint: Paint): string {
  const findings = analysis.findings;
  // How sure the figures are has a block of its own.
  const isSure = analysis.said.openQuestions.length === 0;
  if (findings.length === 0)
    return analysis.file.isWhole
      ? paint.good(isSure ? 'Within all limits.' : 'Within all limits, by the figures.')
      : '';
  const lines = findings.map(({ severity, message }) => {
    const mark = `  ${severity}: `;
    return `${severity === 'error' ? paint.bad(mark) : mark}${message}`;
  });
  return [paint.heading('Findings'), ...lines].join('\n');
}

function correctionsBlock(analysis: Analysis, paint: Paint): string {
  const corrections = analysis.corrections.all();
  if (corrections.length === 0) return whyNone(analysis);
  const lines = corrections.map((correction, i) => `  ${i + 1}. ${correction.title}`);
  return [paint.heading('Corrections, the best first'), ...lines].join('\n');
}

/** Why nothing is offered for a boat that is out of its surfaced limits. */
function whyNone({ boat, surfaced, file: { isFaulty } }: Analysis): string {
  if (surfaced.status !== 'afloat' || judgeSurfaced(boat, surfaced).length === 0) return '';
  if (isFaulty) return 'Corrections are computed once the errors in the file are fixed.';
  if (boat.bays.length === 0) return 'For computed corrections, say under “bays:” where lead or foam can still go in.';
  return `No ${MOST_PIECES} pieces or fewer in the bays bring the boat inside its surfaced limits.`;
}
