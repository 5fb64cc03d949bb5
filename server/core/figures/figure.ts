import type { Boat } from '../boat/boat.ts';
import type { FloatingState } from '../conditions/float.ts';
import type { Where } from '../conditions/loadingCondition.ts';
import type { FindingCode } from '../findings/catalogue/catalogue.ts';
import type { Kind } from './kind.ts';
import type { Limiting } from './limit.ts';

/**
 * A figure of a floating boat: all that any report, hover, judge, plot or correction needs to know of it stands in its one row
 * of the table.
 */
export interface Figure {
  /** Its key in the report for machines, within the condition. */
  readonly id: string;
  /** Where it means something. */
  readonly where: Where;
  readonly kind: Kind;
  /** What it is of the boat as it lies, SI: what is shown, and what its uncertainty is figured of. Null where it cannot be had. */
  readonly of: (floating: FloatingState, boat: Boat) => number | null;
  /** Of a boat that does not stay level under water: where that runs to, or held level. */
  readonly readOff: 'rest' | 'level';

  /** In a sentence: "metacentric height". */
  readonly words: string;
  /**
   * The same as what an input leaves uncertain, where the words alone do not read well: "height of B above G". Given too for a
   * figure without a limit of which that is worth telling.
   */
  readonly noun?: string;
  /** The built-in condition goes without saying: there is no other figure of that name. */
  readonly tellsCondition?: boolean;
  /** What its row is called in tables for people; rows of one heading stand in one. Null: only for machines. */
  readonly heading: string | null;
  /** False where the report for machines has its parts instead. */
  readonly isForMachines?: false;

  /** What it is held against, SI; null where the boat has no such mark, so that no limit binds. Nothing unless given. */
  readonly aim?: (boat: Boat) => number | null;
  /** The difference from its aim in words of its own, beside the figure itself; else the figure is said as that difference. */
  readonly difference?: {
    readonly ways: readonly [more: string, less: string];
    readonly none: string;
    /** After the limit: "from the painted waterline". */
    readonly from: string;
  };
  /** What stands in brackets after it in the report. */
  readonly beside?: (value: number, boat: Boat, floating: FloatingState) => string;

  readonly limit?: Limiting;
  /** The finding that it raises outside its limit. */
  readonly finding?: FindingCode;
  /** Stiffness: where it is not well above nothing, angles that hang on it may be anything. */
  readonly holdsRest?: true;
  readonly hangsOnRest?: true;
  /** It is among the few that a builder trims to: the sheet shows what makes their uncertainty. */
  readonly isTrimmedTo?: true;
  /** What a part does to it is told, in these words for more and less of it; the kind's own unless given. */
  readonly effect?: readonly [more: string, less: string];
}
