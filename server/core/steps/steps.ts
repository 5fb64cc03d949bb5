/**
 * Work in steps of a few milliseconds each, so that whoever has it done can leave off between two of them: for a request
 * that was cancelled, or a text that has changed.
 */
export type Steps<T> = Generator<undefined, T, undefined>;

/** All of it at once. */
export function finish<T>(steps: Steps<T>): T {
  // Ends: every work in steps has a bound of its own.
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** Work that is done once, when first asked for, at once or in steps. */
export interface Working<T> {
  /** Does one step; true when all is done. */
  readonly step: () => boolean;
  /** Whether all is done already. */
  readonly isDone: () => boolean;
  /** What comes of it, the rest done at once. */
  readonly all: () => T;
}

/** Work that is not worth dividing. */
export const inOneStep = <T>(make: () => T): Working<T> =>
  // biome-ignore lint/correctness/useYield: There is but one step.
  inSteps(function* () {
    return make();
  });

/** What is there without any work. */
export const allDone = <T>(value: T): Working<T> => ({ step: () => true, isDone: () => true, all: () => value });

/** Makes something once, when it is first asked for. */
export function whenAsked<T>(make: () => T): () => T {
  // Once it is made, nothing that it was made from is held any more.
  let making: (() => T) | null = make;
  let made: T;
  return () => {
    if (making) {
      made = making();
      making = null;
    }
    return made;
  };
}

export function inSteps<T>(begin: () => Steps<T>): Working<T> {
  // Once it is done, nothing that it was made from is held any more.
  let beginning: (() => Steps<T>) | null = begin;
  let steps: Steps<T> | null = null;
  let made: { readonly value: T } | null = null;
  const advance = (): { readonly value: T } | null => {
    if (made) return made;
    steps ??= beginning!();
    beginning = null;
    const step = steps.next();
    if (!step.done) return null;
    steps = null;
    made = { value: step.value };
    return made;
  };
  return {
    step: () => advance() !== null,
    isDone: () => made !== null,
    all: () => {
      // Ends: as above.
      for (;;) {
        const done = advance();
        if (done) return done.value;
      }
    },
  };
}
