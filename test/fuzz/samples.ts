import { readdirSync, readFileSync } from 'node:fs';

const folder = new URL('../../samples/', import.meta.url);

/** The texts that are edited. */
export const samples: readonly string[] = readdirSync(folder)
  .filter(name => name.endsWith('.boat.yaml'))
  .map(name => readFileSync(new URL(name, folder), 'utf8'));

/** The mesh file that one of them names. */
export const hullBytes: Uint8Array = readFileSync(new URL('guillemot-hull.stl', folder));
