import type { Path } from '../../../schema/path.ts';
import type { Quantity } from '../../../schema/quantity.ts';
import type { FindingCode } from '../findings/catalogue/catalogue.ts';
import type { Finding, Mend, Severity, Subject } from '../findings/finding.ts';
import { quoteScalar } from '../text/reading/quoteScalar.ts';

/** Findings on values and keys of the file, for the readers of this room. */
export const valueFault = (
  code: FindingCode,
  path: Path,
  message: string,
  more: { severity?: Severity; mends?: readonly Mend[] } = {},
): Finding => ({
  code,
  severity: more.severity ?? 'error',
  about: subjectAt(path),
  message,
  place: { on: 'value', path },
  ...(more.mends?.length ? { mends: more.mends } : {}),
});

/** A finding on an entry as a whole: its key, or its first line, is marked. */
export const entryFault = (code: FindingCode, path: Path, message: string, severity: Severity = 'error'): Finding => ({
  code,
  severity,
  about: subjectAt(path),
  message,
  place: { on: 'entry', path },
});

/** A finding under `trials:` is about them. */
const subjectAt = ([section]: Path): Subject => (section === 'trials' ? 'trials' : 'file');

/** Offers the nearest known word in place of a value. */
export function changeTo(path: Path, word: string | null): readonly Mend[] {
  if (word === null) return [];
  const text = quoteScalar(word, true);
  return [{ title: `Change to “${word}”`, changes: [{ kind: 'replace', place: { on: 'value', path }, text }] }];
}

/** A density without a unit was given one by its size: said, so that it can be seen. */
export function guessedUnit({ value, guessed }: Quantity, path: Path): readonly Finding[] {
  if (guessed === undefined) return [];
  const written = Number((value / 1000).toPrecision(6));
  return [
    {
      code: 'unit-guessed',
      severity: 'hint',
      about: 'file',
      message: `Read as ${written} ${guessed}: bare densities are kg/m3, and nothing is so light. Write the unit.`,
      place: { on: 'value', path },
      mends: changeTo(path, `${written} ${guessed}`),
    },
  ];
}
