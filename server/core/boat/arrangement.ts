import { closest } from '../../../schema/closest.ts';
import { pathKey } from '../../../schema/path.ts';
import type { Finding } from '../findings/finding.ts';
import type { Bounds } from '../geometry/cut/solids.ts';
import { boxForm } from '../geometry/form/box.ts';
import type { Shapes } from '../geometry/shapes/shapes.ts';
import { quoteScalar } from '../text/reading/quoteScalar.ts';
import { lengthText, stationWords } from '../wording/numbers.ts';
import type { Bay, Boat, Compartment, Entry, Part, Shell, Tank } from './boat.ts';
import { changeTo, entryFault, valueFault } from './fault.ts';
import { countedByItself } from './holds.ts';
import { TAPE } from './placed.ts';

/** Names that stand for two things, `in:` that names no compartment, things where there is no room. */
export function checkArrangement(
  boat: Omit<Boat, 'leftOut'>,
  compartmentNames: readonly string[],
  shapes: Shapes,
): readonly Finding[] {
  const inhabitants = [...boat.tanks, ...boat.payload, ...boat.bays];
  return [
    ...duplicateNames([...boat.shells, ...boat.compartments, ...boat.tanks, ...boat.payload, ...boat.ashore]),
    ...duplicateNames(boat.bays),
    ...inhabitants.flatMap(entry => unknownCompartment(entry, compartmentNames)),
    ...inhabitants.flatMap(entry => stickingOut(entry, boat, shapes)),
    ...inhabitants.flatMap(entry => perhapsInside(entry, boat, shapes)),
    ...overlaps(boat, shapes),
    ...countedByItself(boat),
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
  // Ends: there are not so many names.
  while (names.has(`${name} ${count}`)) count++;
  return `${name} ${count}`;
}

export function unknownCompartment(entry: Tank | Part | Bay, names: readonly string[]): readonly Finding[] {
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

type Inhabited = Pick<Boat, 'compartments' | 'units'>;

function stickingOut(entry: Tank | Part | Bay, { compartments, units }: Inhabited, shapes: Shapes): readonly Finding[] {
  const home = compartments.find(compartment => compartment.name === entry.inside);
  if (!home) return [];
  const room = shapes.boundsOf(home.form);
  const space = 'from' in entry ? entry : shapes.boundsOf(entry.form);
  if (fits(space, room)) return [];
  const ways = protrusions(space, room);
  const worst = ways.reduce((most, way) => (way.by > most.by ? way : most));
  return [
    entryFault(
      'sticks-out',
      entry.path,
      `“${entry.name}” sticks out of “${home.name}” by ${lengthText(worst.by, units)} ${worst.where}. Check its place, its size, and “in:”.`,
      'warning',
    ),
  ];
}

/** Of the least of its sizes, how much must lie in a compartment's form for it to lie in there whole. */
const WHOLE = 0.95;

/** What lies whole in a compartment and does not say so counts as lying in the water, and displaces what is displaced. */
function perhapsInside(entry: Tank | Part | Bay, { compartments }: Inhabited, shapes: Shapes): readonly Finding[] {
  if (entry.inside !== null) return [];
  if ('form' in entry && !entry.form) return [];
  const space = 'from' in entry ? entry : shapes.boundsOf(entry.form);
  const around = compartments.filter(compartment => fits(space, shapes.boundsOf(compartment.form)));
  const form = 'form' in entry ? entry.form : around.length > 0 ? boxForm(entry.from, entry.to) : null;
  if (!form) return [];
  const least = Math.min(...([0, 1, 2] as const).map(axis => space.to[axis] - space.from[axis]));
  const home = around.find(compartment => shapes.overlapOf(compartment.form, form) >= WHOLE * least);
  if (!home) return [];
  const text = quoteScalar(home.name, true);
  return [
    {
      ...entryFault(
        'perhaps-inside',
        entry.path,
        `“${entry.name}” lies whole in “${home.name}”, but counts as lying in the water, so that its room displaces twice. If it is in there, say so: “in: ${text}”.`,
        'warning',
      ),
      mends: [{ title: `Add “in: ${text}”`, changes: [{ kind: 'add-key', path: entry.path, key: 'in', text }] }],
    },
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

const fits = (space: Bounds, room: Bounds): boolean =>
  !room.from.some((from, axis) => from - space.from[axis]! > TAPE || space.to[axis]! - room.to[axis]! > TAPE);

function protrusions(space: Bounds, room: Bounds): readonly Protrusion[] {
  return ([0, 1, 2] as const)
    .flatMap(axis => [
      { by: room.from[axis] - space.from[axis], where: PAST[axis][0] },
      { by: space.to[axis] - room.to[axis], where: PAST[axis][1] },
    ])
    .filter(way => way.by > TAPE);
}

function overlaps({ compartments, units }: Inhabited, shapes: Shapes): readonly Finding[] {
  return compartments.flatMap((compartment, i) =>
    compartments.slice(0, i).flatMap(other => {
      const least = shapes.overlapOf(compartment.form, other.form);
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

/** A mesh that reaches past either end of the hull by more than this share of its length is not where it should be. */
const BEYOND = 0.1;

/** Meshes that do not fit the hull's length: a wrong unit, or axes the wrong way round. */
export function meshesBeyondHull(
  meshed: ReadonlyMap<Entry, readonly string[]>,
  { length, units }: Pick<Boat, 'length' | 'units'>,
  shapes: Shapes,
): readonly Finding[] {
  return [...meshed].flatMap(([entry, names]) => {
    const form = (entry as Partial<Shell | Compartment | Tank | Part>).form;
    if (!form) return [];
    const { from, to } = shapes.boundsOf(form);
    if (from[0] > -BEYOND * length && to[0] < (1 + BEYOND) * length) return [];
    return [
      entryFault(
        'mesh-beyond-hull',
        entry.path,
        `With “${names.join('” and “')}” this reaches from ${stationWords(from[0], units)} to ${stationWords(to[0], units)}, but the hull is ${lengthText(length, units)} long. Check “unit”, “axes” and “at” of the mesh, and the hull’s length.`,
        'warning',
      ),
    ];
  });
}

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
