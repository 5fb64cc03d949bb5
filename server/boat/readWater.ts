import type { WaterEntry } from '../../schema/water.ts';
import type { Finding } from '../findings/finding.ts';
import type { Water } from './boat.ts';
import { valueFault } from './fault.ts';
import { freshWaterDensity, seawaterDensity } from './waterDensity.ts';

const USUAL_TEMPERATURE = 20;
/** Open sea, g/kg. */
const SEA_SALINITY = 35;

/** The water's density from what the file says of it; fresh at 20 °C when it says nothing. */
export function readWater(entry: WaterEntry | null, findings: Finding[]): Water {
  const temperature = entry?.temperature?.value ?? USUAL_TEMPERATURE;
  const degrees = `${Number(temperature.toFixed(1))} °C`;
  if (entry?.density) {
    return { density: entry.density.value, words: `${Number(entry.density.value.toFixed(1))} kg/m³ as given` };
  }
  const salinity = entry?.salinity?.value ?? (entry?.kind === 'sea' ? SEA_SALINITY : 0);
  const density = salinity > 0 ? seawaterDensity(temperature, salinity) : freshWaterDensity(temperature);
  const kind = salinity === 0 ? 'fresh' : salinity === SEA_SALINITY ? 'sea' : `${salinity} g/kg salt`;
  if (density !== null) return { density, words: `${kind}, ${degrees}` };
  const key = temperature < 0 || temperature > 40 ? 'temperature' : 'salinity';
  findings.push(
    valueFault(
      'water-out-of-range',
      ['water', key],
      'Densities are known for water of 0 to 40 °C with 0 to 42 g/kg of salt. Outside that give the density itself, such as “density: 1004 kg/m3”.',
    ),
  );
  return readWater(null, findings);
}
