import type { BoatSource } from '../../boat/source.ts';
import type { Trial } from '../../boat/trial.ts';
import type { Input } from '../../uncertainty/input.ts';
import { inputsOf } from '../../uncertainty/inputs.ts';
import { waterInputs } from '../../uncertainty/waterInputs.ts';
import { dayBoat, isAsFiled, isOnBoard } from './dayBoat.ts';

/** The boat on the day of a trial with what it was read from, and every uncertain number of it. */
export interface Day {
  readonly trial: Trial;
  readonly source: BoatSource;
  /** What the day has in common with the file has the same id; temporary pieces and the day's own water have their own. */
  readonly inputs: readonly DayInput[];
}

/** An uncertain number; a broad one is so open that its uncertainty is no small step. */
export type DayInput = Input & { readonly isBroad?: boolean };

/** `inputs` are those of the boat as filed. */
export function dayOf(source: BoatSource, inputs: readonly DayInput[], trial: Trial): Day {
  const onBoard = source.payload.filter(({ entry }) => isOnBoard(entry, trial));
  const day: BoatSource = {
    ...source,
    boat: dayBoat(source.boat, trial),
    water: trial.pool ?? source.water,
    payload: [...onBoard, ...trial.aboard],
  };
  if (isAsFiled(trial)) return { trial, source: day, inputs };
  const filed = inputs.flatMap(input => stillThere(input, source, onBoard));
  const dry = trial.pool ? filed.filter(({ target }) => target.on !== 'water') : filed;
  const own = trial.pool ? waterInputs(day).map(input => ofDay(input, trial)) : [];
  return { trial, source: day, inputs: merged(dry, [...own, ...aboardInputs(day, onBoard.length, trial)]) };
}

/** An input with the places that its entries have among those on board; none where none of them is. */
function stillThere(
  input: DayInput,
  { payload }: BoatSource,
  onBoard: readonly BoatSource['payload'][number][],
): readonly DayInput[] {
  const { target } = input;
  if (target.on === 'water' || onBoard.length === payload.length) return [input];
  const at = target.at.flatMap(place => {
    if (place.list !== 'payload') return [place];
    const index = onBoard.indexOf(payload[place.index]!);
    return index < 0 ? [] : [{ ...place, index }];
  });
  return at.length === 0 ? [] : [{ ...input, target: { ...target, at } }];
}

/** Uncertain numbers of the temporary pieces, which stand in the payload behind all others. */
function aboardInputs(source: BoatSource, before: number, { aboard }: Trial): readonly DayInput[] {
  const alone = inputsOf({ ...source, shells: [], compartments: [], tanks: [], payload: aboard });
  return alone.flatMap(input => {
    const { target } = input;
    if (target.on === 'water') return [];
    const at = target.at.map(({ list, index }) => ({ list, index: index + before }));
    return [{ ...input, target: { ...target, at } }];
  });
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
