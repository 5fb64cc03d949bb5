import { isMap } from '../../../schema/fields.ts';
import type { Path } from '../../../schema/path.ts';
import { countedAt, placedAt } from '../../../schema/places.ts';
import type { AsRead } from '../../core/analysis/analysis.ts';
import { freePlace } from '../../core/arrangement/freePlace.ts';
import type { Part, Tank } from '../../core/boat/boat.ts';
import { type Bounds, boundsOf } from '../../core/geometry/cut/solids.ts';
import { whenAsked } from '../../core/steps/steps.ts';
import { rangeOf } from '../../core/text/reading/rangeOf.ts';
import { entriesOf } from '../../core/text/reading/values.ts';
import { tapeStep } from '../../core/wording/numbers.ts';
import type { Lies, SnippetBoat } from './snippetFields.ts';

/** Where something is written: the list, and the offset in the text. */
export interface Writer {
  readonly list: Path;
  readonly offset: number;
}

/** How a new entry of this boat is written: in its units, to its length, among its neighbours, which are looked at when asked for. */
export function snippetBoat(read: AsRead, at?: Writer): SnippetBoat {
  const { boat } = read;
  const beside = whenAsked(() => (at ? neighboursAt(read, at) : []));
  const compartment = whenAsked(
    () =>
      beside().find(({ inside }) => inside !== null)?.inside ??
      namesIn(['hull', 'compartments'], read)[0] ??
      'dry cylinder',
  );
  const named = whenAsked(() => LISTS.flatMap(list => namesIn(list, read)).map(name => ({ name })));
  return {
    units: boat.units,
    length: boat.length,
    get compartment() {
      return compartment();
    },
    get named() {
      return named();
    },
    free: (lies, wanted) => freeFor({ lies, wanted, compartment: compartment(), beside: beside() }, read),
  };
}

const LISTS: readonly Path[] = [['hull', 'shells'], ['hull', 'compartments'], ['hull', 'tanks'], ['payload'], ['bays']];

/** As the file has them, so that one whose entry is not finished yet counts too. */
export function namesIn(list: Path, { syntax }: AsRead): readonly string[] {
  const names = entriesOf(syntax, list).map(({ value }) => (isMap(value) ? value.name : undefined));
  return names.filter(name => typeof name === 'string');
}

/** What stands in the list already: before the offset, the nearest first, then behind it. */
function neighboursAt({ boat, syntax }: AsRead, { list, offset }: Writer): readonly (Part | Tank)[] {
  const there = [...boat.payload, ...boat.tanks].filter(({ path }) => list.every((key, i) => path[i] === key));
  // They stand in the file in their order.
  let [before, behind] = [0, there.length];
  // Ends: each round halves a whole number of entries.
  while (before < behind) {
    const middle = (before + behind) >> 1;
    if (rangeOf(syntax, { on: 'entry', path: there[middle]!.path })[0] < offset) before = middle + 1;
    else behind = middle;
  }
  return [...there.slice(0, before).reverse(), ...there.slice(before)];
}

/** A tank takes so much of the height of its compartment, the most first. */
const TANK_SHARES = [0.85, 0.6, 0.4];
/** Room between one thing and the next, m (common practice, no source). */
const GAP = 0.005;

interface Wanted {
  readonly lies: Lies;
  readonly wanted: Bounds;
  readonly compartment: string;
  readonly beside: readonly (Part | Tank)[];
}

function freeFor({ lies, wanted, compartment, beside }: Wanted, { boat, source, neighbours }: AsRead): Bounds | null {
  const { kind, isInside, half, isFitted } = lies;
  const { units } = boat;
  const home = isInside ? boat.compartments.find(({ name }) => name === compartment) : undefined;
  if (isInside && !home) return null;
  const near = kind === 'part' ? beside.find(({ inside }) => inside === compartment) : undefined;
  // Marks that one remembers: every fifth millimetre, every quarter of an inch.
  const step = tapeStep(units) * (units.length === 'in' || units.length === 'ft' ? 4 : 5);
  const mark = (metres: number, counted: 'station' | 'height', by: number): number =>
    placedAt(Math.round(countedAt(metres, counted, units) / by) * by, counted, units);
  const marks = {
    station: (metres: number) => mark(metres, 'station', step),
    height: (metres: number) => mark(metres, 'height', half[1] > 0 ? tapeStep(units) / 2 : tapeStep(units)),
  };
  const inside = isInside ? compartment : null;
  const isRound = kind === 'tank' || kind === 'compartment';
  const tried = home
    ? (kind === 'tank' ? TANK_SHARES : [1]).map(share =>
        within(wanted, boundsOf(home.form), { half: half[1], share, near: near && roomOf(near) }),
      )
    : [wanted];
  for (const bounds of tried) {
    const found = freePlace({ kind, inside, bounds, isRound, isFitted: isFitted === true }, source, neighbours, marks);
    if (found) return found;
  }
  return null;
}

const roomOf = (entry: Part | Tank): Bounds => ('from' in entry ? entry : boundsOf(entry.form));

/** In a compartment: behind its neighbour at the same height, a tank in the middle of it. */
function within(
  wanted: Bounds,
  home: Bounds,
  { half, share, near }: { readonly half: number; readonly share: number; readonly near: Bounds | undefined },
): Bounds {
  const long = wanted.to[0] - wanted.from[0];
  const station = near ? near.to[0] + GAP : Math.max(wanted.from[0], home.from[0]);
  const axis = (home.from[2] + home.to[2]) / 2;
  const radius = Math.min(half, (share * (home.to[2] - home.from[2])) / 2);
  const fits = wanted.from[2] > home.from[2] && wanted.to[2] < home.to[2];
  const height = half > 0 ? axis : near ? (near.from[2] + near.to[2]) / 2 : fits ? wanted.from[2] : axis;
  return { from: [station, -radius, height - radius], to: [station + long, radius, height + radius] };
}
