import type { Point2 } from '../geometry/outline/outline.ts';
import { textWidth } from './textWidth.ts';

/** What wants a label; user units. */
export interface Labelled {
  /** Its text: one line, or two for a long name. */
  readonly lines: readonly string[];
  /** Where its leader ends. */
  readonly at: Point2;
  readonly kind: string;
  /** Key of the entry that it names; null for what is proposed. */
  readonly of: string | null;
}

/** A label in its place: its text starts or ends at its pole, an upright line in the rows of labels. */
export interface PlacedLabel extends Labelled {
  readonly pole: number;
  /** Of its line nearest to the boat; 0 is the row nearest of all. */
  readonly row: number;
  readonly anchor: 'start' | 'end';
}

/** Between a text and the next pole. */
const GAP = 8;
/** Between a text and the edge of the picture, with what it stands off its pole. */
const EDGE = 8;
/** Poles nearer to each other than this are moved apart, so that each can be followed. */
const APART = 6;

/**
 * Labels as flags on upright poles: texts in the left half run to the left of their poles, in the right half to the right,
 * and each stands a row further out than every flag that it reaches over. So no text meets another text or pole. `size` is
 * the height of the type; a text too long for its side moves its pole inward until it fits between the edges at 0 and `width`.
 */
export function placeLabels(labels: readonly Labelled[], size: number, width: number): readonly PlacedLabel[] {
  const side = (anchor: 'start' | 'end'): readonly PlacedLabel[] => {
    const poles = labels
      .filter(({ at }) => at[0] < width / 2 === (anchor === 'end'))
      .map(label => {
        const long = widthOf(label, size);
        const pole = anchor === 'end' ? Math.max(label.at[0], long + EDGE) : Math.min(label.at[0], width - long - EDGE);
        return { ...label, anchor, pole, long };
      });
    return stacked(apart(poles, anchor, width / 2));
  };
  return [...side('end'), ...side('start')];
}

/** What is proposed is set bold. */
const widthOf = ({ lines, kind }: Labelled, size: number): number =>
  Math.max(...lines.map(line => textWidth(line, size))) * (kind === 'ghost' ? BOLD : 1);

/** Bold type is so much wider. */
export const BOLD = 1.2;

interface Pole extends Omit<PlacedLabel, 'row'> {
  readonly long: number;
}

/** From the outside in, each pole clear of the one before, and none past the middle; in the order of what they point at. */
function apart(poles: readonly Pole[], anchor: 'start' | 'end', middle: number): readonly Pole[] {
  const inward = anchor === 'end' ? 1 : -1;
  const gap = Math.min(APART, middle / Math.max(1, poles.length));
  let last = Number.NEGATIVE_INFINITY;
  return [...poles]
    .sort((a, b) => inward * (a.at[0] - b.at[0]))
    .map((label, i) => {
      const furthest = inward * middle - (poles.length - i) * gap;
      last = Math.min(Math.max(inward * label.pole, last + gap), furthest);
      return { ...label, pole: inward * last };
    });
}

/** Every label goes a row beyond the ones whose poles or texts it would cross: all of them stand further out. */
function stacked(poles: readonly Pole[]): readonly PlacedLabel[] {
  const placed: PlacedLabel[] = [];
  for (const { long, ...label } of poles) {
    const crossed = placed.filter(other => Math.abs(label.pole - other.pole) < long + GAP);
    placed.push({ ...label, row: Math.max(0, ...crossed.map(({ row, lines }) => row + lines.length)) });
  }
  return placed;
}
