import { samePath } from '../../../schema/path.ts';
import type { FileUnits } from '../../../schema/units.ts';
import type { Entry, Part } from '../boat/boat.ts';
import { sameData } from '../boat/sameData.ts';
import type { Finding } from '../findings/finding.ts';
import type { Conflict } from './conflict.ts';
import type { Hull } from './hull.ts';
import type { Occupant } from './occupant.ts';

/** What is held against each other, and what words are said by. */
export interface Arranging {
  readonly things: readonly Occupant[];
  readonly hull: Hull;
  readonly units: FileUnits;
}

/** What was found of how things lie to each other. */
export interface Misfits {
  readonly conflicts: readonly Conflict[];
  readonly findings: readonly Finding[];
  /** What lies in a compartment without saying so. */
  readonly hidden: ReadonlySet<Entry>;
}

/** The last things that were looked at, with what was found. */
export type KeptMisfits = Arranging & Misfits;

/**
 * What is found of things that lie as others did: the same, for all but the masses of what is in nobody's way. Null where they
 * do not.
 */
export function misfitsAlike(now: Arranging, kept: KeptMisfits): Misfits | null {
  const { things, hull, units, conflicts, findings, hidden } = kept;
  if (hull !== now.hull || things.length !== now.things.length || !sameData(units, now.units)) return null;
  const changed = now.things.flatMap((thing, i) => (thing === things[i] ? [] : [[things[i]!, thing] as const]));
  const isInTheWay = (thing: Occupant) => conflicts.some(({ of, with: other }) => of === thing || other === thing);
  if (!changed.every(([was, is]) => liesAlike(was, is) && !isInTheWay(was))) return null;
  const stillHidden = new Set(hidden);
  for (const [was, is] of changed) if (stillHidden.delete(was.entry)) stillHidden.add(is.entry);
  return { conflicts, findings, hidden: stillHidden };
}

/** A part that is where it was, as large and by the same name. */
function liesAlike(was: Occupant, is: Occupant): boolean {
  if (was.kind !== 'part' || is.kind !== 'part') return false;
  const [{ entry: before, ...lay }, { entry, ...lies }] = [was, is];
  return (
    before.name === entry.name &&
    samePath(before.path, entry.path) &&
    sameData(roomOf(before as Part), roomOf(entry as Part)) &&
    sameData({ ...lay, size: 0, checked: null }, { ...lies, size: 0, checked: null })
  );
}

const roomOf = ({ form, from, to }: Part) => ({ form, from, to });
