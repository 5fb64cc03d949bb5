import highsLoader from 'highs';
import type { Bay, Boat, Part } from '../../server/core/boat/boat.ts';
import type { Vec3 } from '../../server/core/geometry/form/vector.ts';
import { type Floater, floatByCode, isInTrim, type Miss, missesOf } from './figures.ts';
import { DENSITY, moved, pointPiece } from './reshape.ts';

/*
 * Whether a boat can be trimmed by somebody who knows how it really is: by a linear programme over what its bays take
 * and what can be slid, solved by HiGHS and drawn up anew where it ends. Nothing of the corrections under test is asked.
 */

const highs = await highsLoader();

/** A bay may be filled to this share of its length; then the middle of a piece can lie so far from the bay's own. */
const FILLED = 0.4;
const ROUNDS = 4;
/** For slopes: this share of the most. */
const PROBE = 0.05;

/** Something that can be done to the boat, in amounts from nothing to `most`: kg into a corner of a bay, or m along. */
interface Lever {
  /** What shares its room with it: all of it together comes to `most`. */
  readonly room: string;
  readonly most: number;
  readonly done: (boat: Boat, amount: number) => Boat;
}

/** With what its bays take and a little sliding of what is heavy, done without error. */
export function canBeTrimmed(boat: Boat, floater: Floater): boolean {
  const levers = [...boat.bays.flatMap(bay => leversOf(bay, boat)), ...boat.payload.flatMap(slidesOf)];
  const at = (amounts: readonly number[]): Boat =>
    levers.reduce((sum, { done }, i) => (amounts[i]! > 0 ? done(sum, amounts[i]!) : sum), boat);
  let amounts: readonly number[] = levers.map(() => 0);
  for (let round = 0; round <= ROUNDS; round++) {
    if (isInTrim(missesOf(floater(at(amounts)), boat))) return true;
    const next = better(levers, amounts, tried => missesOf(floatByCode(at(tried)), boat));
    if (!next) return false;
    amounts = next;
  }
  return false;
}

function leversOf({ name, takes, inside, from, to }: Bay, { stock }: Boat): readonly Lever[] {
  const [breadth, depth] = stock[takes].strip!;
  const length = to[0] - from[0];
  const most = FILLED * length * breadth * depth * DENSITY[takes];
  const height = takes === 'lead' ? from[2] + depth / 2 : to[2] - depth / 2;
  const reach = ((1 - FILLED) / 2) * length;
  const aside = (to[1] - from[1] - breadth) / 2;
  return [-1, 1].flatMap(ends =>
    [-1, 1].map(sides => {
      const centre: Vec3 = [(from[0] + to[0]) / 2 + ends * reach, (from[1] + to[1]) / 2 + sides * aside, height];
      const done = (boat: Boat, mass: number): Boat => ({
        ...boat,
        payload: [...boat.payload, pointPiece({ material: takes, mass, inside }, centre)],
      });
      return { room: name, most, done };
    }),
  );
}

/** So far the battery and the keel lead can be slid along and athwart, m. */
const SLIDES: readonly Vec3[] = [
  [0.02, 0, 0],
  [-0.02, 0, 0],
  [0, 0.005, 0],
  [0, -0.005, 0],
];

function slidesOf({ name }: Part): readonly Lever[] {
  if (name !== 'battery' && name !== 'keel lead') return [];
  return SLIDES.map((by, i) => ({
    room: `${name} ${i}`,
    most: 1,
    done: (boat, share) => ({
      ...boat,
      payload: boat.payload.map(part =>
        part.name === name ? moved(part, [share * by[0], share * by[1], share * by[2]]) : part,
      ),
    }),
  }));
}

/** The amounts that bring the greatest miss down the furthest, along straight lines; null where there are none. */
function better(
  levers: readonly Lever[],
  amounts: readonly number[],
  missesWith: (amounts: readonly number[]) => readonly Miss[],
): readonly number[] | null {
  const now = missesWith(amounts);
  const shifted = levers.map(({ most }, k) =>
    missesWith(amounts.map((amount, i) => (i === k ? amount + PROBE * most : amount))),
  );
  const rows = now.flatMap(({ figure, by }) => {
    const slopes = shifted.map(misses => (misses.find(miss => miss.figure === figure)?.by ?? Number.NaN) - by);
    if (slopes.some(Number.isNaN)) return [];
    // Amounts are counted in probes.
    const here = amounts.reduce((sum, amount, k) => sum + (slopes[k]! * amount) / (PROBE * levers[k]!.most), 0);
    return [{ slopes, rest: by - here }];
  });
  const sum = (factors: readonly number[]): string =>
    factors.map((factor, k) => `${factor < 0 ? '-' : '+'} ${Math.abs(factor).toFixed(9)} m${k}`).join(' ');
  const rooms = [...new Set(levers.map(({ room }) => room))];
  const full = rooms.map(each => sum(levers.map(({ room }) => (room === each ? PROBE : 0))));
  const text = [
    'Minimize',
    ` obj: t ${sum(levers.map(() => 1e-4))}`,
    'Subject To',
    ...rows.flatMap(({ slopes, rest }, i) => [
      ` over${i}: ${sum(slopes)} - t <= ${-rest}`,
      ` under${i}: ${sum(slopes)} + t >= ${-rest}`,
    ]),
    ...full.map((words, i) => ` room${i}: ${words} <= 1`),
    'End',
  ].join('\n');
  const solved = highs.solve(text);
  if (solved.Status !== 'Optimal') return null;
  return levers.map(({ most }, k) => (solved.Columns[`m${k}`] as { Primal: number }).Primal * PROBE * most);
}
