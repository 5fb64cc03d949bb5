/** Takes steps one a frame, from the next frame on. */
interface EachFrame {
  take(steps: readonly (() => void)[], onDone: () => void): void;
  /** Takes no more of them; `onDone` is not called. */
  stop(): void;
}

export function eachFrame(): EachFrame {
  let waiting = 0;
  return {
    take(steps, onDone) {
      const left = [...steps, onDone];
      const next = (): void => {
        left.shift()!();
        if (left.length > 0) waiting = requestAnimationFrame(next);
      };
      waiting = requestAnimationFrame(next);
    },
    stop: () => cancelAnimationFrame(waiting),
  };
}

/** Two steps: what the first makes, the second takes. */
export function inTwo<T>(make: () => T, take: (made: T) => void): readonly (() => void)[] {
  let made: T;
  return [
    () => {
      made = make();
    },
    () => take(made),
  ];
}
