import { toSi, unitNamed } from '../../../../schema/units.ts';
import type { Boat, Part } from '../../boat/boat.ts';
import type { BoatSource } from '../../boat/source.ts';
import { assembleBodies, type BodyCache } from '../../bodies/assemble.ts';
import {
  conditionsOf,
  type LoadingCondition,
  type LyingEverywhere,
  submergedOf,
} from '../../conditions/loadingCondition.ts';
import { floatSubmerged } from '../../conditions/submerged.ts';
import { floatSurfaced } from '../../conditions/surfaced.ts';
import type { Figure } from '../../figures/figure.ts';
import { figuredIn } from '../../figures/figured.ts';
import { boxForm } from '../../geometry/form/box.ts';
import { inOthers } from '../room/inOthers.ts';
import type { Move } from '../room/movers.ts';
import { markOf, shifted } from '../room/shift.ts';

/** By how much a figure changes in a condition, SI. */
export interface FigureChange {
  readonly figure: Figure;
  readonly condition: LoadingCondition;
  readonly change: number;
}

/** A boat and how it lies. */
export interface LyingBoat extends LyingEverywhere {
  readonly boat: Boat;
  /** What it was read from, before pieces and moves. */
  readonly source: BoatSource;
}

/**
 * A little more of a part, kg: what a kitchen scale shows, a gram or a tenth of an ounce; of foam, which weighs next to
 * nothing, a millilitre or a tenth of a cubic inch.
 */
function littleOf({ material, mass, volume }: Part, { units, stock }: Boat): number {
  const isImperial = units.mass === 'oz' || units.mass === 'lb';
  const tenth = (unit: string, dimension: 'mass' | 'volume') => toSi(1, unitNamed(unit, dimension)!) / 10;
  if (material !== 'foam') return isImperial ? tenth('oz', 'mass') : 1e-3;
  const density = volume > 0 ? mass / volume : stock.foam.density;
  return density * (isImperial ? tenth('in3', 'volume') : 1e-6);
}

/**
 * What a little more of a part would change, by floating the boat with it: what a gram does to a metacentric
 * height is in none of the linear balances, which hold the surface where it is.
 */
export function effectOfMore(
  part: Part,
  lying: LyingBoat,
  cache: BodyCache,
  figures: readonly Figure[],
): readonly FigureChange[] {
  const { boat } = lying;
  const more = [...boat.payload, moreOf(part, littleOf(part, boat))];
  return changesBetween(lying, lyingWith(more, lying, cache), figures);
}

/** A move a mark of the tape further, and what that changes. */
export interface Further {
  readonly move: Move;
  readonly changes: readonly FigureChange[];
}

/** What moving something a mark of the tape further the same way would change. */
export function effectOfFurther(
  { part, moved, along, across }: Move,
  lying: LyingBoat,
  cache: BodyCache,
  figures: readonly Figure[],
): Further {
  const { boat } = lying;
  const [x, y] = along === 0 ? [0, Math.sign(across)] : [Math.sign(along), 0];
  const step = markOf(part, along === 0 ? 1 : 0, boat.units);
  const further = shifted(moved, x * step, y * step);
  const payload = boat.payload.map(other => (other.name === part.name ? further : other));
  return {
    move: { part: moved, moved: further, along: x * step, across: y * step },
    changes: changesBetween(lying, lyingWith(payload, lying, cache), figures),
  };
}

/** What a part that is aboard changes against the boat without it; figures that either boat has not are left out. */
export function effectOfWhole(
  part: Part,
  lying: LyingBoat,
  cache: BodyCache,
  figures: readonly Figure[],
): readonly FigureChange[] {
  const { boat } = lying;
  const without = boat.payload.filter(other => other !== part);
  return changesBetween(lyingWith(without, lying, cache), lying, figures);
}

function lyingWith(payload: readonly Part[], { boat, source, others }: LyingBoat, cache: BodyCache): LyingBoat {
  const changed = { ...boat, payload };
  const bodies = assembleBodies(changed, cache);
  return {
    boat,
    source,
    surfaced: floatSurfaced(bodies, boat.length),
    submerged: floatSubmerged(bodies, submergedOf(boat).loading),
    others: inOthers({ boat: changed, source, others }, cache),
  };
}

/** So much more of the same in the middle of the part, as broad and deep as the part is. */
function moreOf(part: Part, mass: number): Part {
  const share = mass / part.mass;
  const [x, y, z] = part.centroid;
  const half = [1, 2].map(axis => (part.to[axis]! - part.from[axis]!) / 2) as [number, number];
  const volume = part.volume * share;
  const long = half[0] > 0 && half[1] > 0 ? volume / (4 * half[0] * half[1]) : 0;
  const from = [x - long / 2, y - half[0], z - half[1]] as const;
  const to = [x + long / 2, y + half[0], z + half[1]] as const;
  // A name of its own: things aboard are told apart by it.
  return { ...part, name: `more of ${part.name}`, mass, form: volume > 0 ? boxForm(from, to) : null, volume, from, to };
}

/** What differs from an aim first, then what is to be enough. */
const changesBetween = (before: LyingBoat, after: LyingBoat, figures: readonly Figure[]): readonly FigureChange[] => {
  const all = (lying: LyingBoat) => conditionsOf(lying).map(inCondition => figuredIn(lying.boat, inCondition, figures));
  const was = all(before);
  const is = all(after);
  return is.flatMap((there, i) =>
    there
      .toSorted((a, b) => Number(a.limit?.binds !== 'within') - Number(b.limit?.binds !== 'within'))
      .flatMap(({ figure, condition, value }): readonly FigureChange[] => {
        const known = figure.effect && was[i]!.find(one => one.figure === figure);
        return known ? [{ figure, condition, change: value - known.value }] : [];
      }),
  );
};
