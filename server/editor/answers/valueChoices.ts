import type { Describer } from '../../../schema/describe.ts';
import { findMaterial, materialNames } from '../../../schema/materials.ts';
import type { Path } from '../../../schema/path.ts';
import { dimensionOf, knownUnits } from '../../../schema/units.ts';
import type { AsRead } from '../../core/analysis/analysis.ts';
import type { Boat } from '../../core/boat/boat.ts';
import { quoteScalar } from '../../core/text/reading/quoteScalar.ts';
import { densityText } from '../../core/wording/numbers.ts';
import { ownExample } from './snippets.ts';
import { namesIn, snippetBoat } from './surroundings.ts';

/** One value that could stand there. */
export interface ValueChoice {
  readonly label: string;
  readonly text: string;
  readonly detail?: string;
  /** A unit goes behind the number that is typed; other values take the place of what is. */
  readonly isUnit: boolean;
}

interface TypedValue {
  readonly typed: string;
  readonly isFlow: boolean;
}

/** Values for the key at a path: the few words it may be, materials, compartments, a unit behind a number. */
export function valueChoices(
  read: AsRead,
  describer: Describer,
  path: Path,
  { typed, isFlow }: TypedValue,
): readonly ValueChoice[] {
  const info = describer.describe(path);
  if (!info) return [];
  if (info.key === 'material') return materialChoices();
  const list = NAMED[info.key];
  if (list) return namesIn(list, read).map(name => plain(name, quoteScalar(name, isFlow)));
  if (path[0] === 'payload' && WHEN.includes(info.key)) return momentsOf(read, info.key);
  if (info.words) return info.words.map(word => plain(word, word));
  if (info.example === undefined) return [];
  const own = ownExample(info, snippetBoat(read)) ?? info.example;
  if (typed.trim() === '') return [{ ...plain(own, own), detail: 'for example' }];
  if (/\d$/.test(typed.trimEnd())) return unitChoices(info.example, typed, read.boat);
  return fullSizeChoices(info.example, typed, read.boat);
}

/** Keys whose value is the name of an entry, and the list that has it. */
const NAMED: Readonly<Record<string, Path>> = { in: ['hull', 'compartments'], tank: ['hull', 'tanks'] };

/** What may be left ashore. */
export const payloadChoices = (read: AsRead, isFlow: boolean): readonly ValueChoice[] =>
  namesIn(['payload'], read).map(name => plain(name, quoteScalar(name, isFlow)));

/** Keys of a payload entry that say since when or until when. */
const WHEN = ['fitted', 'removed', 'until'];

/** The trials, the last one first: after it, or until it. */
const momentsOf = ({ trials }: AsRead, key: string): readonly ValueChoice[] =>
  trials
    .map(trial => {
      const place = `trial ${Number(trial.path.at(-1)) + 1}`;
      const text = key === 'until' ? place : `after ${place}`;
      return { ...plain(text, text), detail: `${trial.name}, ${trial.condition}` };
    })
    .reverse();

const plain = (label: string, text: string): ValueChoice => ({ label, text, isUnit: false });

const materialChoices = (): readonly ValueChoice[] =>
  materialNames().map(name => {
    const material = findMaterial(name);
    return material ? { ...plain(name, name), detail: densityText(material.density) } : plain(name, name);
  });

/** “full size” behind a length, where the boat has a scale. */
function fullSizeChoices(example: string, typed: string, { scale }: Boat): readonly ValueChoice[] {
  const isLength = dimensionOf(unitOf(example)) === 'length' && dimensionOf(unitOf(typed.trimEnd())) === 'length';
  if (scale === null || !isLength || !/\d/.test(typed)) return [];
  const gap = /\s$/.test(typed) ? '' : ' ';
  return [{ label: 'full size', text: `${gap}full size`, detail: 'divided by the scale', isUnit: true }];
}

const unitOf = (text: string): string =>
  text
    .split(' ')
    .at(-1)!
    .replace(/^[-\d.,/]+/, '');

/** Units of the kind that the example has, the file's own first. */
function unitChoices(example: string, typed: string, { units }: Boat): readonly ValueChoice[] {
  const dimension = dimensionOf(unitOf(example));
  if (dimension === null) return [];
  const names = knownUnits(dimension);
  const own = names.filter(name => name === units.length || name === units.mass);
  return [...own, ...names.filter(name => !own.includes(name))].map(name => {
    const gap = name === '°' || /\s$/.test(typed) ? '' : ' ';
    return { label: name, text: gap + name, isUnit: true };
  });
}
