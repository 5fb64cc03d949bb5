import type { HeldEntry } from '../../../schema/holds.ts';
import type { Quantity } from '../../../schema/quantity.ts';
import { usualUncertainties } from '../../../schema/usualUncertainties.ts';
import type { Finding } from '../findings/finding.ts';
import { massText } from '../wording/numbers.ts';
import type { Boat, Entry } from './boat.ts';
import { valueFault } from './fault.ts';
import { APART } from './measuredTwice.ts';
import { type Setting, tell } from './readingContext.ts';

/** What is said of an entry that was weighed as one with what is in it. */
interface Assembly {
  readonly name: string;
  readonly mass?: Quantity | undefined;
  readonly holds?: readonly HeldEntry[] | undefined;
}

/** For people: what is in it; nothing for what holds nothing. Those in it are held against the mass of all. */
export function heldWords({ name, mass, holds = [] }: Assembly, setting: Setting): readonly string[] {
  if (holds.length === 0) return [];
  const { units } = setting.around;
  const weighed = holds.flatMap(held => held.mass ?? []);
  const sum = weighed.reduce((all, { value }) => all + value, 0);
  const sigmaOf = ({ value, sigma }: Quantity) => sigma ?? usualUncertainties.mass.of(value);
  const sigma = Math.hypot(...weighed.map(sigmaOf), mass ? sigmaOf(mass) : 0);
  if (mass && sum - mass.value > APART * sigma) {
    tell(
      setting,
      'assembly-lighter',
      ['holds'],
      `What is in “${name}” weighs ${massText(sum, units)} by itself, “${name}” with all in it ${massText(mass.value, units)}. Check the masses: that of “${name}” is of everything together.`,
      { severity: 'warning' },
    );
  }
  const each = holds.map(held => (held.mass ? `${held.name} ${massText(held.mass.value, units)}` : held.name));
  return [`weighed as one with ${each.join(', ')}`];
}

/** Things that an assembly holds and that have an entry of their own as well: they count twice. */
export function countedByItself(boat: Pick<Boat, 'shells' | 'compartments' | 'tanks' | 'payload'>): readonly Finding[] {
  const assemblies = [...boat.shells, ...boat.compartments, ...boat.payload].filter(({ holds }) => holds.length > 0);
  if (assemblies.length === 0) return [];
  const entries: readonly Entry[] = [...boat.shells, ...boat.compartments, ...boat.tanks, ...boat.payload];
  const own = new Map(entries.map(entry => [folded(entry.name), entry]));
  return assemblies.flatMap(({ name, path, holds }) =>
    holds.flatMap((held, i) => {
      const other = own.get(folded(held));
      if (!other || other.path === path) return [];
      const { path: its } = other;
      return [
        valueFault(
          'assembly-twice',
          [...path, 'holds', i],
          `“${held}” is weighed with “${name}”, and has an entry of its own as well: it counts twice. Keep one of the two.`,
          {
            severity: 'warning',
            mends: [
              { title: `Remove the entry “${other.name}”`, changes: [{ kind: 'remove', path: its }] },
              { title: `Remove “${held}” from “${name}”`, changes: [{ kind: 'remove', path: [...path, 'holds', i] }] },
            ],
          },
        ),
      ];
    }),
  );
}

const folded = (name: string): string => name.trim().toLowerCase();
