import { isInside, type Path } from '../../../schema/path.ts';
import { checkArrangement } from '../arrangement/checkArrangement.ts';
import type { Neighbours } from '../arrangement/neighbours.ts';
import type { Entry } from '../boat/boat.ts';
import type { BoatReading } from '../boat/readBoat.ts';
import type { Finding } from '../findings/finding.ts';
import { inSteps, type Steps } from '../steps/steps.ts';
import type { Syntax } from '../text/reading/syntax.ts';
import { hasSlip, sectionSlips } from '../text/reading/values.ts';
import type { Places } from './analysis.ts';

/** The same when it is asked for. */
export function placesIn(syntax: Syntax, reading: BoatReading, neighbours: Neighbours): Places {
  const { shells, compartments, tanks, payload, bays } = reading.boat;
  const isVisited = [...reading.conditions, ...reading.trials].some(({ aboard }) => aboard.length > 0);
  return {
    found: inSteps(() => arranged(syntax, reading, neighbours)),
    of: isVisited ? null : [...shells, ...compartments, ...tanks, ...payload, ...bays],
  };
}

/**
 * What lies where it cannot. Nothing is said of what a fault leaves in uncertainty: that would be a second complaint about
 * the same slip.
 */
export function* arranged(syntax: Syntax, reading: BoatReading, neighbours: Neighbours): Steps<readonly Finding[]> {
  const { source, hasLength, lacksUnits, boat } = reading;
  // Bare sizes may then be in another unit, and what the hull is made of is not all there.
  const isOpen = boat.leftOut.includes('units') || boat.leftOut.includes('origin') || hasSlip(syntax, ['units']);
  if (lacksUnits || isOpen || hasSlip(syntax, ['hull'])) return [];
  const faults = reading.findings.flatMap(({ severity, place }) =>
    severity === 'error' && 'path' in place ? [place.path] : [],
  );
  const isAnyFaulty = hasSlip(syntax, []) || faults.length > 0;
  const isFaulty = (path: Path): boolean =>
    isAnyFaulty && (hasSlip(syntax, path) || faults.some(fault => isInside(fault, path)));
  // A line that lost its place may be the one that says where a thing is.
  const mayLackKeys = (path: Path): boolean => isFaulty(path) || sectionSlips(syntax, path);
  const lacksCompartments = isFaulty(['hull', 'compartments']);
  const doubts = {
    hasLength,
    isAnyDoubtful: isAnyFaulty,
    isDoubtful: ({ entry }: { readonly entry: Entry }) => isFaulty(entry.path),
    lacksShells: isFaulty(['hull', 'shells']),
  };
  const visitors = [
    ...reading.conditions.map(({ aboard, without }) => ({ aboard, without, isAsFiled: true })),
    ...reading.trials.map(({ aboard, without }) => ({ aboard, without, isAsFiled: false })),
  ].map(each => ({ ...each, aboard: each.aboard.filter(({ entry }) => !isFaulty(entry.path)) }));
  const found = yield* checkArrangement(source, neighbours, doubts, visitors);
  return found.filter(
    ({ code, place }) =>
      code !== 'perhaps-inside' || !(lacksCompartments || ('path' in place && mayLackKeys(place.path))),
  );
}
