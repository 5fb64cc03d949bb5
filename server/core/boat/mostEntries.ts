import type { Path } from '../../../schema/path.ts';
import type { Finding } from '../findings/finding.ts';
import type { ListItem } from '../text/reading/values.ts';
import { entryFault } from './fault.ts';

/**
 * How many of each a file may have, by the word for one: several times what any model has. Every figure takes longer with
 * each, and an editor waits for it.
 */
const MOST: Readonly<Record<string, number>> = {
  shell: 50,
  compartment: 50,
  tank: 24,
  part: 1000,
  bay: 100,
  condition: 12,
  trial: 50,
};

/** The entries of a list that are read; what is beyond their greatest number is told, once, and counts as left out. */
export function entriesRead(
  items: readonly ListItem[],
  what: string,
  findings: Finding[],
  leaveOut: (path: Path, name: string) => void,
): readonly ListItem[] {
  const most = MOST[what] ?? Number.POSITIVE_INFINITY;
  const beyond = items[most];
  if (!beyond) return items;
  findings.push(
    entryFault(
      'too-many',
      beyond.path,
      `More than ${most.toLocaleString('en')} ${what}s are more than any boat has: this one and those below it are not read. Put together those that lie together.`,
    ),
  );
  leaveOut(beyond.path, `${what}s from the ${most + 1}th on`);
  return items.slice(0, most);
}
