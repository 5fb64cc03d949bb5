/** What pictures are drawn for, so that their type is never smaller than it is meant. User units: on a screen, CSS px. */
export interface Page {
  /** Of the boat from the side and from above. */
  readonly wide: number;
  /** Of a body section and of a plot. */
  readonly narrow: number;
  /** The most that the boat itself may be tall in a picture. */
  readonly tall: number;
  /** What is named in the pictures: what matters, or everything. */
  readonly names: Names;
}

export type Names = 'few' | 'all';

const TALL = 380;

/** The sheet on a desk. */
export const DESK: Page = { wide: 880, narrow: 430, tall: TALL, names: 'all' };

/** No page is wider than this; a wish that is no number is the desk's. */
const WIDEST = 4000;
/** Narrower than this no picture is drawn: a phone held upright has 320 px. */
const LEAST = 300;
/** Widths are stepped, so that a page that is being pulled wider is not drawn anew at each pixel. */
const STEP = 20;
/** From here on, sections and plots stand in pairs; and from here on, everything does. */
const PAIRS = 700;
const FOUR = 1400;
/** Wider than this a plot tells no more. */
const WIDEST_PLOT = 700;

/** The page for a room this wide, px. */
export function pageFor(asked: number, names: Names): Page {
  const width = Number.isFinite(asked) ? Math.min(asked, WIDEST) : DESK.wide;
  const stepped = (share: number): number => Math.max(LEAST, Math.floor((width * share) / STEP) * STEP);
  const wide = stepped(width >= FOUR ? 1 / 2 : 1);
  const narrow = Math.min(WIDEST_PLOT, stepped(width >= FOUR ? 1 / 4 : width >= PAIRS ? 1 / 2 : 1));
  return { wide, narrow, tall: TALL, names };
}
