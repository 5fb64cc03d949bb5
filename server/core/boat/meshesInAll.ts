import { isMap } from '../../../schema/fields.ts';
import type { Path } from '../../../schema/path.ts';
import { normalName } from '../meshFiles/fileName.ts';
import { type MeshLookup, MOST_TRIANGLES_IN_ALL, tooManyInAll } from '../meshFiles/meshFile.ts';
import type { Syntax } from '../text/reading/syntax.ts';
import { entriesOf } from '../text/reading/values.ts';

/** Lists in whose entries meshes may stand. */
const LISTS: readonly Path[] = [
  ['hull', 'shells'],
  ['hull', 'compartments'],
  ['hull', 'tanks'],
  ['payload'],
  ['conditions'],
  ['trials'],
];

/** Mesh files as they are looked up, but none where all that a boat names would together be more than can be held. */
export function meshesInAll(syntax: Syntax, meshes: MeshLookup): MeshLookup {
  let isTooMuch: boolean | null = null;
  return name => {
    const file = meshes(name);
    if (file?.status !== 'loaded') return file;
    isTooMuch ??= trianglesInAll(syntax, meshes) > MOST_TRIANGLES_IN_ALL;
    return isTooMuch ? tooManyInAll : file;
  };
}

/** Triangles of all meshes that are there, each as often as the boat has it. */
function trianglesInAll(syntax: Syntax, meshes: MeshLookup): number {
  let sum = 0;
  for (const [name, times] of timesNamed(syntax)) {
    const file = meshes(name);
    if (file?.status === 'loaded') sum += times * file.mesh.faults.triangles;
  }
  return sum;
}

function timesNamed(syntax: Syntax): ReadonlyMap<string, number> {
  const named = new Map<string, number>();
  const look = (value: unknown, times: number): void => {
    if (Array.isArray(value)) for (const each of value) look(each, times);
    if (!isMap(value)) return;
    const copies = times * copiesOf(value);
    const { mesh } = value;
    if (isMap(mesh) && typeof mesh.file === 'string') {
      const file = normalName(mesh.file);
      if (file.ok) named.set(file.name, (named.get(file.name) ?? 0) + copies);
    }
    for (const inner of Object.values(value)) if (typeof inner === 'object') look(inner, copies);
  };
  for (const list of LISTS) for (const { value } of entriesOf(syntax, list)) look(value, 1);
  return named;
}

/** A pair and a row are as many as there are. */
const copiesOf = ({ count, sides }: Readonly<Record<string, unknown>>): number =>
  (typeof count === 'number' && count > 1 ? count : 1) * (sides === 'both' ? 2 : 1);
