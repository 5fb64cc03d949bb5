/** Steps of long work are done together for so long, ms: a turn through all that waits takes a millisecond by itself. */
const TURN = 8;
/** And never more than so many. */
const MOST_STEPS = 4;

/** Some steps of long work; true when all is done. `most`: so many at most, where others shall come in between. */
export function takeTurn(step: () => boolean, now: () => number, most = MOST_STEPS): boolean {
  const until = now() + TURN;
  for (let taken = 0; taken < most; taken += 1) {
    if (step()) return true;
    if (now() >= until) return false;
  }
  return false;
}
