import type { Path } from '../../../schema/path.ts';
import type { WaterEntry } from '../../../schema/water.ts';
import type { Finding } from '../findings/finding.ts';
import { densityText } from '../wording/numbers.ts';
import type { Water } from './boat.ts';
import { guessedUnit, valueFault } from './fault.ts';
import { freshWaterDensity, seawaterDensity, WATER_RANGE } from './waterDensity.ts';

export const USUAL_TEMPERATURE = 20;
/** Open sea, g/kg. */
export const SEA_SALINITY = 35;

/** The water's density from what the file says of it; fresh at 20 °C when it says nothing. */
export function readWater(entry: WaterEntry | null, findings: Finding[], at: Path = ['water']): Water {
  const temperature = entry?.temperature?.value ?? USUAL_TEMPERATURE;
  if (entry?.density) {
    findings.push(...guessedUnit(entry.density, [...at, 'density']));
    const density = entry.density.value;
    return { density, temperature, words: `${densityText(density)} as given` };
  }
  const salinity = entry?.salinity?.value ?? (entry?.kind === 'sea' ? SEA_SALINITY : 0);
  const water = waterOf(salinity, temperature);
  if (water) return water;
  const [coldest, warmest] = WATER_RANGE.temperature;
  const key = temperature < coldest || temperature > warmest ? 'temperature' : 'salinity';
  findings.push(
    valueFault(
      'water-out-of-range',
      [...at, key],
      'Densities are known for water of 0 to 40 °C with 0 to 42 g/kg of salt. Outside that give the density itself, such as “density: 1004 kg/m3”.',
    ),
  );
  return waterOf(0, USUAL_TEMPERATURE)!;
}

/** Fresh water or open sea at a temperature (°C); at 20 °C where the equation of state does not reach. */
export function waterOfKind(kind: 'fresh' | 'sea', temperature: number): Water {
  const salinity = kind === 'sea' ? SEA_SALINITY : 0;
  return waterOf(salinity, temperature) ?? waterOf(salinity, USUAL_TEMPERATURE)!;
}

function waterOf(salinity: number, temperature: number): Water | null {
  const density = salinity > 0 ? seawaterDensity(temperature, salinity) : freshWaterDensity(temperature);
  if (density === null) return null;
  const kind = salinity === 0 ? 'fresh' : salinity === SEA_SALINITY ? 'sea' : `${salinity} g/kg salt`;
  return { density, temperature, words: `${kind}, ${Number(temperature.toFixed(1))} °C` };
}
