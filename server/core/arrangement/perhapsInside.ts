import type { Bay, Boat, Entry, Part, Tank } from '../boat/boat.ts';
import { entryFault } from '../boat/fault.ts';
import { TAPE } from '../boat/placed.ts';
import type { Finding } from '../findings/finding.ts';
import type { Bounds } from '../geometry/cut/solids.ts';
import type { Shapes } from '../geometry/shapes/shapes.ts';
import { pacer, type Steps } from '../steps/steps.ts';
import { quoteScalar } from '../text/reading/quoteScalar.ts';

/** Of the least of its sizes, how much must lie in a compartment's form for it to lie in there whole. */
const WHOLE = 0.95;

/** So many things are looked at in one step. */
const STEP = 10;

/** The compartment that a thing lies in without saying so, by name, and what is to be said of it. */
interface Inside {
  readonly home: string;
  readonly finding: Finding;
}

/** What lies whole in a compartment and does not say so counts as lying in the water, and displaces what is displaced. */
export function* perhapsInside(boat: Boat, shapes: Shapes): Steps<ReadonlyMap<Entry, Inside>> {
  const isDue = pacer(STEP);
  const found = new Map<Entry, Inside>();
  for (const entry of [...boat.tanks, ...boat.payload, ...boat.bays]) {
    if (isDue(1)) yield;
    const home = homeOf(entry, boat, shapes);
    if (home === null) continue;
    const text = quoteScalar(home, true);
    const message = `“${entry.name}” lies whole in “${home}”, but counts as lying in the water, so that its room displaces twice. If it is in there, say so: “in: ${text}”.`;
    const finding: Finding = {
      ...entryFault('perhaps-inside', entry.path, message, 'warning'),
      mends: [{ title: `Add “in: ${text}”`, changes: [{ kind: 'add-key', path: entry.path, key: 'in', text }] }],
    };
    found.set(entry, { home, finding });
  }
  return found;
}

function homeOf(entry: Tank | Part | Bay, { compartments }: Boat, shapes: Shapes): string | null {
  if (entry.inside !== null || ('form' in entry && !entry.form)) return null;
  const space = 'from' in entry ? entry : shapes.boundsOf(entry.form);
  const around = compartments.filter(({ form }) => fits(space, shapes.boundsOf(form)));
  const form = 'form' in entry ? entry.form : around.length > 0 ? shapes.blockOf(entry) : null;
  if (!form) return null;
  const least = Math.min(...([0, 1, 2] as const).map(axis => space.to[axis] - space.from[axis]));
  return around.find(compartment => shapes.overlapOf(compartment.form, form) >= WHOLE * least)?.name ?? null;
}

const fits = (space: Bounds, room: Bounds): boolean =>
  !room.from.some((from, axis) => from - space.from[axis]! > TAPE || space.to[axis]! - room.to[axis]! > TAPE);
