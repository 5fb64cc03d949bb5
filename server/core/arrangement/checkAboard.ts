import type { PartEntry } from '../../../schema/hull.ts';
import type { Part } from '../boat/boat.ts';
import type { BoatSource, Source } from '../boat/source.ts';
import type { Finding } from '../findings/finding.ts';
import type { Steps } from '../steps/steps.ts';
import type { Conflict } from './conflict.ts';
import { effortBetween, heldSoFar } from './effort.ts';
import { findingOf } from './findingOf.ts';
import type { Hull } from './hull.ts';
import type { Neighbours } from './neighbours.ts';
import type { Occupant } from './occupant.ts';
import { perhapsInside } from './perhapsInside.ts';
import { mayShareRoom } from './sharedRoom.ts';

/** What is carried for a day, or in one loading condition. */
export interface Visitors {
  readonly aboard: readonly Source<PartEntry, Part>[];
  /** Payload entries that are ashore then, by name. */
  readonly without: readonly string[];
  /** The rest of the payload lies then as the file has it now: of an earlier day nobody knows. */
  readonly isAsFiled: boolean;
}

interface Around {
  readonly source: BoatSource;
  /** All that the boat itself has, of which enough is known. */
  readonly things: readonly Occupant[];
  readonly hull: Hull;
  readonly neighbours: Neighbours;
}

/** What is carried only at times, held against the hull, its compartment and what is aboard with it: the fault is its own. */
export function* checkAboard({ aboard, without, isAsFiled }: Visitors, around: Around): Steps<readonly Finding[]> {
  const { source, things, hull, neighbours } = around;
  const { shapes } = neighbours;
  if (aboard.length === 0) return [];
  const { boat } = source;
  const alone = { ...boat, payload: aboard.map(({ entry }) => entry), tanks: [], bays: [] };
  const inside = yield* perhapsInside(alone, shapes);
  const visitors = neighbours
    .occupantsOf({ ...source, boat: alone, shells: [], compartments: [], tanks: [], payload: aboard })
    .filter(({ entry }) => !inside.has(entry));
  const isThere = ({ kind, entry }: Occupant): boolean =>
    kind !== 'bay' && (kind !== 'part' || (isAsFiled && !without.includes(entry.name)));
  const mates = things.filter(isThere);
  const findings = [...inside.values()].map(({ finding }) => finding);
  for (const [i, thing] of visitors.entries()) {
    yield;
    const conflicts = yield* conflictsOf(thing, [...mates, ...visitors.slice(0, i)], { hull, neighbours });
    if (conflicts.length === 0) continue;
    findings.push(findingOf({ of: thing, conflicts }, { mends: [], length: hull.length, boat, things, shapes }));
  }
  return findings;
}

function* conflictsOf(
  thing: Occupant,
  others: readonly Occupant[],
  { hull, neighbours }: Pick<Around, 'hull' | 'neighbours'>,
): Steps<readonly Conflict[]> {
  const held = heldSoFar();
  const home = others.find(({ kind, entry }) => kind === 'compartment' && entry.name === thing.inside);
  const found = [yield* neighbours.againstHullSteps(thing, hull), home ? neighbours.stickingOut(thing, home) : null];
  for (const other of others) {
    if (!mayShareRoom(thing, other)) continue;
    found.push(neighbours.sharedRoomOf(thing, other));
    if (held.add(effortBetween(thing, other, neighbours.shapes))) yield;
  }
  return found
    .flatMap((conflict): readonly Conflict[] =>
      conflict === null ? [] : conflict.of === thing ? [conflict] : [{ ...conflict, of: thing, with: conflict.of }],
    )
    .sort((a, b) => b.ratio - a.ratio);
}
