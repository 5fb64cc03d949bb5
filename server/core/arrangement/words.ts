import type { FileUnits } from '../../../schema/units.ts';
import { AXES } from '../boat/placed.ts';
import { lengthText, stationWords } from '../wording/numbers.ts';
import type { Blame } from './blame.ts';
import { type Conflict, isSure } from './conflict.ts';

/** What is wrong with the place of a thing, by how much, and what to do. */
export function blameWords({ of, conflicts }: Blame, length: number | null, units: FileUnits): string {
  const [worst] = conflicts;
  if (of === null) return lengthWords(conflicts, length ?? 0, units);
  if (worst && worst.of !== of) return holderWords(of.entry.name, conflicts, units);
  return worst ? conflictWords(worst, length ?? 0, units) : '';
}

function conflictWords(conflict: Conflict, length: number, units: FileUnits): string {
  const { code, of, with: other, by, where, station } = conflict;
  const [name, much] = [`“${of.entry.name}”`, lengthText(by, units)];
  const there = stationWords(station, units);
  const figure = AXES[conflict.axis];
  const perhaps = isSure(conflict) ? '' : ' That is little more than the tolerances of the figures.';
  switch (code) {
    case 'beyond-hull': {
      const end =
        where === 'forward'
          ? 'ahead of the bow tip'
          : `past the stern: it ends ${there}, and the hull is ${lengthText(length, units)} long`;
      return `${name} reaches ${much} ${end}.${perhaps} Check its station and its length${where === 'forward' ? '' : ', or the hull’s'}.`;
    }
    case 'below-keel':
      return `${name} reaches ${much} below the keel.${perhaps} Check its height and its depth${units.origin?.heights === 'waterline' ? '' : ': heights are counted from the lowest point of the keel'}.`;
    case 'outside-hull':
      return `${name} stands out of the hull by ${much} ${where}, ${there}.${perhaps} Check its ${figure}, its station and its size.`;
    case 'sticks-out':
      return `${name} sticks out of “${other?.entry.name}” by ${much} ${where}.${perhaps} Check its place, its size, and “in:”.`;
    case 'compartments-overlap':
      return `${name} and “${other?.entry.name}” overlap by ${much}, so some water would be displaced twice.${perhaps} Check their places and sizes.`;
    default:
      return `${name} and “${other?.entry.name}” take up the same room, ${much} deep, ${there}.${perhaps} Check the ${figure} of “${of.entry.name}” and the sizes of both.`;
  }
}

/** Most of what a thing holds does not fit in it. */
function holderWords(name: string, conflicts: readonly Conflict[], units: FileUnits): string {
  const worst = conflicts.reduce((most, conflict) => (conflict.by > most.by ? conflict : most));
  const names = namesOf(conflicts.map(({ of }) => of.entry.name));
  const verb =
    worst.code === 'outside-hull'
      ? 'stand out of'
      : worst.code === 'sticks-out'
        ? 'stick out of'
        : 'take up the room of';
  return `${names} ${verb} “${name}”, by up to ${lengthText(worst.by, units)} ${worst.where}`
    .trimEnd()
    .concat(`. Most likely “${name}” itself is elsewhere, or of another size: check its ${AXES[worst.axis]}.`);
}

function lengthWords(conflicts: readonly Conflict[], length: number, units: FileUnits): string {
  const worst = conflicts.reduce((most, conflict) => (conflict.by > most.by ? conflict : most));
  const names = namesOf(conflicts.map(({ of }) => of.entry.name));
  return `The hull is ${lengthText(length, units)} long, but ${names} reach past its ends, by up to ${lengthText(worst.by, units)}. Check the hull’s length.`;
}

/** “a”, “b” and 3 more. */
function namesOf(names: readonly string[]): string {
  const quoted = names.map(name => `“${name}”`);
  if (quoted.length <= 3)
    return quoted.length < 2 ? (quoted[0] ?? '') : `${quoted.slice(0, -1).join(', ')} and ${quoted.at(-1)}`;
  return `${quoted.slice(0, 2).join(', ')} and ${quoted.length - 2} more`;
}
