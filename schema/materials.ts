import { closest } from './closest.ts';
import { lightMaterials } from './handbook/lightMaterials.ts';
import type { Material } from './handbook/material.ts';
import { metals } from './handbook/metals.ts';
import { plastics } from './handbook/plastics.ts';
import { materialsMeant } from './tradeWords.ts';

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
export const findMaterial = (name: string): Material | null =>
  byName.get(fold(name)) ?? byName.get(fold(name.replace(STOCK_FORM, ''))) ?? null;

/** What a material is bought as: brass rod is brass. */
const STOCK_FORM =
  /(?<=\s)(?:rod|bar|tube|tubing|sheet|strip|plate|wire|pipe|block|profile|flat|foil|section|angle|board|slab)s?$/i;

/** The names that the program writes, metals first. */
export const materialNames = (): readonly string[] => materials.map(({ key }) => key);

/** The names most likely meant by one that the handbook does not have, the likeliest first: `fibreglas` -> `fibreglass`. */
export function nearestMaterials(name: string): readonly string[] {
  const meant = materialsMeant(name);
  if (meant.length > 0) return meant;
  const near = byName.get(closest(fold(name), [...byName.keys()]) ?? '');
  return near ? [near.key] : [];
}
