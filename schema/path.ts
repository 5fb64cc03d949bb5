/** A place in the boat file: map keys and list positions from the root, e.g. `['hull', 'tanks', 0, 'kind']`. */
export type Path = readonly (string | number)[];

/** Two paths name the same place. */
export const samePath = (a: Path, b: Path): boolean => a.length === b.length && a.every((step, i) => step === b[i]);

/** `path` is `ancestor` itself or lies inside it. */
export const isInside = (path: Path, ancestor: Path): boolean =>
  path.length >= ancestor.length && ancestor.every((step, i) => step === path[i]);

/** A key to look things up by; unique for a path. */
export const pathKey = (path: Path): string => JSON.stringify(path);
