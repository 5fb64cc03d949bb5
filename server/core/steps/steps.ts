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

/**
 * Tells when to leave off in work of many small things: adds up what each takes, and is true once it comes to a step.
 * `step` is in the same measure, one that grows with the time but is none, so that steps are the same on every machine.
 */
export function pacer(step: number): (work: number) => boolean {
  let done = 0;
  return work => {
    done += work;
    if (done < step) return false;
    done = 0;
    return true;
  };
}

/** Something done to each of so many, `most` of them in a step: `each` does those of a stretch, the end left out. */
export function* inStretches(count: number, most: number, each: (from: number, to: number) => void): Steps<void> {
  for (let from = 0; from < count; from += most) {
    if (from > 0) yield;
    each(from, Math.min(count, from + most));
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

/** What comes of other work, as steps of this. */
export function* through<T>(work: Working<T>): Steps<T> {
  // Ends: a step is a stretch of work, and the work ends.
  while (!work.step()) yield;
  return work.all();
}

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
