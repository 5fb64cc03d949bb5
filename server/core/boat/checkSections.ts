import type { Describer } from '../../../schema/describe.ts';
import type { Finding } from '../findings/finding.ts';
import type { Steps } from '../steps/steps.ts';
import type { Syntax } from '../text/reading/syntax.ts';
import { keysOf, kindAt, valueAt } from '../text/reading/values.ts';
import { entryFault, valueFault } from './fault.ts';
import { keyMeantBy, mostUnknown, unknownKey } from './unknownKey.ts';

/** Keys that are no sections, told and, where they hold entries that are now in no figure, returned. */
export function* checkKeys(syntax: Syntax, describer: Describer, findings: Finding[]): Steps<Unread> {
  const leftOut: string[] = [];
  const meant: string[] = [];
  for (const [map, where] of [
    [[], 'a boat file'],
    [['hull'], 'the hull'],
  ] as const) {
    yield;
    const keys = keysOf(syntax, map).filter(each => !describer.isKey(map, each));
    if (keys.length === 0) continue;
    yield;
    // What is said of a key is made once: one in a step, for all together take long.
    for (const key of describer.namesAt(map)) {
      yield;
      describer.describe([...map, key]);
    }
    const around = { map, owner: valueAt(syntax, map), where, known: describer.keysAt(map) };
    yield;
    // With more of them it is no boat file, and nobody reads on.
    if (keys.length > mostUnknown) meant.push(ANY);
    for (const key of keys.slice(0, mostUnknown)) {
      yield;
      const unknown = { key, ...around };
      findings.push(unknownKey(unknown));
      meant.push(keyMeantBy(unknown) ?? ANY);
      const kind = kindAt(syntax, [...map, key]);
      if (kind === 'map' || kind === 'list') leftOut.push(key);
    }
  }
  return { leftOut, meant };
}

/** What stands under keys that nobody knows. */
export interface Unread {
  /** Keys that hold entries, which are in no figure. */
  readonly leftOut: readonly string[];
  /** The keys that were meant. */
  readonly meant: readonly string[];
}

/** An unknown key may stand for any that is missing. */
const ANY = '*';

/** What a boat file cannot do without. */
export function missingSections(syntax: Syntax, length: number | null, { meant }: Unread): readonly Finding[] {
  const root = kindAt(syntax, []);
  if (!root) return [];
  if (root !== 'map') {
    return [entryFault('not-a-boat', [], 'A boat file begins with keys such as “boat: Petrel” and “hull:”.')];
  }
  if (meant.includes(ANY)) return [];
  const findings: Finding[] = [];
  const hull = kindAt(syntax, ['hull']);
  if (kindAt(syntax, ['boat']) === undefined && !meant.includes('boat'))
    findings.push(entryFault('missing-key', [], 'The boat needs a name: add a line “boat: Petrel”.'));
  if (hull === undefined) {
    if (!meant.includes('hull'))
      findings.push(entryFault('missing-key', [], 'The boat needs a “hull:” with its length, and what floats it.'));
  } else if (hull !== null && hull !== 'map') {
    findings.push(
      valueFault(
        'wrong-value',
        ['hull'],
        'Expected the hull’s keys below it: length, waterline, shells, compartments, tanks.',
      ),
    );
  } else if (length === null && !kindAt(syntax, ['hull', 'length']) && !meant.includes('length')) {
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
