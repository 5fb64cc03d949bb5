import type { FileUnits } from '../../../../schema/units.ts';
import type { Boat } from '../../boat/boat.ts';
import type { EntryText, Mend } from '../../findings/finding.ts';
import { boundsOf } from '../../geometry/cut/solids.ts';
import type { Revolved } from '../../geometry/form/form.ts';
import { bare, exactText } from '../../wording/exactText.ts';
import { tapeStep } from '../../wording/numbers.ts';
import { endsCounted } from '../../wording/places.ts';

/** Clear of the shell's inside by the wall and a bead of glue, m. */
const CLEAR = 0.004;
/** Shorter or lower room is not worth a bay, m. */
const SHORTEST = 0.03;
const LOWEST = 0.006;
/** Where the shell is narrower than this part of its greatest radius it tapers too much to lay a strip in. */
const LEAST_RADIUS = 0.55;

/** A box of room in the flooded hull, m. */
export interface Room {
  readonly name: string;
  readonly takes: 'lead' | 'foam';
  readonly station: readonly [number, number];
  readonly half: number;
  readonly height: readonly [number, number];
}

/**
 * Bays for a boat that names none: the room between the shell and the compartments, fore and aft of them, along the keel
 * for lead and under the deck for foam. Proposals only: the program does not know what else is there. Null when the boat
 * has bays, or no shell that tells its inside.
 */
export function proposeBays(boat: Boat): Mend | null {
  if (boat.bays.length > 0) return null;
  const rooms = roomsOf(boat);
  if (rooms.length === 0) return null;
  return {
    title: `Add ${rooms.length} proposed bays for lead and foam: check that there is room`,
    changes: rooms.map(room => ({ kind: 'append', path: ['bays'], entry: entryOf(room, boat.units) }) as const),
  };
}

/** The hull's own room: between its largest shell and its compartments. */
export function roomsOf(boat: Boat): readonly Room[] {
  const shell = boat.shells
    .map(({ form }) => form)
    .filter((form): form is Revolved => form.shape === 'revolved' && Math.abs(form.axis[0]) === 1)
    .sort((a, b) => lengthOf(b) - lengthOf(a))[0];
  if (!shell) return [];
  const greatest = Math.max(...shell.profile.map(([, radius]) => radius));
  const wide = stretchWhere(shell, radius => radius >= LEAST_RADIUS * greatest);
  if (!wide) return [];
  const bounds = boat.compartments.map(compartment => boundsOf(compartment.form));
  const forwardEnd = Math.min(wide[1], ...bounds.map(b => b.from[0] - CLEAR));
  const afterEnd = Math.max(wide[0], ...bounds.map(b => b.to[0] + CLEAR));
  return [
    ...ends(shell, 'forward', [wide[0], forwardEnd]),
    ...(bounds.length > 0 ? ends(shell, 'aft', [afterEnd, wide[1]]) : []),
    ...underCompartments(shell, bounds),
  ];
}

const lengthOf = (form: Revolved): number => form.profile.at(-1)![0] - form.profile[0]![0];

/** Radius of the shell at a station, m. */
function radiusAt({ origin, axis, profile }: Revolved, station: number): number {
  const s = (station - origin[0]) * axis[0];
  const next = profile.findIndex(([at]) => at >= s);
  if (next <= 0) return next === 0 ? profile[0]![1] : 0;
  const [[s0, r0], [s1, r1]] = [profile[next - 1]!, profile[next]!];
  return s1 > s0 ? r0 + ((r1 - r0) * (s - s0)) / (s1 - s0) : Math.min(r0, r1);
}

/** The stations between which the radius is good for something; null for none. */
function stretchWhere(shell: Revolved, isGood: (radius: number) => boolean): readonly [number, number] | null {
  const { from, to } = boundsOf(shell);
  const stations = Array.from({ length: 201 }, (_, i) => from[0] + ((to[0] - from[0]) * i) / 200);
  const good = stations.filter(station => isGood(radiusAt(shell, station)));
  const [first, last] = [good[0], good.at(-1)];
  return first === undefined || last === undefined ? null : [first, last];
}

/** Lead along the keel and foam under the deck in the space before or behind the compartments. */
function ends(shell: Revolved, where: string, station: readonly [number, number]): readonly Room[] {
  if (station[1] - station[0] < SHORTEST) return [];
  const radius = Math.min(radiusAt(shell, station[0]), radiusAt(shell, station[1])) - CLEAR;
  const half = 0.45 * radius;
  const reach = Math.sqrt(radius * radius - half * half);
  const depth = 0.35 * radius;
  if (depth < LOWEST) return [];
  const axis = shell.origin[2];
  return [
    { name: `keel ${where}`, takes: 'lead', station, half, height: [axis - reach, axis - reach + depth] },
    { name: `deck ${where}`, takes: 'foam', station, half, height: [axis + reach - depth, axis + reach] },
  ];
}

/** The gap between the keel and the compartments over it. */
function underCompartments(shell: Revolved, bounds: readonly ReturnType<typeof boundsOf>[]): readonly Room[] {
  return bounds.slice(0, 1).flatMap(({ from, to }) => {
    const radius = Math.min(radiusAt(shell, from[0]), radiusAt(shell, to[0])) - CLEAR;
    const half = 0.3 * radius;
    const floor = shell.origin[2] - Math.sqrt(Math.max(0, radius * radius - half * half));
    const roof = from[2] - CLEAR / 2;
    if (roof - floor < LOWEST) return [];
    return [
      {
        name: 'keel amidships',
        takes: 'lead' as const,
        station: [from[0], to[0]] as const,
        half,
        height: [floor, roof] as const,
      },
    ];
  });
}

/** Rounded to the tape, inwards. */
function entryOf({ name, takes, station, half, height }: Room, units: FileUnits): EntryText {
  const step = tapeStep(units);
  const up = (metres: number) => Math.ceil(metres / step - 1e-9) * step;
  const down = (metres: number) => Math.floor(metres / step + 1e-9) * step;
  const range = ([from, to]: readonly [number, number]) =>
    `${bare(exactText(up(from), units))} to ${exactText(down(to), units)}`;
  return {
    fields: [
      ['name', name],
      ['takes', takes],
      ['station', range(endsCounted(station, 'station', units))],
      ['offset', range([-half, half])],
      ['height', range(endsCounted(height, 'height', units))],
    ],
    comment: 'proposed by the program: check that there is room',
  };
}
