import { closest } from '../../../schema/closest.ts';
import type { Path } from '../../../schema/path.ts';
import type { Finding } from '../findings/finding.ts';
import { freeName, unknownCompartment } from './arrangement.ts';
import type { Boat } from './boat.ts';
import { changeTo, valueFault } from './fault.ts';
import type { OwnCondition } from './ownCondition.ts';
import { unknownPart } from './unknownPart.ts';

/** Names that are taken: the conditions that every boat has. */
const BUILT_IN = [{ name: 'surfaced' }, { name: 'submerged' }];

interface CheckedConditions {
  readonly conditions: readonly OwnCondition[];
  readonly findings: readonly Finding[];
}

/** Loading conditions against the boat that they are of: one that means something which is not there is told and left out. */
export function checkConditions(
  read: readonly OwnCondition[],
  boat: Boat,
  compartmentNames: readonly string[],
): CheckedConditions {
  const findings: Finding[] = [];
  const conditions = read.filter((own, i) => {
    const faults = [
      ...nameTaken(own, [...BUILT_IN, ...read.slice(0, i)]),
      ...own.without.flatMap((name, at) =>
        unknownPart(name, [...own.path, 'without', at], boat, {
          code: 'condition-impossible',
          what: 'that could be left ashore',
        }),
      ),
      ...own.tanks.flatMap(({ tank, path }) => unknownTank(tank, [...path, 'tank'], boat)),
      ...(own.fill !== null && boat.tanks.length === 0 ? noTank([...own.path, 'fill'], boat) : []),
      ...twiceAboard(own, boat),
    ];
    findings.push(...faults, ...own.aboard.flatMap(({ entry }) => unknownCompartment(entry, compartmentNames)));
    return faults.length === 0;
  });
  return { conditions, findings };
}

type Names = readonly { readonly name: string }[];

/** Names that differ in capitals only read alike over a column of figures. */
function nameTaken({ name, path }: OwnCondition, others: Names): readonly Finding[] {
  if (!others.some(other => other.name.toLowerCase() === name.toLowerCase())) return [];
  const free = freeName(name, [...others, { name }]);
  return [
    valueFault(
      'duplicate-name',
      [...path, 'name'],
      `There is a condition “${name}” already. Give this one a name of its own, such as “${free}”.`,
      { mends: changeTo([...path, 'name'], free) },
    ),
  ];
}

function unknownTank(name: string, path: Path, boat: Boat): readonly Finding[] {
  const { tanks, leftOut } = boat;
  if (leftOut.includes(name) || tanks.some(tank => tank.name === name)) return [];
  if (tanks.length === 0) return noTank(path, boat);
  const near = closest(
    name,
    tanks.map(tank => tank.name),
  );
  const hint = near ? `Did you mean “${near}”?` : `The tanks are ${tanks.map(tank => `“${tank.name}”`).join(', ')}.`;
  return [
    valueFault('condition-impossible', path, `There is no tank “${name}”. ${hint}`, { mends: changeTo(path, near) }),
  ];
}

/** A tank that could not be read is told where it stands. */
const noTank = (path: Path, { leftOut }: Boat): readonly Finding[] =>
  leftOut.length > 0
    ? []
    : [
        valueFault(
          'condition-impossible',
          path,
          'The boat has no tank to hold water. Add it under “hull: tanks:”, or take this out.',
        ),
      ];

/** What is carried besides takes the name of nothing that is aboard with it; of what is left ashore it may. */
function twiceAboard({ aboard, without }: OwnCondition, { payload }: Boat): readonly Finding[] {
  return aboard.flatMap(({ entry }, i) => {
    const mates = [
      ...payload.filter(({ name }) => !without.includes(name)),
      ...aboard.slice(0, i).map(one => one.entry),
    ];
    if (!mates.some(({ name }) => name === entry.name)) return [];
    const free = freeName(entry.name, mates);
    return [
      valueFault(
        'duplicate-name',
        [...entry.path, 'name'],
        `“${entry.name}” is aboard already. Give this one a name of its own, such as “${free}”, or leave the other ashore under “without:”.`,
        { mends: changeTo([...entry.path, 'name'], free) },
      ),
    ];
  });
}
