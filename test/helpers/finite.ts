/**
 * Places in a value where a number is NaN or infinite: no stage may hand one on. `except` names keys that may hold
 * infinity where it means something.
 */
export function strayNumbers(value: unknown, except: ReadonlySet<string> = new Set()): readonly string[] {
  const found: string[] = [];
  const seen = new Set<object>();
  const look = (at: unknown, path: string, key: string): void => {
    if (typeof at === 'number' && !Number.isFinite(at) && !(except.has(key) && !Number.isNaN(at)))
      found.push(`${path} = ${at}`);
    if (typeof at !== 'object' || at === null || seen.has(at)) return;
    seen.add(at);
    if (ArrayBuffer.isView(at)) {
      if ([...(at as Float64Array)].some(Number.isNaN)) found.push(`${path} holds NaN`);
      return;
    }
    for (const [name, inner] of at instanceof Map ? at : Object.entries(at))
      look(inner, `${path}.${name}`, String(name));
  };
  look(value, '', '');
  return found;
}

/** What a machine writes where a person's word is missing. */
export const MACHINE_WORDS = /\b(?:NaN|Infinity|undefined|null|\[object )|\u221e/;
