/** Time, handed in so that a test can step it. */
export interface Clock {
  /** Runs something later, ms; with 0 as soon as what has arrived is taken in. */
  after(milliseconds: number, run: () => void): Stop;
  /** Milliseconds since some moment. */
  now(): number;
}

/** What was to run does not. */
export type Stop = () => void;

/** The time of day. */
export const plainClock: Clock = {
  after(milliseconds, run) {
    if (milliseconds === 0 && typeof setImmediate === 'function') {
      // A timer waits for a millisecond at least. Before the second of two turns all messages are read that are there by then.
      let immediate = setImmediate(() => {
        immediate = setImmediate(run);
      });
      return () => clearImmediate(immediate);
    }
    const timer = setTimeout(run, milliseconds);
    return () => clearTimeout(timer);
  },
  now: () => performance.now(),
};
