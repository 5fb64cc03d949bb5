import type { Analysis } from '../../server/core/analysis/analysis.ts';
import { soundMends } from '../../server/core/analysis/soundMends.ts';
import { conditionFindings } from '../../server/core/findings/catalogue/conditionFindings.ts';
import type { Finding, Mend } from '../../server/core/findings/finding.ts';
import { applyChanges, splice } from '../../server/core/text/editing/edit.ts';
import { rangeOf } from '../../server/core/text/reading/rangeOf.ts';
import { service } from '../helpers/analysed.ts';
import type { Slipped } from './slipKinds.ts';

/** What is wrong with what is said of a slip, or with a mend of it. */
interface Failure {
  readonly boat: string;
  readonly slip: Slipped;
  readonly what: string;
  /** The finding, and the mend where it is the mend that fails. */
  readonly said: string;
}

export interface Tally {
  readonly slips: number;
  /** Slips that are read as they were meant: nothing is said. */
  readonly understood: number;
  readonly mends: number;
  /** Slips with a finding and no mend at all. */
  readonly unmended: readonly Failure[];
  readonly failures: readonly Failure[];
}

/** Tries some slips of one boat, and every mend that is offered for them. */
export function tryMends(boat: string, base: string, slips: readonly Slipped[]): Tally {
  const sound = service.analyse(base);
  const failures: Failure[] = [];
  const unmended: Failure[] = [];
  let [understood, mends] = [0, 0];
  for (const slip of slips) {
    const fail = (what: string, finding?: Finding, mend?: Mend): void =>
      void failures.push({ boat, slip, what, said: [finding?.message, mend?.title].filter(Boolean).join(' -> ') });
    const analysis = service.analyse(slip.text, sound);
    const said = news(analysis, sound);
    const ofFile = said.filter(({ code }) => !(code in conditionFindings));
    if (ofFile.length === 0) understood++;
    if (ofFile.length > 1) fail(`${ofFile.length} findings for one slip`, ofFile[1]);
    const hasError = ofFile.some(({ severity }) => severity === 'error');
    const isOfTrials = ofFile.every(({ place }) => 'path' in place && place.path[0] === 'trials');
    const figured = said.filter(({ code }) => code in conditionFindings);
    if (hasError && !isOfTrials && figured.length > 0)
      fail('a figure is judged without what could not be read', figured[0]);
    if (hasError && !isOfTrials && analysis.corrections.all().length > 0) fail('corrections do not wait', ofFile[0]);
    for (const finding of ofFile) {
      const offers = soundMends(analysis, finding);
      if (offers.length === 0) unmended.push({ boat, slip, what: 'no mend', said: finding.message });
      for (const [i, mend] of offers.entries()) {
        mends++;
        const wrong = faultOf({ analysis, sound, finding, mend, isLast: i > 0, slip });
        if (wrong) fail(wrong, finding, mend);
      }
      if (slip.isTold && ofFile.length === 1 && !isBroughtBack(analysis, sound, offers[0]))
        fail('the first mend does not bring the boat back', finding, offers[0]);
    }
  }
  return { slips: slips.length, understood, mends, unmended, failures };
}

interface Tried {
  readonly analysis: Analysis;
  readonly sound: Analysis;
  readonly finding: Finding;
  readonly mend: Mend;
  /** A better one stands before it. */
  readonly isLast: boolean;
  readonly slip: Slipped;
}

function faultOf({ analysis, sound, finding, mend, isLast, slip }: Tried): string | null {
  const text = applied(analysis, mend);
  if (text === null) return 'cannot be applied';
  const after = service.analyse(text, analysis);
  if (after.findings.some(each => isSame(after, each, analysis, finding))) return 'does not clear its finding';
  const isTakeOut = mend.changes.some(({ kind }) => kind === 'remove');
  const adds = mend.changes.some(({ kind }) => kind === 'add-key' || kind === 'append');
  const isSecond = finding.code === 'duplicate-key' && slip.is === `${slip.was}\n${slip.was}`;
  if (!isTakeOut && !isSecond && !keeps(text, slip.text) && !adds) return 'does not keep every figure';
  if (isTakeOut && !keeps(text, slip.text) && !isLast) return 'takes out a figure, first of all';
  const errors = news(after, sound).filter(
    ({ severity, code }) => severity === 'error' && !(code in conditionFindings),
  );
  const had = new Set(analysis.findings.map(saying));
  const fresh = errors.filter(each => !had.has(saying(each)));
  if (fresh.length > 0 && !isTakeOut) return `brings an error: ${fresh[0]!.message}`;
  return null;
}

const saying = ({ code, message }: Finding): string => `${code} ${message}`;

function applied({ syntax }: Analysis, mend: Mend): string | null {
  const splices = applyChanges(syntax, mend.changes);
  return splices && splice(syntax.text, splices);
}

/** What is said that was not said of the boat without the slip; hints aside. */
const news = (analysis: Analysis, sound: Analysis): readonly Finding[] =>
  analysis.findings.filter(
    ({ code, severity }) =>
      severity !== 'hint' && severity !== 'information' && !sound.findings.some(each => each.code === code),
  );

const isSame = (after: Analysis, one: Finding, before: Analysis, other: Finding): boolean =>
  one.code === other.code &&
  one.message === other.message &&
  rangeOf(after.syntax, one.place)[0] === rangeOf(before.syntax, other.place)[0];

/** Every digit of a figure before is one after; those in words (CO2, kg/m3) and before an entry (1.) are of none. */
function keeps(after: string, before: string): boolean {
  const left = [...digits(after)];
  return [...digits(before)].every(digit => {
    const at = left.indexOf(digit);
    return at >= 0 && left.splice(at, 1).length > 0;
  });
}

const digits = (text: string): string =>
  text
    .replace(/½/g, '1/2')
    .replace(/¼/g, '1/4')
    .replace(/⅛/g, '1/8')
    .replace(/^ *\d[.)] /gm, '')
    .replace(/[a-z]\d+/gi, '')
    .replace(/\D/g, '');

/** The first mend leaves nothing to be said of the file. */
function isBroughtBack(analysis: Analysis, sound: Analysis, mend: Mend | undefined): boolean {
  const text = mend ? applied(analysis, mend) : null;
  return (
    text !== null &&
    news(service.analyse(text, analysis), sound).filter(({ code }) => !(code in conditionFindings)).length === 0
  );
}
