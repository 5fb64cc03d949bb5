import { toSi, unitNamed } from '../../../../schema/units.ts';
import type { Boat, Part } from '../../boat/boat.ts';
import { assembleBodies, type BodyCache } from '../../bodies/assemble.ts';
import { floatSubmerged, type Submerged } from '../../conditions/submerged.ts';
import { floatSurfaced, type Surfaced } from '../../conditions/surfaced.ts';
import { boxForm } from '../../geometry/form/box.ts';
import type { RowName } from './program.ts';

/** By how much the figure of a balance changes: m, rad or a fraction. */
export interface FigureChange {
  readonly name: RowName;
  readonly change: number;
}

/** A boat and how it lies. */
export interface Lying {
  readonly boat: Boat;
  readonly surfaced: Surfaced;
  readonly submerged: Submerged;
}

/**
 * A little more of a part, kg: what a kitchen scale shows, a gram or a tenth of an ounce; of foam, which weighs next to
 * nothing, a millilitre or a tenth of a cubic inch.
 */
export function littleOf({ material, mass, volume }: Part, { units, stock }: Boat): number {
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
export function effectOfMore(part: Part, lying: Lying, cache: BodyCache): readonly FigureChange[] {
  const { boat } = lying;
  return changesBetween(lying, afloatWith([...boat.payload, moreOf(part, littleOf(part, boat))], boat, cache));
}

/** What a part that is aboard changes against the boat without it; figures that either boat has not are left out. */
export function effectOfWhole(part: Part, lying: Lying, cache: BodyCache): readonly FigureChange[] {
  const { boat } = lying;
  const without = boat.payload.filter(other => other !== part);
  return changesBetween(afloatWith(without, boat, cache), lying);
}

function afloatWith(payload: readonly Part[], boat: Boat, cache: BodyCache): Omit<Lying, 'boat'> {
  const bodies = assembleBodies({ ...boat, payload }, cache);
  return { surfaced: floatSurfaced(bodies, boat.length), submerged: floatSubmerged(bodies) };
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
  return { ...part, mass, form: volume > 0 ? boxForm(from, to) : null, volume, from, to };
}

const FIGURES: readonly RowName[] = [
  'surfaced draft',
  'surfaced trim',
  'surfaced heel',
  'surfaced metacentric height',
  'submerged trim',
  'submerged heel',
  'neutral fill',
  'submerged stiffness in trim',
  'submerged stiffness in heel',
];

const changesBetween = (before: Omit<Lying, 'boat'>, after: Omit<Lying, 'boat'>): readonly FigureChange[] =>
  FIGURES.flatMap(name => {
    const [was, is] = [figureOf(name, before), figureOf(name, after)];
    return was === null || is === null ? [] : [{ name, change: is - was }];
  });

/** The figure that a balance is about; null where the boat has none. */
function figureOf(name: RowName, { surfaced, submerged }: Omit<Lying, 'boat'>): number | null {
  const afloat = surfaced.status === 'afloat' ? surfaced : null;
  const neutral = submerged.status === 'neutral' ? submerged : null;
  switch (name) {
    case 'surfaced draft':
      return afloat?.attitude.draft ?? null;
    case 'surfaced trim':
      return afloat?.attitude.trim ?? null;
    case 'surfaced heel':
      return afloat?.attitude.heel ?? null;
    case 'surfaced metacentric height':
      return afloat?.gm ?? null;
    case 'submerged trim':
      return neutral?.trim ?? null;
    case 'submerged heel':
      return neutral?.heel ?? null;
    case 'neutral fill':
      return neutral?.fill ?? null;
    case 'submerged stiffness in trim':
      return neutral?.bgEffectiveLongitudinal ?? null;
    case 'submerged stiffness in heel':
      return neutral?.bgEffective ?? null;
  }
}
