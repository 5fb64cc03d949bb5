import type { ConditionEntry } from '../../../schema/conditions.ts';
import type { Path } from '../../../schema/path.ts';
import type { Quantity } from '../../../schema/quantity.ts';
import type { Finding } from '../findings/finding.ts';
import { valueFault } from './fault.ts';
import type { OwnCondition } from './ownCondition.ts';
import type { ReadingContext } from './readingContext.ts';
import { readPart } from './readPart.ts';
import { readWater } from './readWater.ts';

/** What means nothing in a condition: what its tanks hold where they hold what neutral asks, limits of figures that it has not. */
const STRANGE = {
  surfaced: { keys: [], limits: ['bg', 'fill', 'reserve'] },
  submerged: { keys: ['fill', 'tanks'], limits: ['draft', 'gm'] },
} as const;

/** A loading condition from its checked entry; null for one that says two things at once. */
export function readCondition(
  entry: ConditionEntry,
  path: Path,
  around: ReadingContext,
  findings: Finding[],
): OwnCondition | null {
  const { name, condition = 'surfaced', fill, tanks = [], aboard = [], without = [], water, limits = {} } = entry;
  const isSubmerged = condition === 'submerged';
  const strange = STRANGE[condition];
  for (const key of strange.keys) if (key in entry) findings.push(unused(path, key, UNUSED_TANKS));
  for (const key of strange.limits)
    if (key in limits) findings.push(unused([...path, 'limits'], key, unusedLimit(key, condition)));
  if (isSubmerged && limits.reserve && limits.fill)
    findings.push(
      unused([...path, 'limits'], 'fill', 'says nothing beside “reserve”: the boat is held under with its tanks full.'),
    );
  if (!isSubmerged && fill && tanks.length > 0) {
    findings.push(givenTwice(path));
    return null;
  }
  for (const [at, set] of [[[...path, 'fill'], fill] as const, ...tankFills(path, tanks)])
    if (set) findings.push(...toleranceUnused(at, set));
  return {
    path,
    name,
    isSubmerged,
    fill: isSubmerged ? null : (fill?.value ?? null),
    tanks: isSubmerged
      ? []
      : tanks.map((one, i) => ({ path: [...path, 'tanks', i], tank: one.tank, fill: one.fill.value })),
    aboard: aboard.flatMap((checked, i) => {
      const part = readPart(checked, [...path, 'aboard', i], around, findings);
      return part ? [{ checked, entry: part }] : [];
    }),
    without,
    water: water ? { entry: water, made: readWater(water, findings, [...path, 'water']) } : null,
    asked: askedOf(limits, isSubmerged && limits.reserve ? [...strange.limits, 'fill'] : strange.limits),
  };
}

type Limits = NonNullable<ConditionEntry['limits']>;

const askedOf = (limits: Limits, strange: readonly string[]): OwnCondition['asked'] =>
  Object.fromEntries(
    Object.entries(limits).flatMap(([key, limit]) => {
      if (limit === undefined || strange.includes(key)) return [];
      return [[key, 'from' in limit ? ([limit.from, limit.to] as const) : limit.value] as const];
    }),
  );

const tankFills = (path: Path, tanks: readonly { readonly fill: Quantity }[]) =>
  tanks.map(({ fill }, i) => [[...path, 'tanks', i, 'fill'], fill] as const);

const UNUSED_TANKS =
  'says nothing of a submerged condition: its tanks hold what makes the boat hang neutral. It is left out.';

const unusedLimit = (key: string, condition: 'surfaced' | 'submerged'): string =>
  `is a limit of ${condition === 'surfaced' ? 'a submerged' : 'a surfaced'} boat, and this condition is ${condition}: nothing is asked by it.${key === 'bg' ? ' Afloat it is “gm”.' : key === 'gm' ? ' Submerged it is “bg”.' : ''}`;

const unused = (path: Path, key: string, words: string): Finding => ({
  code: 'condition-unused',
  severity: 'warning',
  about: 'file',
  message: `“${key}” ${words}`,
  place: { on: 'key', path: [...path, key] },
  mends: [{ title: `Remove “${key}”`, changes: [{ kind: 'remove', path: [...path, key] }] }],
});

const toleranceUnused = (path: Path, { sigma }: Quantity): readonly Finding[] =>
  sigma === null
    ? []
    : [
        valueFault(
          'condition-unused',
          path,
          'A fill here is what it shall be, not what was read: the tolerance after ± says nothing and is left out.',
          { severity: 'warning' },
        ),
      ];

const givenTwice = (path: Path): Finding =>
  valueFault(
    'condition-impossible',
    [...path, 'fill'],
    'The water in the tanks is given twice, as “fill” of all together and under “tanks”. Keep one of them; until then this condition is not figured.',
    {
      mends: ['fill', 'tanks'].map(key => ({
        title: `Remove “${key}”`,
        changes: [{ kind: 'remove', path: [...path, key] }],
      })),
    },
  );
