import type { InWaterEntry } from '../../../schema/inWater.ts';
import type { Quantity } from '../../../schema/quantity.ts';
import { usualUncertainties } from '../../../schema/usualUncertainties.ts';
import type { WaterEntry } from '../../../schema/water.ts';
import { densityText, massText, volumeText } from '../wording/numbers.ts';
import { plusMinus, sigmaText } from '../wording/withUncertainty.ts';
import type { KnownDensity } from './density.ts';
import { formVolumeSigma } from './formUncertainty.ts';
import { APART } from './measuredTwice.ts';
import type { Placed, PlacedEntry } from './placed.ts';
import { type Setting, tell } from './readingContext.ts';
import { readWater, SEA_SALINITY, USUAL_TEMPERATURE } from './readWater.ts';

/** What two weighings tell of a thing. */
export interface WeighedInWater {
  /** m3, and one standard uncertainty of it. */
  readonly volume: number;
  readonly sigma: number;
  /** Of the material, kg/m3, and one standard uncertainty of it. */
  readonly density: number;
  readonly densitySigma: number;
  /** For people. */
  readonly words: string;
}

/** What of an entry was weighed. */
interface Weighings {
  readonly name: string;
  readonly mass?: Quantity | undefined;
  readonly inWater?: InWaterEntry | undefined;
}

/**
 * Hydrostatic weighing: a thing of mass m and volume V weighs m - ρV under water of density ρ (Archimedes), so that
 * V = (m - w)/ρ and its own density is ρ·m/(m - w) (R. Nave, HyperPhysics, “Archimedes’ Principle”; seen). What the air bears
 * is left out of both, 1.2 g of a litre: the weight under water, which the boat feels, comes out exactly as it was read.
 *
 * Uncertainties by GUM 5.1.2: u(V)² = (u(m)² + u(w)² + (V·u(ρ))²)/ρ²; in the density m stands above and below.
 */
export function weighedInWater({ name, mass, inWater }: Weighings, setting: Setting): WeighedInWater | null {
  if (!inWater) return null;
  const { reads } = inWater;
  const { units } = setting.around;
  if (!mass) {
    return tell(
      setting,
      'in-water-mass',
      ['inWater'],
      `Its weight in water tells the volume of “${name}” only with its weight in air: give its “mass” too.`,
      { severity: 'warning' },
    );
  }
  const lost = mass.value - reads.value;
  if (!(lost > LEAST_LOST)) {
    return tell(
      setting,
      'in-water-impossible',
      ['inWater'],
      `Nothing weighs as much in water (${massText(reads.value, units)}) as in air (${massText(mass.value, units)}): water buoys up a part of it. Check both; of what floats the weight in water is less than nothing, such as -35 g.`,
    );
  }
  const { density: water, words } = readWater(inWater.water ?? null, setting.findings, [
    ...setting.path,
    'inWater',
    'water',
  ]);
  const waterSigma = waterOfWeighingSigma(inWater.water);
  const [inAir, under] = [
    mass.sigma ?? usualUncertainties.mass.of(mass.value),
    reads.sigma ?? usualUncertainties.inWater.of(reads.value),
  ];
  const volume = lost / water;
  const sigma = Math.hypot(inAir, under, volume * waterSigma) / water;
  const density = mass.value / volume;
  const densitySigma =
    density *
    Math.hypot((inAir * reads.value) / (Math.max(mass.value, LEAST_LOST) * lost), under / lost, waterSigma / water);
  const told = plusMinus(volumeText(volume, units), sigmaText(sigma, 'volume', units));
  return {
    volume,
    sigma,
    density,
    densitySigma,
    words: `by its weight in water (${words}) ${told}, so ${plusMinus(densityText(density), sigmaText(densitySigma, 'density', units))}`,
  };
}

/** Less than a milligram lost is nothing weighed, kg. */
const LEAST_LOST = 1e-6;

/** Uncertainty of the density of that water, kg/m3. */
export function waterOfWeighingSigma(water: WaterEntry | undefined): number {
  if (water?.density) return water.density.sigma ?? usualUncertainties.waterDensity.of(water.density.value);
  const given = water?.temperature;
  const celsius = given?.value ?? USUAL_TEMPERATURE;
  const warm = given?.sigma ?? (given ? usualUncertainties.temperature : usualUncertainties.temperatureNotGiven).of(0);
  const salt = water?.salinity?.value ?? (water?.kind === 'sea' ? SEA_SALINITY : 0);
  const salty = water?.salinity?.sigma ?? usualUncertainties.salinity.of(salt);
  const at = (temperature: number, salinity: number) =>
    readWater({ temperature: exact(temperature), salinity: exact(salinity) }, []).density;
  const byWarmth = (at(celsius + warm, salt) - at(celsius - warm, salt)) / 2;
  const bySalt = salty > 0 ? at(celsius, salt + salty) - at(celsius, salt) : 0;
  return Math.hypot(byWarmth, bySalt);
}

const exact = (value: number): Quantity => ({ value, sigma: null, unit: null });

/** Holds what was weighed in water against the form, where sizes give it, and against the material. */
export function checkWeighedInWater(
  entry: PlacedEntry & { readonly name: string; readonly density?: Quantity | undefined },
  weighed: WeighedInWater,
  { placed, volume: byForm, known }: { placed: Placed; volume: number | null; known: KnownDensity },
  setting: Setting,
): void {
  const { units } = setting.around;
  if (byForm !== null && placed.measured) {
    const formSigma = formVolumeSigma(entry, placed, byForm);
    if (Math.abs(byForm - weighed.volume) > APART * Math.hypot(formSigma, weighed.sigma)) {
      tell(
        setting,
        'in-water-form',
        ['inWater'],
        `By its weight in water “${entry.name}” is ${plusMinus(volumeText(weighed.volume, units), sigmaText(weighed.sigma, 'volume', units))}, by its form ${plusMinus(volumeText(byForm, units), sigmaText(formSigma, 'volume', units))}: further apart than both leave open. The weight in water counts. Check the sizes; and that no bubble clung to it.`,
        { severity: 'warning' },
      );
    }
  }
  const [least, most] = entry.density ? [entry.density.value, entry.density.value] : (known.material?.range ?? []);
  if (least === undefined || most === undefined) return;
  const own = entry.density ? (entry.density.sigma ?? usualUncertainties.density.of(entry.density.value)) : 0;
  const off = Math.max(least - weighed.density, weighed.density - most);
  if (off <= APART * Math.hypot(weighed.densitySigma, own)) return;
  const expected = entry.density
    ? `the file gives ${densityText(least)}`
    : `${known.material!.key} is ${least} to ${densityText(most)}`;
  tell(
    setting,
    'in-water-material',
    ['inWater'],
    `Weighed in air and in water “${entry.name}” is ${plusMinus(densityText(weighed.density), sigmaText(weighed.densitySigma, 'density', units))}; ${expected}. Check both weights, the material, and that nothing in it holds air.`,
    { severity: 'warning' },
  );
}
