import { closest } from '../../../schema/closest.ts';
import type { Path } from '../../../schema/path.ts';
import type { Finding } from '../findings/finding.ts';
import type { Form } from '../geometry/form/form.ts';
import { formTop } from '../geometry/shapes/formTop.ts';
import type { Shapes } from '../geometry/shapes/shapes.ts';
import { lengthText, volumeText } from '../wording/numbers.ts';
import { unknownCompartment } from './arrangement.ts';
import type { Boat } from './boat.ts';
import { changeTo, valueFault } from './fault.ts';
import type { FreeboardReading, MarkReading, Reading, TankReading, Trial } from './trial.ts';

export interface CheckedTrials {
  readonly trials: readonly Trial[];
  readonly findings: readonly Finding[];
}

/** How far past the ends of the hull a mark may stand, as a share of its length: a ram bow, a rudder. */
const BEYOND = 0.1;

/** Trials against the boat that they were made with: readings that this boat cannot give are told and left out. */
export function checkTrials(
  read: readonly Trial[],
  boat: Boat,
  compartmentNames: readonly string[],
  shapes: Shapes,
): CheckedTrials {
  const findings: Finding[] = [];
  const trials = read.map((trial): Trial => {
    findings.push(...trial.aboard.flatMap(({ entry }) => unknownCompartment(entry, compartmentNames)));
    findings.push(...trial.without.flatMap((name, i) => unknownPart(name, [...trial.path, 'without', i], boat)));
    const holds = (reading: Reading): boolean => {
      const fault = faultOf(reading, boat, shapes);
      if (fault) findings.push(fault);
      return fault === null;
    };
    const left = trial.left && holds(trial.left) ? trial.left : null;
    return { ...trial, left, readings: trial.readings.filter(holds) };
  });
  return { trials, findings };
}

function unknownPart(name: string, path: Path, { payload, leftOut }: Boat): readonly Finding[] {
  if (leftOut.includes(name) || payload.some(part => part.name === name)) return [];
  const near = closest(
    name,
    payload.map(part => part.name),
  );
  const hint = near ? ` Did you mean “${near}”?` : '';
  const message = `There is no payload entry “${name}” that could have been left ashore.${hint}`;
  return [valueFault('trial-impossible', path, message, { mends: changeTo(path, near) })];
}

function faultOf(reading: Reading, boat: Boat, shapes: Shapes): Finding | null {
  switch (reading.of) {
    case 'mark':
      return markFault(reading, boat);
    case 'freeboard':
      return markFault(reading, boat) ?? freeboardFault(reading, boat);
    case 'fill':
    case 'water':
    case 'level':
      return tankFault(reading, boat, shapes);
    default:
      return null;
  }
}

const fault = ({ path }: Reading, message: string, key?: string): Finding =>
  valueFault('trial-impossible', key === undefined ? path : [...path.slice(0, -1), key], message);

function markFault(reading: MarkReading | FreeboardReading, { length, units }: Boat): Finding | null {
  const { station } = reading;
  if (station >= -BEYOND * length && station <= (1 + BEYOND) * length) return null;
  return fault(
    reading,
    `The hull is ${lengthText(length, units)} long, so nothing can be read at this station. Stations are measured aft from the bow tip.`,
    'station',
  );
}

function freeboardFault(reading: FreeboardReading, boat: Boat): Finding | null {
  const { top, station } = reading;
  if (top !== null && ![...boat.shells, ...boat.compartments].some(({ name }) => name === top)) {
    return fault(reading, `There is no shell or compartment “${top}” to read a freeboard to.`, 'of');
  }
  if (hullTop(boat, station, top) !== null) return null;
  return fault(
    reading,
    `${top === null ? 'No shell or compartment' : `“${top}”`} reaches this station, so there is no freeboard to read here.`,
    'station',
  );
}

/**
 * The top of the hull at a station, m above the baseline: of the thing that is named, else of the highest shell there,
 * and of the highest compartment where no shell is. Null where there is none.
 */
export function hullTop(
  { shells, compartments }: Pick<Boat, 'shells' | 'compartments'>,
  station: number,
  named: string | null,
): number | null {
  const topOf = (entries: readonly { readonly form: Form }[]): number | null => {
    const tops = entries.flatMap(({ form }) => formTop(form, station) ?? []);
    return tops.length > 0 ? Math.max(...tops) : null;
  };
  if (named !== null) return topOf([...shells, ...compartments].filter(({ name }) => name === named));
  return topOf(shells) ?? topOf(compartments);
}

function tankFault(reading: TankReading, { tanks, units }: Boat, shapes: Shapes): Finding | null {
  if (tanks.length === 0) return fault(reading, 'The boat has no tank to hold water. Add it under “hull: tanks:”.');
  const tank = reading.tank === null ? tanks[0]! : tanks.find(({ name }) => name === reading.tank);
  if (!tank) return fault(reading, `There is no tank “${reading.tank}”.`, 'tank');
  const capacity = tanks.reduce((sum, each) => sum + each.capacity, 0);
  if (reading.of === 'water' && reading.value > capacity * 1.02) {
    const whose = tanks.length > 1 ? 'the tanks hold' : 'the tank holds';
    return fault(
      reading,
      `More water than ${whose}, which is ${volumeText(capacity, units)} by the file. Check the reading, and the tank’s size.`,
    );
  }
  if (reading.of !== 'level') return null;
  const { from, to } = shapes.boundsOf(tank.form);
  if (reading.value <= to[2] - from[2]) return null;
  return fault(
    reading,
    `“${tank.name}” is only ${lengthText(to[2] - from[2], units)} high. The level is measured from the tank’s lowest point.`,
  );
}
