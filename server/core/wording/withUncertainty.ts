import type { Dimension, FileUnits } from '../../../schema/units.ts';
import { angleText, densityText, lengthText, massText, percentText, volumeText } from './numbers.ts';

/** A figure and one standard uncertainty of it: "61.4 ± 1.1 mm", "0.2° bow up ± 4.7°". Nothing is added for an uncertainty of nothing. */
export function plusMinus(figure: string, uncertainty: string): string {
  if (!/[1-9]/.test(uncertainty)) return figure;
  const [, number, unit] = /^(-?[\d./]+(?: [\d/]+)?) (\S+)$/.exec(figure) ?? [];
  const [, uncertaintyUnit] = /^[\d./]+(?: [\d/]+)? ([^\s,]+)/.exec(uncertainty) ?? [];
  return unit !== undefined && unit === uncertaintyUnit ? `${number} ± ${uncertainty}` : `${figure} ± ${uncertainty}`;
}

/** A figure of any dimension in the file's own units, SI: as in the file, in words. */
export function figureText(value: number, dimension: Dimension, units: FileUnits): string {
  switch (dimension) {
    case 'length':
      return lengthText(value, units);
    case 'mass':
      return massText(value, units);
    case 'volume':
      return volumeText(value, units);
    case 'density':
      return densityText(value);
    case 'fraction':
      return percentText(value);
    case 'angle':
      return angleText(value);
    case 'temperature':
      return `${rounded(value)} °C`;
    case 'salinity':
      return `${rounded(value)} g/kg`;
    case 'pressure':
      return `${rounded(value)} Pa`;
  }
}

/** An uncertainty of a figure, with the two digits that it is good for where its unit's usual ones say more. */
export const sigmaText = (sigma: number, dimension: Dimension, units: FileUnits): string =>
  dimension === 'density' ? `${Number(sigma.toPrecision(2))} kg/m³` : figureText(sigma, dimension, units);

const rounded = (value: number): string => String(Number(value.toPrecision(3)));
