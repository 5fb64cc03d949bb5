import { type CodeAction, CodeActionKind, type WorkspaceEdit } from 'vscode-languageserver-types';
import type { Analysis } from '../../core/analysis/analysis.ts';
import { soundMends, tryMends } from '../../core/analysis/soundMends.ts';
import type { Correction } from '../../core/corrections/correction.ts';
import { proposeBays } from '../../core/corrections/room/proposeBays.ts';
import { type Change, conditionOf, type Finding } from '../../core/findings/finding.ts';
import { applyChanges } from '../../core/text/editing/edit.ts';
import type { Span } from '../../core/text/reading/lines.ts';
import { rangeOf } from '../../core/text/reading/rangeOf.ts';
import { asksForWater, changeOfWater } from './changeOfWater.ts';
import { diagnosticOf } from './diagnostics.ts';
import { type EditedFile, workspaceEdit } from './editedFile.ts';
import { asksForTrials, trialActionsAt } from './trialActions.ts';

/** What can be done about the findings that a selection touches: their own mends, and pieces that mend the trim. */
export function codeActionsAt(atOnce: Analysis, span: Span, file: EditedFile): readonly CodeAction[] {
  const analysis = atOnce.settled.all();
  const touched = findingsIn(analysis, span);
  return [
    ...touched.flatMap(finding => mendsOf(analysis, finding, file)),
    ...correctionsOf(analysis, touched, file),
    ...waterActions(analysis, span, file),
    ...trialsOf(analysis, touched, span, file),
  ];
}

/** Does a little of the work on mends, on corrections and on what trials teach, where they are asked for; true when all is there. */
export function prepareCodeActions(analysis: Analysis, span: Span): boolean {
  if (!analysis.settled.step()) return false;
  const settled = analysis.settled.all();
  const touched = findingsIn(settled, span);
  if (!tryMends(settled, touched)) return false;
  const isTrimmed = touched.every(finding => conditionOf(finding) === null);
  if (!isTrimmed && !analysis.corrections.step()) return false;
  if (asksForTrials(settled, span, touched.some(isOfTrials)) && !analysis.offers.step()) return false;
  return !asksForWater(analysis, span) || analysis.waterSet.step();
}

/**
 * Of a selection with more findings the first are seen to: their mends are tried one by one, each on the whole text, and
 * nobody reads so many. Of a text of so many characters fewer, so that it takes no longer, but what is on a line.
 */
const MOST_FINDINGS = 50;
const LEAST_FINDINGS = 5;
const MOST_CHARACTERS = 300_000;

function findingsIn({ findings, syntax }: Analysis, [start, end]: Span): readonly Finding[] {
  const most = Math.min(MOST_FINDINGS, Math.max(LEAST_FINDINGS, Math.floor(MOST_CHARACTERS / syntax.text.length)));
  const touched = findings.filter(finding => {
    const range = rangeOf(syntax, finding.place);
    return range[0] <= end && range[1] >= start;
  });
  return touched.slice(0, most);
}

function mendsOf(analysis: Analysis, finding: Finding, file: EditedFile): readonly CodeAction[] {
  return soundMends(analysis, finding).flatMap((mend, i) => {
    const edit = editOf(analysis, mend.changes, file);
    return edit ? [quickFix(analysis, { title: mend.title, findings: [finding], edit, isBest: i === 0 })] : [];
  });
}

/**
 * Corrections stand with the findings about the condition that they set right, and are said to clear those that the full
 * model no longer has; the first, the best, is preferred. Bays alone clear none.
 */
function correctionsOf(analysis: Analysis, touched: readonly Finding[], file: EditedFile): readonly CodeAction[] {
  const findings = touched.filter(finding => conditionOf(finding) !== null);
  const conditions = new Set(findings.map(conditionOf));
  if (findings.length === 0) return [];
  const suiting = analysis.corrections
    .all()
    .filter(({ condition }) => condition === 'both' || conditions.has(condition));
  const bays = analysis.boatToTrim && proposeBays(analysis.boat);
  const offers = [
    ...suiting.map(offer => ({ ...offer, clears: findings.filter(finding => clears(offer, finding)) })),
    ...(bays ? [{ ...bays, clears: [] }] : []),
  ];
  return offers.flatMap(({ title, changes, clears }, i) => {
    const edit = editOf(analysis, changes, file);
    return edit ? [quickFix(analysis, { title, findings: clears, edit, isBest: i === 0 && clears.length > 0 })] : [];
  });
}

/** What is only remarked on, such as a boat touchy to trim, stays. */
const clears = ({ condition, left }: Correction, finding: Finding): boolean =>
  finding.severity !== 'information' &&
  (condition === 'both' || condition === conditionOf(finding)) &&
  !left.some(each => each.code === finding.code && conditionOf(each) === conditionOf(finding));

/** On the water: the other water, with what it asks for. */
function waterActions(analysis: Analysis, span: Span, file: EditedFile): readonly CodeAction[] {
  const change = asksForWater(analysis, span) ? changeOfWater(analysis) : null;
  const edit = change && editOf(analysis, change.changes, file);
  return change && edit ? [quickFix(analysis, { title: change.title, findings: [], edit, isBest: false })] : [];
}

/** What the trials teach stands with what they say of the file; the best that clears some of it is preferred. */
function trialsOf(
  analysis: Analysis,
  touched: readonly Finding[],
  span: Span,
  file: EditedFile,
): readonly CodeAction[] {
  const actions = trialActionsAt(analysis, span, touched.some(isOfTrials)).flatMap(({ title, changes, clears }) => {
    const edit = editOf(analysis, changes, file);
    return edit ? [{ title, edit, findings: clears && touched.filter(finding => clears.includes(finding)) }] : [];
  });
  const best = actions.find(({ findings }) => findings !== null && findings.length > 0);
  return actions.map(action => {
    const { title, edit, findings } = action;
    if (findings) return quickFix(analysis, { title, findings, edit, isBest: action === best });
    return { title, kind: CodeActionKind.RefactorRewrite, edit };
  });
}

const isOfTrials = ({ about }: Finding): boolean => about === 'trials';

interface Fix {
  readonly title: string;
  readonly findings: readonly Finding[];
  readonly edit: WorkspaceEdit;
  readonly isBest: boolean;
}

const quickFix = ({ syntax }: Analysis, { title, findings, edit, isBest }: Fix): CodeAction => ({
  title,
  kind: CodeActionKind.QuickFix,
  diagnostics: findings.map(finding => diagnosticOf(syntax, finding)),
  edit,
  ...(isBest ? { isPreferred: true } : {}),
});

function editOf({ syntax }: Analysis, changes: readonly Change[], file: EditedFile): WorkspaceEdit | null {
  const splices = applyChanges(syntax, changes);
  if (splices === null) return null;
  return workspaceEdit(syntax, splices, file);
}
