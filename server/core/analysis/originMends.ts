import { otherOrigins, type StationOrigin } from '../arrangement/otherOrigin.ts';
import type { Change, Finding, Mend } from '../findings/finding.ts';
import type { Steps } from '../steps/steps.ts';
import { valueAt } from '../text/reading/values.ts';
import type { Analysis } from './analysis.ts';
import { arranged } from './arranged.ts';
import { readInstead, textWith } from './readInstead.ts';

/**
 * Where the whole file makes sense by another origin of its stations and not by its own, the key that says so: things past
 * the ends of the hull then lie within, and nothing else surely lies wrong.
 */
export function* originMends(analysis: Analysis, finding: Finding): Steps<readonly Mend[]> {
  if (!isPastTheEnds(finding)) return [];
  const mends: Mend[] = [];
  for (const origin of otherOrigins(analysis.boat.units)) {
    yield;
    const mend = mendTo(origin, analysis);
    if (yield* clearsAll(mend, analysis)) mends.push(mend);
  }
  return mends;
}

function mendTo({ stations, words }: StationOrigin, { syntax }: Analysis): Mend {
  const path = ['hull', 'origin'];
  const said = valueAt(syntax, [...path, 'stations']);
  const change: Change =
    said !== undefined
      ? { kind: 'replace', place: { on: 'value', path: [...path, 'stations'] }, text: stations }
      : valueAt(syntax, path) !== undefined
        ? { kind: 'add-key', path, key: 'stations', text: stations }
        : { kind: 'add-key', path: ['hull'], key: 'origin', text: `{ stations: ${stations} }` };
  return { title: `Say once that all stations count ${words}: “origin: { stations: ${stations} }”`, changes: [change] };
}

/** All else lies as it did to each other, whatever stations count from. */
const isPastTheEnds = ({ code, severity }: Finding): boolean =>
  severity === 'warning' && (code === 'beyond-hull' || code === 'hull-too-short');

function* clearsAll({ changes }: Mend, analysis: Analysis): Steps<boolean> {
  const text = textWith(analysis, changes);
  if (text === null) return false;
  yield;
  const { syntax, reading } = yield* readInstead(analysis, text);
  const { file, kept } = analysis;
  const errors = (findings: readonly Finding[]) => findings.filter(({ severity }) => severity === 'error').length;
  if (errors(reading.findings) > errors(file.findings)) return false;
  const found = yield* arranged(syntax, reading, kept.neighbours);
  return !found.some(({ severity }) => severity === 'warning');
}
