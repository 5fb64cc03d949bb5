import { asText, isList, isMap } from '../../../schema/fields.ts';
import type { Change } from '../findings/finding.ts';
import { applyChanges } from '../text/editing/edit.ts';
import { writtenEntry } from '../text/editing/writtenEntry.ts';
import type { TextSplice } from '../text/reading/layout.ts';
import { readSyntax, type Syntax } from '../text/reading/syntax.ts';
import { entriesOf, valueAt } from '../text/reading/values.ts';
import { capital } from '../wording/capital.ts';

/** Trials brought into a boat file; or why not, in a sentence. */
export type Taking =
  | {
      readonly status: 'taken';
      readonly splices: readonly TextSplice[];
      /** How many there are, and how many stood there already. */
      readonly words: string;
    }
  | { readonly status: 'refused'; readonly reason: string };

/**
 * The edits that add the trials of a text, as the poolside page gives it, to a boat file. A trial that stands there already,
 * the same in all that it says, is not added again; one that the day has twice is the same twice read.
 */
export function takeTrials(file: Syntax, text: string): Taking {
  const day = readSyntax(text);
  const entries = entriesOf(day, ['trials']);
  if (entries.length === 0) return refused(NO_TRIALS);
  const [theirs, ours] = [nameIn(day), nameIn(file)];
  if (theirs !== '' && ours !== '' && theirs !== ours)
    return refused(
      `These trials are of “${theirs}”, and this file is of “${ours}”. Take them into the file of that boat.`,
    );
  const there = entriesOf(file, ['trials']).map(({ value }) => sameAs(value));
  const changes: Change[] = [];
  for (const { path, value } of entries) {
    const known = there.indexOf(sameAs(value));
    // Each one there stands for one of the day.
    if (known >= 0) there.splice(known, 1);
    else {
      const entry = writtenEntry(day, path);
      if (!entry) return refused(`Entry ${Number(path.at(-1)) + 1} under “trials:” is no trial. ${NO_TRIALS}`);
      changes.push({ kind: 'append', path: ['trials'], entry });
    }
  }
  const words = wordsFor(changes.length, entries.length - changes.length);
  if (changes.length === 0) return { status: 'taken', splices: [], words };
  const splices = applyChanges(file, changes);
  if (!splices)
    return refused('“trials” is not a list in this file: write the first trial by hand, then take the others.');
  return { status: 'taken', splices, words };
}

function wordsFor(count: number, known: number): string {
  const trials = (of: number) => (of === 1 ? 'one trial' : `${of} trials`);
  if (count === 0)
    return `Nothing new: ${known === 1 ? 'the trial stands' : `all ${known} trials stand`} in the file already.`;
  const there = known === 0 ? '' : `; ${trials(known)} stood in the file already`;
  return `${capital(trials(count))} to take${there}.`;
}

const refused = (reason: string): Taking => ({ status: 'refused', reason });

const NO_TRIALS =
  'There are no trials in this text. Copy them on the poolside page, or save them there as a file: they begin with “trials:”.';

const nameIn = (syntax: Syntax): string => asText(valueAt(syntax, ['boat'])).trim();

/** The same for entries that say the same, in whatever order and layout. */
function sameAs(value: unknown): string {
  if (isList(value)) return `[${value.map(sameAs).join()}]`;
  if (!isMap(value)) return JSON.stringify(asText(value).replace(/\s+/g, ' ').trim());
  // A key that says nothing is not written.
  const said = Object.entries(value).filter(([, field]) => field !== null && field !== undefined);
  const pairs = said.map(([key, field]) => `${JSON.stringify(key)}:${sameAs(field)}`);
  return `{${pairs.sort().join()}}`;
}
