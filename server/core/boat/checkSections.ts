import { closest } from '../../../schema/closest.ts';
import type { Finding } from '../findings/finding.ts';
import type { Syntax } from '../text/reading/syntax.ts';
import { keysOf, kindAt } from '../text/reading/values.ts';
import { entryFault, valueFault } from './fault.ts';

const SECTIONS = [
  'boat',
  'scale',
  'units',
  'water',
  'hull',
  'payload',
  'bays',
  'stock',
  'limits',
  'conditions',
  'trials',
];
const HULL_KEYS = ['length', 'waterline', 'shells', 'compartments', 'tanks'];

/** Keys that are no sections, told and, where they hold entries that are now in no figure, returned. */
export function checkKeys(syntax: Syntax, findings: Finding[]): readonly string[] {
  const leftOut: string[] = [];
  for (const [path, expected, where] of [
    [[], SECTIONS, 'a boat file'],
    [['hull'], HULL_KEYS, 'the hull'],
  ] as const) {
    const keys = keysOf(syntax, path);
    for (const key of keys.filter(key => !expected.includes(key))) {
      const near = closest(
        key,
        expected.filter(candidate => !keys.includes(candidate)),
      );
      const hint = near ? `Did you mean “${near}”?` : `Known here: ${expected.join(', ')}.`;
      const place = { on: 'key', path: [...path, key] } as const;
      findings.push({
        code: 'unknown-key',
        severity: 'error',
        about: 'file',
        message: `There is no key “${key}” in ${where}. ${hint}`,
        place,
        ...(near
          ? { mends: [{ title: `Change to “${near}”`, changes: [{ kind: 'replace', place, text: near }] }] }
          : {}),
      });
      const kind = kindAt(syntax, place.path);
      if (kind === 'map' || kind === 'list') leftOut.push(key);
    }
  }
  return leftOut;
}

/** What a boat file cannot do without. */
export function missingSections(syntax: Syntax, length: number | null): readonly Finding[] {
  const root = kindAt(syntax, []);
  if (!root) return [];
  if (root !== 'map') {
    return [entryFault('not-a-boat', [], 'A boat file begins with keys such as “boat: Petrel” and “hull:”.')];
  }
  const findings: Finding[] = [];
  const hull = kindAt(syntax, ['hull']);
  if (kindAt(syntax, ['boat']) === undefined)
    findings.push(entryFault('missing-key', [], 'The boat needs a name: add a line “boat: Petrel”.'));
  if (hull === undefined) {
    findings.push(entryFault('missing-key', [], 'The boat needs a “hull:” with its length, and what floats it.'));
  } else if (hull !== null && hull !== 'map') {
    findings.push(
      valueFault(
        'wrong-value',
        ['hull'],
        'Expected the hull’s keys below it: length, waterline, shells, compartments, tanks.',
      ),
    );
  } else if (length === null && !kindAt(syntax, ['hull', 'length'])) {
    findings.push(
      entryFault(
        'missing-key',
        ['hull'],
        'The hull needs “length”, such as “length: 900 mm”. Until then the aftmost end of what is in the file stands in for it.',
      ),
    );
  }
  return findings;
}
