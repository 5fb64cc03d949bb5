import type { Boat } from '../../boat/boat.ts';
import { divesAtAll, type LoadingCondition, SUBMERGED, SURFACED, whereIn } from '../../conditions/loadingCondition.ts';
import { figureById } from '../../figures/allowed.ts';
import { nameIn } from '../../figures/figured.ts';
import type { Slot } from '../room/slots.ts';

/** What a correction sets right: every condition (“both”), or one, by its id. */
export type Scope = 'both' | LoadingCondition['id'];

/** All that is asked of a boat: of one without a tank, on the surface. */
export const scopeOf = (boat: Pick<Boat, 'tanks' | 'limits'>): Scope => (divesAtAll(boat) ? 'both' : SURFACED.id);

/** The surface alone is all that a boat without a tank is trimmed for: there its other conditions afloat belong to it. */
export const isInScope = (condition: LoadingCondition, scope: Scope, boat: Pick<Boat, 'tanks' | 'limits'>): boolean =>
  scope === 'both' ||
  scope === condition.id ||
  (scope === 'surfaced' && !divesAtAll(boat) && whereIn(condition) === 'afloat');

/** What pieces are balanced for: figures of the table, by their ids. */
export type BalancedFigure =
  | 'draft'
  | 'trim'
  | 'heel'
  | 'gm'
  | 'fill'
  | 'reserve'
  | 'bgEffectiveLongitudinal'
  | 'bgEffective';

/** A figure in a condition. */
export interface FigureThere {
  readonly condition: LoadingCondition;
  readonly figure: BalancedFigure;
}

/** Tells rows apart. */
export const keyOf = ({ condition, figure }: FigureThere): string => `${condition.id} ${figure}`;

/** "surfaced trim", "neutral fill". */
export const balanceName = ({ condition, figure }: FigureThere): string => {
  const row = figureById(figure, condition);
  return row ? nameIn(condition, row) : figure;
};

/**
 * One balance that pieces and moves must bring about, linear in each piece's mass and in its moments aft and to starboard.
 * Masses in kg, moments in kg·m, as the row's own unit says.
 */
export interface BalanceRow extends FigureThere {
  readonly measure: 'mass' | 'moment';
  /** The way that moving weight changes it; null where it does not. */
  readonly axis: 'along' | 'across' | null;
  /** What one kilogram does when its middle is at the forward port corner of the slot's room, and what moving it adds. */
  readonly effectOf: (slot: Slot) => Effect;
  readonly wanted: Aim | Band;
}

/** The row of a figure in one of the two conditions that every boat has. */
export const rowOf = (rows: readonly BalanceRow[], where: 'surfaced' | 'submerged', figure: BalancedFigure) =>
  rows.find(row => row.figure === figure && row.condition.id === (where === 'surfaced' ? SURFACED : SUBMERGED).id);

interface Effect {
  /** Per kg at the corner. */
  readonly perMass: number;
  /** Per kg·m aft of the corner, and to starboard of it. */
  readonly perAft: number;
  readonly perStarboard: number;
}

/** A figure to reach, and how far it may be missed either way. */
export interface Aim {
  readonly value: number;
  readonly slack: number;
  /** What it costs to be off by so much, to either side, from the aim outwards; together as long as the slack. */
  readonly off: readonly Stretch[];
}

/** A figure to keep within; infinite ends are open. */
export interface Band {
  readonly least: number;
  readonly most: number;
  /** What it costs to be this near to the least, from the least upwards. */
  readonly near: readonly Stretch[];
}

/** Some way off, in the row's own unit, and what one unit of it costs, g of lead. */
export interface Stretch {
  readonly size: number;
  readonly price: number;
}
