import { findMaterial, type Material, nearestMaterials } from '../../../schema/materials.ts';
import type { Path } from '../../../schema/path.ts';
import type { Quantity } from '../../../schema/quantity.ts';
import type { Finding } from '../findings/finding.ts';
import { changeTo, guessedUnit, valueFault } from './fault.ts';

/** What of an entry tells its density. */
export interface OfMaterial {
  readonly material?: string | undefined;
  readonly density?: Quantity | undefined;
}

/** Densities of the stock on the bench, kg/m3; null where the file gives none. */
export interface StockDensities {
  readonly lead: number | null;
  readonly foam: number | null;
  /** Of loose lead shot as it is poured. */
  readonly shot: number | null;
}

export interface KnownDensity {
  /** kg/m3; null when nothing tells it. */
  readonly density: number | null;
  /** The handbook's entry; null when the material is not named or not known. */
  readonly material: Material | null;
  /** Of what is poured, by the room that it takes up, kg/m3: `density` is then of the metal alone. Null for all else. */
  readonly poured: number | null;
}

/** The entry's own density (of loose shot: as poured), else the stock's (lead, foam), else the handbook's for its material. */
export function densityOf(entry: OfMaterial, stock: StockDensities, path: Path, findings: Finding[]): KnownDensity {
  const material = entry.material === undefined ? null : findMaterial(entry.material);
  if (entry.material !== undefined && material === null && entry.density === undefined) {
    const near = nearestMaterials(entry.material);
    const words = near
      .map(name => `“${name}”`)
      .join(', ')
      .replace(/, ([^,]*)$/, ' or $1');
    const hint = words ? `Did you mean ${words}?` : 'Give its density, such as “density: 1400 kg/m3”.';
    findings.push(
      valueFault(
        'unknown-material',
        [...path, 'material'],
        `The handbook has no material “${entry.material}”. ${hint}`,
        { mends: near.flatMap(name => changeTo([...path, 'material'], name)) },
      ),
    );
  }
  if (entry.density) findings.push(...guessedUnit(entry.density, [...path, 'density']));
  if (material?.poured) {
    const { density, poured } = material;
    return { density, material, poured: entry.density?.value ?? stock.shot ?? poured.density };
  }
  if (entry.density) return { density: entry.density.value, material, poured: null };
  const ofStock = material?.key === 'lead' ? stock.lead : material?.key === 'foam' ? stock.foam : null;
  if (ofStock !== null) return { density: ofStock, material, poured: null };
  return { density: material?.density ?? null, material, poured: null };
}
