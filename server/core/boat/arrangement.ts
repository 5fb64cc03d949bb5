import { closest } from '../../../schema/closest.ts';
import { pathKey } from '../../../schema/path.ts';
import type { Finding } from '../findings/finding.ts';
import type { Bay, Boat, Entry, Part, Tank } from './boat.ts';
import { changeTo, valueFault } from './fault.ts';
import { countedByItself } from './holds.ts';

/** Names that stand for two things, `in:` that names no compartment. */
export function checkNames(boat: Omit<Boat, 'leftOut'>, compartmentNames: readonly string[]): readonly Finding[] {
  const names = new Set(compartmentNames);
  const strays = [...boat.tanks, ...boat.payload, ...boat.bays].filter(
    ({ inside }) => inside !== null && !names.has(inside),
  );
  return [
    ...duplicateNames([...boat.shells, ...boat.compartments, ...boat.tanks, ...boat.payload, ...boat.ashore]),
    ...duplicateNames(boat.bays),
    ...strays.flatMap(entry => unknownCompartment(entry, compartmentNames)),
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
      mends: changeTo(path, near ?? (names.length === 1 ? names[0]! : null)),
    }),
  ];
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
