/** Steps of long work are done together for so long, ms: a turn through all that waits takes a millisecond by itself. */
const TURN = 8;
/** And never more than so many. */
const MOST_STEPS = 4;
/** What somebody waits for, ms. */
const LONG_TURN = 6;

/** Some steps of long work; true when all is done. */
export const takeTurn = (step: () => boolean, now: () => number): boolean => stepsFor(step, now, TURN, MOST_STEPS);

/** The same of what somebody waits for: most of it is done in one turn. */
export const takeLongTurn = (step: () => boolean, now: () => number): boolean =>
  stepsFor(step, now, LONG_TURN, Number.POSITIVE_INFINITY);

function stepsFor(step: () => boolean, now: () => number, milliseconds: number, most: number): boolean {
  const until = now() + milliseconds;
  for (let taken = 0; taken < most; taken += 1) {
    if (step()) return true;
    if (now() >= until) return false;
  }
  return false;
}
