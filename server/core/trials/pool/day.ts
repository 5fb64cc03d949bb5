import { pathKey, samePath } from '../../../../schema/path.ts';
import { AXES } from '../../boat/placed.ts';
import { type BoatSource, entriesIn } from '../../boat/source.ts';
import type { Trial } from '../../boat/trial.ts';
import type { Input } from '../../uncertainty/input.ts';
import { inputsOf } from '../../uncertainty/inputs.ts';
import { waterInputs } from '../../uncertainty/waterInputs.ts';
import { dayBoat, dayPayload, isAsFiled } from './dayBoat.ts';
import { type DayTanks, dayTanks } from './dayTanks.ts';

/** The boat on the day of a trial with what it was read from, and every uncertain number of it. */
export interface Day {
  readonly trial: Trial;
  readonly source: BoatSource;
  /** What the day has in common with the file has the same id; what was otherwise then, temporary pieces and the day's own water have their own. */
  readonly inputs: readonly DayInput[];
}

/**
 * An uncertain number; a broad one is so open that its uncertainty is no small step. A slid one is the place of a part that
 * has been moved since: as far off then as it is now.
 */
export type DayInput = Input & { readonly isBroad?: boolean; readonly isSlid?: boolean };

/** `inputs` are those of the boat as filed. */
export function dayOf(source: BoatSource, inputs: readonly DayInput[], trial: Trial): Day {
  const payload = dayPayload(source.payload, trial, { partOf: ({ entry }) => entry, asWas: was => was });
  const filled = dayTanks(source, trial);
  const tanks = filled?.tanks ?? source.tanks;
  const day: BoatSource = {
    ...source,
    boat: { ...dayBoat(source.boat, trial), tanks: entriesIn(tanks) },
    water: trial.pool ?? source.water,
    tanks,
    payload,
  };
  const known = filled ? filledAs(inputs, filled) : inputs;
  if (isAsFiled(trial)) return { trial, source: day, inputs: known };
  const filed = known.flatMap(input => stillThere(input, source, payload));
  const dry = trial.pool ? filed.filter(({ target }) => target.on !== 'water') : filed;
  const own = trial.pool ? waterInputs(day).map(input => ofDay(input, trial)) : [];
  const others = payload.filter(one => !source.payload.includes(one));
  return { trial, source: day, inputs: merged(dry, [...own, ...inputsOfOthers(day, others, trial, known)]) };
}

/** With what was read of the tanks in the place of what the file says of them; the same list where neither says anything. */
function filledAs(inputs: readonly DayInput[], { input }: DayTanks): readonly DayInput[] {
  if (!input && !inputs.some(isFill)) return inputs;
  return [...inputs.filter(one => !isFill(one)), ...(input ? [input] : [])];
}

/** What the file says that is left in a tank. */
const isFill = ({ noun, target }: Input): boolean =>
  noun === 'fill' && target.on === 'entries' && target.at.every(({ list }) => list === 'tanks');

/** The trial of a boat that is already as it was that day: its pieces and its water, and the fill of its tanks. */
export const withoutDay = (trial: Trial): Trial => ({
  ...trial,
  aboard: [],
  without: [],
  formerly: [],
  pool: null,
  water: null,
  left: trial.left?.of === 'water' ? trial.left : null,
});

type Payload = BoatSource['payload'];

/** An input with the places that its entries have among those on board as filed; none where none of them is. */
function stillThere(input: DayInput, { payload }: BoatSource, onBoard: Payload): readonly DayInput[] {
  const { target } = input;
  if (target.on === 'water') return [input];
  const at = target.at.flatMap(place => {
    if (place.list !== 'payload') return [place];
    const index = onBoard.indexOf(payload[place.index]!);
    return index < 0 ? [] : [{ ...place, index }];
  });
  return at.length === 0 ? [] : [{ ...input, target: { ...target, at } }];
}

/** Uncertain numbers of what was on board otherwise than as filed: as it was then, ashore now, or for that day only. */
function inputsOfOthers(
  source: BoatSource,
  others: Payload,
  trial: Trial,
  now: readonly DayInput[],
): readonly DayInput[] {
  const alone = inputsOf({ ...source, shells: [], compartments: [], tanks: [], payload: others });
  return alone.flatMap(input => {
    const { target } = input;
    if (target.on === 'water') return [];
    const at = target.at.map(({ list, index }) => ({ list, index: source.payload.indexOf(others[index]!) }));
    return asWas(input, trial, now).map(was => ({ ...was, target: { ...target, at } }));
  });
}

/** A part slid along a ruler comes to lie so far off where it was meant to, m (common practice, no source). */
const SLID = 0.0005;

/**
 * A figure that was another one then is another input: it stands in `was`. But what is slid along takes with it by how much
 * it lies elsewhere than written, unless its place is known better by now (common practice, no source), and the slide itself
 * is no better than the hand: that is an input of its own, the same for all trials before it.
 */
function asWas(input: Input, { formerly }: Trial, now: readonly DayInput[]): readonly DayInput[] {
  const was = formerly.find(({ path, part }) => part && samePath(path, input.entry));
  const key = input.path[input.entry.length];
  const index = was?.changed[String(key)];
  if (!was || index === undefined) return [input];
  const same = now.find(({ id }) => id === input.id);
  const isPlace = AXES.some(axis => axis === key);
  const isAsOpen = same !== undefined && same.sigma > input.sigma - 1e-9;
  const path = [...was.path, 'was', index, ...input.path.slice(input.entry.length)];
  const then: DayInput = { ...input, id: input.id.replace(pathKey(input.path), pathKey(path)), path, places: [path] };
  if (!isPlace || !isAsOpen || was.changed.mass !== undefined) return [then];
  return [
    { ...input, sigma: same.sigma, isSlid: true },
    { ...then, sigma: SLID },
  ];
}

/** What both have, such as the handbook's density of lead, is one input for the entries of both. */
function merged(filed: readonly DayInput[], more: readonly DayInput[]): readonly DayInput[] {
  const fresh = more.filter(({ id }) => !filed.some(input => input.id === id));
  const shared = filed.map((input): DayInput => {
    const other = more.find(({ id }) => id === input.id);
    if (other?.target.on !== 'entries' || input.target.on !== 'entries') return input;
    return { ...input, target: { ...input.target, at: [...input.target.at, ...other.target.at] } };
  });
  return [...shared, ...fresh];
}

const ofDay = (input: Input, { path, name }: Trial): Input => ({
  ...input,
  id: `${input.id} of ${path.join(' ')}`,
  path: [...path, 'pool'],
  places: [[...path, 'pool']],
  words: `${input.words} in the trial of ${name}`,
});
