import { closest } from '../../schema/closest.ts';
import { pathKey } from '../../schema/path.ts';
import type { FileUnits } from '../../schema/units.ts';
import type { Finding } from '../findings/finding.ts';
import type { Form, Revolved } from '../geometry/form.ts';
import { boundsOf } from '../geometry/solids.ts';
import type { Vec3 } from '../geometry/vector.ts';
import { lengthText } from '../wording/numbers.ts';
import type { Bay, Boat, Compartment, Entry, Part, Tank } from './boat.ts';
import { changeTo, entryFault, valueFault } from './fault.ts';

/** Less than this sticking out or overlapping is the tape's doing, m. */
const TAPE = 0.0005;

/** Names that stand for two things, `in:` that names no compartment, things where there is no room. */
export function checkArrangement(boat: Omit<Boat, 'leftOut'>, compartmentNames: readonly string[]): readonly Finding[] {
  const inhabitants = [...boat.tanks, ...boat.payload, ...boat.bays];
  return [
    ...duplicateNames([...boat.shells, ...boat.compartments, ...boat.tanks, ...boat.payload]),
    ...duplicateNames(boat.bays),
    ...inhabitants.flatMap(entry => unknownCompartment(entry, compartmentNames)),
    ...inhabitants.flatMap(entry => stickingOut(entry, boat.compartments, boat.units)),
    ...overlaps(boat.compartments, boat.units),
  ];
}

function duplicateNames(entries: readonly Entry[]): readonly Finding[] {
  const seen = new Map<string, Entry>();
  return entries.flatMap(entry => {
    const first = seen.get(entry.name);
    if (!first) {
      seen.set(entry.name, entry);
      return [];
    }
    const free = freeName(entry.name, entries);
    const message = `Two things are called “${entry.name}”. Give this one a name of its own, such as “${free}”.`;
    return [
      valueFault('duplicate-name', [...entry.path, 'name'], message, {
        mends: changeTo([...entry.path, 'name'], free),
      }),
    ];
  });
}

/** A name that no entry has: `name`, or `name 2`, `name 3` and so on. */
export function freeName(name: string, taken: readonly { readonly name: string }[]): string {
  const names = new Set(taken.map(entry => entry.name));
  if (!names.has(name)) return name;
  let count = 2;
  while (names.has(`${name} ${count}`)) count++;
  return `${name} ${count}`;
}

function unknownCompartment(entry: Tank | Part | Bay, names: readonly string[]): readonly Finding[] {
  if (entry.inside === null || names.includes(entry.inside)) return [];
  const near = closest(entry.inside, names);
  const hint = near
    ? `Did you mean “${near}”?`
    : names.length === 0
      ? 'The hull has no compartments yet.'
      : names.length === 1
        ? `The only one is “${names[0]}”.`
        : `The compartments are ${names.map(name => `“${name}”`).join(', ')}.`;
  const path = [...entry.path, 'in'];
  return [
    valueFault('unknown-compartment', path, `There is no compartment “${entry.inside}”. ${hint}`, {
      mends: changeTo(path, near),
    }),
  ];
}

function stickingOut(
  entry: Tank | Part | Bay,
  compartments: readonly Compartment[],
  units: FileUnits,
): readonly Finding[] {
  const home = compartments.find(compartment => compartment.name === entry.inside);
  if (!home) return [];
  const room = boundsOf(home.form);
  const space = 'from' in entry ? entry : boundsOf(entry.form);
  const ways = protrusions(space, room);
  const worst = ways.reduce<Protrusion | null>((most, way) => (!most || way.by > most.by ? way : most), null);
  if (!worst) return [];
  return [
    entryFault(
      'sticks-out',
      entry.path,
      `“${entry.name}” sticks out of “${home.name}” by ${lengthText(worst.by, units)} ${worst.where}. Check its place, its size, and “in:”.`,
      'warning',
    ),
  ];
}

interface Protrusion {
  readonly by: number;
  readonly where: string;
}

const PAST = [
  ['forward', 'aft'],
  ['to port', 'to starboard'],
  ['below', 'above'],
] as const;

function protrusions(space: Box, room: Box): readonly Protrusion[] {
  return ([0, 1, 2] as const)
    .flatMap(axis => [
      { by: room.from[axis] - space.from[axis], where: PAST[axis][0] },
      { by: space.to[axis] - room.to[axis], where: PAST[axis][1] },
    ])
    .filter(way => way.by > TAPE);
}

interface Box {
  readonly from: Vec3;
  readonly to: Vec3;
}

function overlaps(compartments: readonly Compartment[], units: FileUnits): readonly Finding[] {
  return compartments.flatMap((compartment, i) =>
    compartments.slice(0, i).flatMap(other => {
      const least = overlapOf(compartment.form, other.form);
      if (least <= TAPE) return [];
      return [
        entryFault(
          'compartments-overlap',
          compartment.path,
          `“${compartment.name}” and “${other.name}” overlap by ${lengthText(least, units)}, so some water would be displaced twice. Check their places and sizes.`,
          'warning',
        ),
      ];
    }),
  );
}

/** How far two forms reach into each other, m; by their boxes, or by their circles where both are fore-and-aft rounds. */
function overlapOf(one: Form, two: Form): number {
  const a = boundsOf(one);
  const b = boundsOf(two);
  const [along, athwart, upright] = ([0, 1, 2] as const).map(
    axis => Math.min(a.to[axis], b.to[axis]) - Math.max(a.from[axis], b.from[axis]),
  ) as [number, number, number];
  if (!isForeAft(one) || !isForeAft(two)) return Math.min(along, athwart, upright);
  const apart = Math.hypot(one.origin[1] - two.origin[1], one.origin[2] - two.origin[2]);
  return Math.min(along, (a.to[1] - a.from[1] + b.to[1] - b.from[1]) / 2 - apart);
}

const isForeAft = (form: Form): form is Revolved => form.shape === 'revolved' && Math.abs(form.axis[0]) === 1;

/** Findings of one place said twice are said once. */
export function withoutRepeats(findings: readonly Finding[]): readonly Finding[] {
  const seen = new Set<string>();
  return findings.filter(finding => {
    const place = 'path' in finding.place ? pathKey(finding.place.path) : `${finding.place.start}`;
    const key = `${finding.code} ${finding.place.on} ${place} ${finding.message}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}
