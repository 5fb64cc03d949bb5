import { closest } from './closest.ts';
import { lightMaterials } from './handbook/lightMaterials.ts';
import type { Material } from './handbook/material.ts';
import { metals } from './handbook/metals.ts';
import { plastics } from './handbook/plastics.ts';

export type { Material } from './handbook/material.ts';

/** The materials handbook. */
export const materials: readonly Material[] = [...metals, ...plastics, ...lightMaterials];

const byName: ReadonlyMap<string, Material> = new Map(
  materials.flatMap(material => [material.key, ...material.names].map(name => [fold(name), material] as const)),
);

function fold(name: string): string {
  return name.toLowerCase().replace(/[-_\s]+/g, '');
}

/** The material of that name or alias, whatever its case, hyphens and spaces; null when the handbook has none. */
export const findMaterial = (name: string): Material | null => byName.get(fold(name)) ?? null;

/** The names that the program writes, metals first. */
export const materialNames = (): readonly string[] => materials.map(({ key }) => key);

/** The name most likely meant by one that the handbook does not have: `fibreglas` -> `fibreglass`. */
export function nearestMaterial(name: string): string | null {
  const near = closest(fold(name), [...byName.keys()]);
  return near === null ? null : (byName.get(near)?.key ?? null);
}
