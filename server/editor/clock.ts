/** Timers, handed in so that a test can step time. */
export interface Clock {
  setTimeout(run: () => void, milliseconds: number): Timer;
  clearTimeout(timer: Timer): void;
  /** Milliseconds since some moment. */
  now(): number;
}

export type Timer = ReturnType<typeof setTimeout> | number;

/** The time of day. */
export const plainClock: Clock = {
  setTimeout: (run, milliseconds) => setTimeout(run, milliseconds),
  clearTimeout: timer => clearTimeout(timer),
  now: () => performance.now(),
};
