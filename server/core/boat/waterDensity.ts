/**
 * Density of water at one atmosphere by the international equation of state of seawater 1980 (UNESCO Technical Papers
 * in Marine Science 36 and 44; Millero & Poisson, Deep-Sea Research 28A (1981) 625-629). A model dives a metre or two:
 * what pressure adds there (0.005 kg/m3 a metre) is far below what a thermometer's error does.
 */

/** Temperatures, °C, and practical salinities, g/kg, for which the equation was fitted. */
export const WATER_RANGE = { temperature: [0, 40], salinity: [0, 42] } as const;

/** kg/m3 of fresh water at a temperature in °C (ITS-90); null outside 0 to 40 °C. */
export const freshWaterDensity = (celsius: number): number | null => seawaterDensity(celsius, 0);

/**
 * kg/m3 of water with `salinity` grams of sea salt a kilogram (practical salinity) at a temperature in °C (ITS-90);
 * null outside 0 to 40 °C and 0 to 42 g/kg.
 */
export function seawaterDensity(celsius: number, salinity: number): number | null {
  const [coldest, warmest] = WATER_RANGE.temperature;
  const [freshest, saltiest] = WATER_RANGE.salinity;
  const isKnown = celsius >= coldest && celsius <= warmest && salinity >= freshest && salinity <= saltiest;
  return isKnown ? eos80(onIpts68(celsius), salinity) : null;
}

/** The equation is written in the older temperature scale; thermometers today read ITS-90. */
const onIpts68 = (t90: number): number => 1.00024 * t90;

/** EOS-80 at p = 0: density of pure water, and what salt adds in powers 1, 3/2 and 2 of salinity. */
export function eos80(t68: number, salinity: number): number {
  const pure = polynomial([999.842594, 6.793952e-2, -9.09529e-3, 1.001685e-4, -1.120083e-6, 6.536332e-9], t68);
  const a = polynomial([8.24493e-1, -4.0899e-3, 7.6438e-5, -8.2467e-7, 5.3875e-9], t68);
  const b = polynomial([-5.72466e-3, 1.0227e-4, -1.6546e-6], t68);
  const c = 4.8314e-4;
  return pure + a * salinity + b * salinity ** 1.5 + c * salinity ** 2;
}

/** Coefficients from the constant term up. */
const polynomial = (coefficients: readonly number[], x: number): number =>
  coefficients.reduceRight((sum, coefficient) => sum * x + coefficient, 0);
