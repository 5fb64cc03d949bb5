import { samePath } from '../../../schema/path.ts';
import type { Finding } from '../findings/finding.ts';
import type { Form } from '../geometry/form/form.ts';
import { formTop } from '../geometry/shapes/formTop.ts';
import type { Shapes } from '../geometry/shapes/shapes.ts';
import { lengthText, volumeText } from '../wording/numbers.ts';
import { fromStationZero } from '../wording/places.ts';
import { unknownCompartment } from './arrangement.ts';
import type { Boat } from './boat.ts';
import { entryFault, valueFault } from './fault.ts';
import { trialsHeard } from './mostReadings.ts';
import type { FreeboardReading, MarkReading, Reading, TankReading, Trial } from './trial.ts';
import { unknownPart } from './unknownPart.ts';

export interface CheckedTrials {
  readonly trials: readonly Trial[];
  readonly findings: readonly Finding[];
}

/** How far past the ends of the hull a mark may stand, as a share of its length: a ram bow, a rudder. */
const BEYOND = 0.1;

/** Trials against the boat that they were made with: readings that this boat cannot give, or that are too many, are told and left out. */
export function checkTrials(
  read: readonly Trial[],
  boat: Boat,
  compartmentNames: readonly string[],
  shapes: Shapes,
): CheckedTrials {
  const findings: Finding[] = [];
  const trials = trialsHeard(read, findings).map((trial): Trial => {
    findings.push(...trial.aboard.flatMap(({ entry }) => unknownCompartment(entry, compartmentNames)));
    findings.push(...trial.without.flatMap((name, i) => unknownPart(name, [...trial.path, 'without', i], boat, LEFT)));
    const holds = (reading: Reading): boolean => {
      const fault = faultOf(reading, boat, shapes);
      if (fault) findings.push(fault);
      return fault === null;
    };
    // What is taken for granted of the tanks stands at no key of its own.
    const isGiven = trial.left !== null && !samePath(trial.left.path, trial.path);
    const left = !isGiven || (trial.left && holds(trial.left)) ? trial.left : null;
    if (trial.condition === 'hung' && !isGiven && boat.tanks.length > 0 && trial.readings.length > 0) {
      findings.push(fillUnknown(trial));
      return { ...trial, left, readings: [] };
    }
    return { ...trial, left, readings: trial.readings.filter(holds).map(reading => hungWith(reading, trial, boat)) };
  });
  return { trials, findings };
}

const LEFT = { code: 'trial-impossible', what: 'that could have been left ashore' } as const;

const fillUnknown = ({ path }: Trial): Finding =>
  entryFault(
    'trial-impossible',
    path,
    'A boat that hangs under water weighs there as much as its tanks make it: say how full they were, such as “fill: 100 %”.',
  );

/**
 * Water in the tanks that was poured from a jug weighs more or less by what the jug leaves open. Both balances are then off
 * the same way; taken as independent that would half cancel in their sum, so each gets √2 of it: the careful side.
 */
function hungWith(reading: Reading, { left }: Trial, { water }: Boat): Reading {
  if (reading.of !== 'hook' || left?.of !== 'water') return reading;
  const open = water.density * left.sigma * (reading.pair ? Math.SQRT2 : 1);
  return { ...reading, sigma: Math.hypot(reading.sigma, open) };
}

function faultOf(reading: Reading, boat: Boat, shapes: Shapes): Finding | null {
  switch (reading.of) {
    case 'mark':
      return markFault(reading, boat);
    case 'freeboard':
      return markFault(reading, boat) ?? freeboardFault(reading, boat);
    case 'scale':
    case 'hook':
      return reading.pair && stationFault(reading, reading.pair.station, boat);
    case 'balance':
      return beyondFault(reading, reading.value, boat);
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

const markFault = (reading: MarkReading | FreeboardReading, boat: Boat): Finding | null =>
  stationFault(reading, reading.station, boat);

const stationFault = (reading: Reading, station: number, boat: Boat): Finding | null =>
  beyondFault(reading, station, boat, 'station');

/** A station that the hull does not reach; it stands at the reading itself or at a key beside it. */
function beyondFault(reading: Reading, station: number, { length, units }: Boat, key?: string): Finding | null {
  if (station >= -BEYOND * length && station <= (1 + BEYOND) * length) return null;
  return fault(
    reading,
    `The hull is ${lengthText(length, units)} long, so nothing can be read at this station. Stations count ${fromStationZero(units)}.`,
    key,
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
