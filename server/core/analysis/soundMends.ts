import { samePath } from '../../../schema/path.ts';
import { waits } from '../boat/toldNow.ts';
import type { Finding, Mend } from '../findings/finding.ts';
import { inSteps, type Steps, type Working } from '../steps/steps.ts';
import { lineAt } from '../text/reading/lines.ts';
import { rangeOf } from '../text/reading/rangeOf.ts';
import type { Syntax } from '../text/reading/syntax.ts';
import type { Analysis } from './analysis.ts';
import { arranged } from './arranged.ts';
import { originMends } from './originMends.ts';
import { readInstead, textWith } from './readInstead.ts';

/**
 * The mends of a finding that do no harm, each tried on the text: it clears its finding, so that its line says that no
 * longer, brings no error that was not there, and keeps every figure; what takes one out stands behind a better mend, or is
 * not offered.
 */
export const soundMends = (analysis: Analysis, finding: Finding): readonly Mend[] => trialOf(analysis, finding).all();

/** Some way towards one more mend of the findings; true when all are tried. */
export function tryMends(analysis: Analysis, findings: readonly Finding[]): boolean {
  const next = findings.find(finding => !trialOf(analysis, finding).isDone());
  if (next) trialOf(analysis, next).step();
  return next === undefined;
}

/** The trying of a finding’s mends, one after the other. */
function trialOf(analysis: Analysis, finding: Finding): Working<readonly Mend[]> {
  const { mends } = analysis.kept;
  const known = mends.get(finding);
  if (known) return known;
  const trying = inSteps(() => tried(analysis, finding));
  mends.set(finding, trying);
  return trying;
}

function* tried(analysis: Analysis, finding: Finding): Steps<readonly Mend[]> {
  const sound: Mend[] = [];
  for (const mend of [...(yield* originMends(analysis, finding)), ...(finding.mends ?? [])]) {
    yield;
    const text = textWith(analysis, mend.changes);
    if (text === null || (sound.length === 0 && losesFigure(analysis.syntax, mend, text))) continue;
    yield;
    if (yield* isSound(analysis, finding, text)) sound.push(mend);
  }
  return sound;
}

const isSamePlace = (one: Finding['place'], other: Finding['place']): boolean =>
  'path' in one && 'path' in other && samePath(one.path, other.path);

const isTakeOut = ({ changes }: Mend): boolean => changes.some(({ kind }) => kind === 'remove');

/** Whether a figure of the text is gone after a mend, that leaves `text`. */
const losesFigure = (syntax: Syntax, mend: Mend, text: string): boolean =>
  isTakeOut(mend) && digitsIn(text).length < digitsIn(syntax.text).length;

const digitsIn = (text: string): string => text.replace(/\D/g, '');

/** Whether the text that a mend leaves is as it should be. */
function* isSound(analysis: Analysis, finding: Finding, text: string): Steps<boolean> {
  const { syntax, file } = analysis;
  const { syntax: after, reading } = yield* readInstead(analysis, text);
  const errors = [...after.findings, ...reading.findings].filter(({ severity }) => severity === 'error');
  const isLike = ({ code, message }: Finding): boolean => code === finding.code && message === finding.message;
  const line = lineOf(syntax, finding);
  const alike = file.findings.filter(isLike);
  const before = alike.filter(each => lineOf(syntax, each) === line);
  // Where it stands now: whole lines may be put in before it or behind it.
  const here = [line, line + after.lineStarts.length - syntax.lineStarts.length];
  const left = errors.filter(each => isLike(each) && here.includes(lineOf(after, each)));
  const isThere = left.length >= Math.max(1, before.length);
  // The second of two keys comes to stand where the first was taken out.
  const isHandedOn = errors.filter(isLike).length >= Math.max(1, alike.length);
  // What was waiting for this mend is no harm that it does, unless it is said of what the mend wrote.
  const isNew = ({ code, message, place: at }: Finding): boolean =>
    (!waits({ code, place: at }) || isSamePlace(at, finding.place)) &&
    !file.findings.some(each => each.code === code && each.message === message);
  if (isThere || isHandedOn || errors.some(isNew)) return false;
  if (!isOfPlaces(analysis, finding)) return true;
  const wrongPlaces = yield* arranged(after, reading, analysis.kept.neighbours);
  return wrongPlaces.filter(isLike).length < Math.max(1, file.places.found.all().filter(isLike).length);
}

/** It says of something that it lies where it cannot. */
const isOfPlaces = ({ file: { places } }: Analysis, finding: Finding): boolean =>
  places.found.isDone() && places.found.all().includes(finding);

const lineOf = (syntax: Syntax, { place }: Finding): number => lineAt(syntax.lineStarts, rangeOf(syntax, place)[0]);
