import { expect, it } from 'vitest';
import { figureText, plusMinus, sigmaText } from '../../server/core/wording/withUncertainty.ts';

it.each([
  ['61.4 mm', '1.1 mm', '61.4 ± 1.1 mm'],
  ['64 %', '10 %', '64 ± 10 %'],
  ['64 %', '10 %, roughly', '64 ± 10 %, roughly'],
  ['1.2 kg', '3 g', '1.2 kg ± 3 g'],
  ['3 11/16 in', '3/32 in', '3 11/16 ± 3/32 in'],
  ['3 11/16 in', '0.014 in', '3 11/16 ± 0.014 in'],
  ['1 lb 9.5 oz', '3.1 oz', '1 lb 9.5 oz ± 3.1 oz'],
  ['0.2° bow up', '4.7°', '0.2° bow up ± 4.7°'],
  ['level', '0.39°', 'level ± 0.39°'],
  ['below by 3 mm', '1 mm', 'below by 3 mm ± 1 mm'],
  // No doubt worth a digit.
  ['61.4 mm', '0 mm', '61.4 mm'],
])('%s with an uncertainty of %s: %s', (figure, uncertainty, words) => {
  expect(plusMinus(figure, uncertainty)).toBe(words);
});

it.each([
  [0.43, 'length', '430 mm'],
  [0.31, 'mass', '310 g'],
  [0.00036, 'volume', '360 ml'],
  [1600, 'density', '1600 kg/m³'],
  [0.63, 'fraction', '63 %'],
  [16, 'temperature', '16 °C'],
  [35, 'salinity', '35 g/kg'],
] as const)('%d (SI) of %s is %s', (value, dimension, words) => {
  expect(figureText(value, dimension, { length: 'mm', mass: 'g' })).toBe(words);
});

it('a density’s uncertainty has two digits', () => {
  expect(sigmaText(158.77, 'density', { length: 'mm', mass: 'g' })).toBe('160 kg/m³');
});
