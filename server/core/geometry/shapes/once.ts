import type { Steps } from '../../steps/steps.ts';

/** What was made for an object, made the first time that it is asked for. */
export function once<K extends object, T>(made: WeakMap<K, T>, key: K, make: () => T): T {
  const had = made.get(key);
  if (had !== undefined) return had;
  const fresh = make();
  made.set(key, fresh);
  return fresh;
}

/** The same in steps. */
export function* onceInSteps<K extends object, T>(made: WeakMap<K, T>, key: K, make: () => Steps<T>): Steps<T> {
  const had = made.get(key);
  if (had !== undefined) return had;
  const fresh = yield* make();
  // Meanwhile it may have been asked for at once: it stays one and the same.
  return once(made, key, () => fresh);
}

/** Keeps something by its key, and of all that is kept so the last ones alone. */
export function keepLast<K, T>(kept: Map<K, T>, key: K, value: T, most: number): void {
  kept.delete(key);
  kept.set(key, value);
  if (kept.size > most) kept.delete(kept.keys().next().value!);
}
