import { type Conflict, isSure } from './conflict.ts';
import type { Hull } from './hull.ts';
import type { Occupant } from './occupant.ts';

/** What is told as one: a thing, or the hull’s length (null), and all that would be mended with it. */
export interface Blame {
  readonly of: Occupant | null;
  /** Those that are its own before those of what it holds, the worst first. */
  readonly conflicts: readonly Conflict[];
}

/** What holds others is to blame where so many of these, and so great a share of them, do not fit. */
const SEVERAL = 2;
const MOST_OF_THEM = 0.6;
/** A conflict that only may be one weighs less. */
const PERHAPS_WEIGHS = 0.3;

/**
 * The fewest things that being wrong would account for all conflicts, the most telling first: whatever mends most by itself,
 * and of two that would mend as much the one that the conflict is of.
 */
export function blamesOf(conflicts: readonly Conflict[], things: readonly Occupant[], hull: Hull): readonly Blame[] {
  const blames: Blame[] = [];
  const left = new Map(conflicts.map((conflict, i) => [conflict, i]));
  const involved = involvedIn(conflicts);
  const suspects = new Map<Occupant | null, Suspect>();
  const accuse = (of: Occupant | null): void => {
    const theirs = (involved.get(of) ?? []).filter(conflict => left.has(conflict));
    involved.set(of, theirs);
    suspects.delete(of);
    const explained = theirs.filter(conflict => explains(of, conflict));
    const [first] = theirs;
    if (first && (first.of === of || mayBeWrong(of, explained, things, hull)))
      suspects.set(of, {
        of,
        explained,
        weight: weigh(of, explained),
        first: 2 * left.get(first)! + Number(first.of !== of),
      });
  };
  for (const of of involved.keys()) accuse(of);
  // Ends: each round takes at least one conflict away.
  while (left.size > 0) {
    const { of, explained } = [...suspects.values()].reduce(heavier);
    const ownFirst = (a: Conflict, b: Conflict) => Number(b.of === of) - Number(a.of === of) || worstFirst(a, b);
    blames.push({ of, conflicts: [...explained].sort(ownFirst) });
    // A bay that reaches into what is out of place itself may be right.
    const waiting = involved
      .get(of)!
      .filter(({ of: bay, with: other }) => of !== null && other === of && bay.kind === 'bay');
    const settled = [...explained, ...waiting];
    for (const conflict of settled) left.delete(conflict);
    for (const each of new Set(settled.flatMap(conflict => [conflict.of, conflict.with]))) accuse(each);
  }
  return blames;
}

/** Somebody who may be wrong, as far as conflicts are left. */
interface Suspect {
  readonly of: Occupant | null;
  readonly explained: readonly Conflict[];
  readonly weight: number;
  /** The order in which they come up. */
  readonly first: number;
}

const heavier = (one: Suspect, other: Suspect): Suspect =>
  other.weight > one.weight || (other.weight === one.weight && other.first < one.first) ? other : one;

/** Whoever has to do with conflicts, with those. */
function involvedIn(conflicts: readonly Conflict[]): Map<Occupant | null, readonly Conflict[]> {
  const involving = new Map<Occupant | null, Conflict[]>();
  for (const conflict of conflicts) {
    for (const suspect of new Set([conflict.of, conflict.with])) {
      const known = involving.get(suspect);
      if (known) known.push(conflict);
      else involving.set(suspect, [conflict]);
    }
  }
  return involving;
}

const explains = (suspect: Occupant | null, { of, with: other, code }: Conflict): boolean =>
  suspect === null
    ? code === 'beyond-hull'
    : // A bay says where room was thought to be: it proves nothing against a thing that is there.
      of === suspect || (other === suspect && (of.kind !== 'bay' || HOLDS.has(code)));

/** By how much it is accused; the thing that a conflict is of a little more than what it is held against. */
const weigh = (of: Occupant | null, explained: readonly Conflict[]): number =>
  explained.reduce(
    (sum, conflict) => sum + (isSure(conflict) ? 1 : PERHAPS_WEIGHS) * (conflict.of === of ? 1.2 : 1),
    0,
  );

/** What holds others, or the hull’s length, is wrong only where it would be wrong for most of what it holds. */
function mayBeWrong(
  suspect: Occupant | null,
  explained: readonly Conflict[],
  things: readonly Occupant[],
  { own }: Hull,
): boolean {
  const sure = explained.filter(isSure).length;
  if (suspect === null) return sure >= SEVERAL && explained.some(({ of }) => own.includes(of));
  const held = explained.filter(conflict => conflict.with === suspect && HOLDS.has(conflict.code));
  if (held.length === 0) return true;
  const inhabitants =
    suspect.kind === 'shell'
      ? things.filter(({ kind, inside }) => kind !== 'shell' && inside === null)
      : things.filter(({ inside }) => inside === suspect.entry.name);
  const misfits = held.filter(isSure).length;
  return misfits >= SEVERAL && misfits >= MOST_OF_THEM * inhabitants.length;
}

const HOLDS: ReadonlySet<string> = new Set(['sticks-out', 'outside-hull']);

const worstFirst = (a: Conflict, b: Conflict): number =>
  Number(isSure(b)) - Number(isSure(a)) || rank(a) - rank(b) || b.by - a.by;

/** What is said first of a thing that is in several places wrong. */
const RANK = ['sticks-out', 'beyond-hull', 'below-keel', 'outside-hull', 'compartments-overlap', 'same-room'];
const rank = ({ code }: Conflict): number => RANK.indexOf(code);
