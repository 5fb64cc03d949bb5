import { readBoat } from '../boat/readBoat.ts';
import { waits } from '../boat/toldNow.ts';
import type { Finding, Mend } from '../findings/finding.ts';
import { applyChanges, splice } from '../text/editing/edit.ts';
import { rangeOf } from '../text/reading/rangeOf.ts';
import { readSyntax, type Syntax } from '../text/reading/syntax.ts';
import type { Analysis } from './analysis.ts';
import { originMends } from './originMends.ts';

/**
 * The mends of a finding that do no harm, each tried on the text: it clears its finding, brings no error that was not
 * there, and keeps every figure; what takes one out stands behind a better mend, or is not offered.
 */
export function soundMends(analysis: Analysis, finding: Finding): readonly Mend[] {
  const known = analysis.kept.mends.get(finding);
  if (known) return known;
  const sound: Mend[] = [];
  analysis.kept.mends.set(finding, sound);
  for (const mend of [...originMends(analysis, finding), ...(finding.mends ?? [])]) {
    const loss = losesFigure(analysis.syntax, mend);
    if (loss === null || (loss && sound.length === 0)) continue;
    if (isSound(analysis, finding, mend)) sound.push(mend);
  }
  return sound;
}

/** Tries the mends of one more of the findings; true when all are tried. */
export function tryMends(analysis: Analysis, findings: readonly Finding[]): boolean {
  const next = findings.find(finding => !analysis.kept.mends.has(finding));
  if (next) soundMends(analysis, next);
  return next === undefined;
}

const isTakeOut = ({ changes }: Mend): boolean => changes.some(({ kind }) => kind === 'remove');

/** Whether a figure of the text is gone after a mend; null where the mend cannot be made. */
function losesFigure(syntax: Syntax, mend: Mend): boolean | null {
  const text = applied(syntax, mend);
  if (text === null) return null;
  if (!isTakeOut(mend)) return false;
  return digitsIn(text).length < digitsIn(syntax.text).length;
}

const digitsIn = (text: string): string => text.replace(/\D/g, '');

function applied(syntax: Syntax, mend: Mend): string | null {
  const splices = applyChanges(syntax, mend.changes);
  return splices && splice(syntax.text, splices);
}

function isSound({ syntax, kept, file }: Analysis, finding: Finding, mend: Mend): boolean {
  const { describer, meshes } = kept;
  const after = readSyntax(applied(syntax, mend)!, syntax);
  const { findings } = readBoat(after, describer, kept.entries, { meshes, shapes: kept.cache.shapes });
  const errors = [...after.findings, ...findings].filter(({ severity }) => severity === 'error');
  const place = rangeOf(syntax, finding.place)[0];
  // Where it stands now; what is put in there may stand before it or behind it.
  const moved = place + after.text.length - syntax.text.length;
  const isThere = (each: Finding): boolean => {
    const [start] = rangeOf(after, each.place);
    return each.code === finding.code && each.message === finding.message && (start === place || start === moved);
  };
  // What was waiting for this mend is no harm that it does.
  const isNew = ({ code, message, place: at }: Finding): boolean =>
    !waits({ code, place: at }) && !file.findings.some(each => each.code === code && each.message === message);
  return !errors.some(each => isThere(each) || isNew(each));
}
