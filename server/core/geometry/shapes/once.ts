/** What was made for an object, made the first time that it is asked for. */
export function once<K extends object, T>(made: WeakMap<K, T>, key: K, make: () => T): T {
  const had = made.get(key);
  if (had !== undefined) return had;
  const fresh = make();
  made.set(key, fresh);
  return fresh;
}
