import { map, quantity, word } from './fields.ts';
import type { FileUnits } from './units.ts';

/**
 * Gases that tanks are blown with, by their molar mass, kg/mol (IUPAC atomic weights; air by the US Standard Atmosphere, 1976;
 * all from memory).
 */
export const MOLAR_MASS = {
  air: 0.028965,
  nitrogen: 0.028014,
  'carbon dioxide': 0.04401,
  tetrafluoroethane: 0.10203,
} as const;

/** How a tank is emptied under water by air or gas. */
export const blowSchema = (units: FileUnits) =>
  map(
    {
      depth: quantity(
        units,
        'length',
        { description: 'From how deep it must still be blown: the depth of the tank’s water.', examples: ['2 m'] },
        { positive: true },
      ),
      bottle: quantity(
        units,
        'volume',
        { description: 'What the air bottle holds, its inside, by the jug.', examples: ['60 ml'] },
        { positive: true },
      ).optional(),
      pressure: quantity(
        units,
        'pressure',
        { description: 'What the bottle is filled to, over the air outside.', examples: ['6 bar', '90 psi'] },
        { positive: true },
      ).optional(),
      mass: quantity(
        units,
        'mass',
        { description: 'In place of a bottle: what gas a cartridge or can holds, by the scale.', examples: ['16 g'] },
        { positive: true },
      ).optional(),
      gas: word(['air', 'nitrogen', 'carbon dioxide', 'tetrafluoroethane'], {
        description: 'The gas of `mass`: carbon dioxide unless given. Tetrafluoroethane is R134a, of dusters.',
      }).optional(),
    },
    'how it is blown, such as { depth: 2 m, bottle: 60 ml, pressure: 6 bar } or { depth: 2 m, mass: 16 g, gas: carbon dioxide }',
  ).meta({
    description:
      'Emptied under water by air or gas: from how deep, and the charge that is carried. The report says what pressure it takes, how much gas one blow takes, and how many a charge gives. Bottles and cartridges are pressure vessels: their maker’s rating and local rules come first, and filling them is for people who are qualified to.',
  });
