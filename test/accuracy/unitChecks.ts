import { DEFAULT_UNITS } from '../../schema/boatFile.ts';
import { findMaterial } from '../../schema/materials.ts';
import { readQuantity } from '../../schema/quantity.ts';
import type { Dimension } from '../../schema/units.ts';
import { gaugePressure } from '../../server/core/conditions/tankSizing.ts';
import { alike, type Section } from './check.ts';

const exact = alike({ source: 'NIST SP 811', known: 'seen', unit: '', within: { relative: 1e-15 } });
const rounded = alike({ source: 'NIST SP 811', known: 'seen', unit: '', within: { relative: 1e-12 } });
const handbook = alike({ source: 'Handbooks', known: 'from memory', unit: 'kg/m³' });
const plastic = alike({ source: 'Plastics tables', known: 'seen', unit: 'kg/m³' });
const insulation = alike({ source: 'C578', known: 'seen', unit: 'kg/m³' });
const weight = alike({ source: 'ITTC, Table 1', known: 'derived', unit: '' });

/** What the program reads of a text, in SI. */
const read = (text: string, dimension: Dimension, factor = 1) => {
  return (): number => {
    const result = readQuantity(text, dimension, DEFAULT_UNITS);
    return result.ok ? result.value.value * factor : Number.NaN;
  };
};

const densityOf = (name: string) => (): number => findMaterial(name)?.density ?? Number.NaN;
const rangeEnd = (name: string, end: 0 | 1) => (): number => findMaterial(name)?.range[end] ?? Number.NaN;
const poundsPerFoot = (pounds: number): number => read(`${pounds} lb/ft3`, 'density')();

const FRESH_AT_20 = 998.2072;

export const unitSections: readonly Section[] = [
  {
    title: 'Units, as the program reads them',
    checks: [
      exact('1 in', 25.4, read('1 in', 'length', 1e3), { unit: 'mm' }),
      exact('1 ft', 0.3048, read('1 ft', 'length'), { unit: 'm' }),
      exact('1 lb', 453.59237, read('1 lb', 'mass', 1e3), { unit: 'g' }),
      exact('1 oz', 28.349523125, read('1 oz', 'mass', 1e3), { unit: 'g' }),
      exact('1 fl oz (US)', 29.5735295625, read('1 fl oz', 'volume', 1e6), { unit: 'ml' }),
      exact('1 US gal', 3.785411784, read('1 US gal', 'volume', 1e3), { unit: 'l' }),
      exact('1 imp fl oz', 28.4130625, read('1 imp fl oz', 'volume', 1e6), { unit: 'ml', known: 'from memory' }),
      exact('1 in3', 16.387064, read('1 in3', 'volume', 1e6), { unit: 'ml' }),
      exact('1 ft3', 28.316846592, read('1 ft3', 'volume', 1e3), { unit: 'l' }),
      rounded('1 psi', 6894.757293168, read('1 psi', 'pressure'), { unit: 'Pa' }),
      rounded('1 lb/ft3', 16.01846337396, read('1 lb/ft3', 'density'), { unit: 'kg/m³' }),
      rounded('0.5 lb/in3', 13839.9523551015, read('0.5 lb/in3', 'density'), { unit: 'kg/m³', known: 'from memory' }),
      rounded('1 oz/in3', 1729.994044388, read('1 oz/in3', 'density'), { unit: 'kg/m³', known: 'from memory' }),
      rounded('64 lb/ft3, the naval constant for sea water', 1025.1817, read('64 lb/ft3', 'density'), {
        unit: 'kg/m³',
        within: { absolute: 0.00005 },
      }),
      rounded('62.4 lb/ft3, the naval constant for fresh water', 999.5521, read('62.4 lb/ft3', 'density'), {
        unit: 'kg/m³',
        within: { absolute: 0.00005 },
      }),
      exact('standard atmosphere', 101_325, () => gaugePressure(0.5), { unit: 'Pa' }),
      exact('1 lb 3 oz', 0.538640939375, read('1 lb 3 oz', 'mass'), { unit: 'kg', known: 'derived' }),
      exact('5 1/4 in', 133.35, read('5 1/4 in', 'length', 1e3), { unit: 'mm', known: 'derived' }),
    ],
  },
  {
    title: 'Materials: the densities taken when nothing better is known',
    about: 'Ranges are those of the sources, for a default; a part on the scale has the last word.',
    checks: [
      handbook('lead', [11_300, 11_350], densityOf('lead')),
      handbook('hard lead, 1 to 9 % antimony', [10_600, 11_270], densityOf('hard lead')),
      handbook('brass', [8400, 8730], densityOf('brass')),
      handbook('stainless steel', [7900, 8030], densityOf('stainless')),
      handbook('aluminium alloys', [2640, 2840], densityOf('aluminium')),
      handbook('carbon steel', [7800, 7870], densityOf('steel')),
      handbook('tungsten alloy (ASTM B777)', [16_850, 18_850], densityOf('tungsten alloy')),
      plastic('ABS', [1020, 1210], densityOf('ABS')),
      plastic('PLA', [1210, 1290], densityOf('PLA')),
      plastic('PETG', [1260, 1280], densityOf('PETG')),
      plastic('acrylic', [1170, 1190], densityOf('acrylic')),
      plastic('rigid PVC', [1300, 1450], densityOf('rigid PVC')),
      plastic('polycarbonate', [1190, 1220], densityOf('polycarbonate')),
      plastic('nylon', [1130, 1160], densityOf('nylon')),
      plastic('cast polyurethane', [1030, 1250], densityOf('cast resin')),
      handbook('epoxy', [1100, 1250], densityOf('epoxy')),
      handbook('fibreglass', [1400, 1950], densityOf('fibreglass'), { source: 'ISO 12215-5', known: 'derived' }),
      handbook('birch plywood', [640, 714], densityOf('birch plywood')),
      handbook('softwood plywood', [430, 580], densityOf('softwood plywood')),
      handbook('balsa', [80, 250], densityOf('balsa'), { source: 'Wood Handbook' }),
      handbook('rigid PVC foam', [40, 250], densityOf('PVC foam')),
      insulation('EPS, between Types XI and XV', [11.21, 45.66], densityOf('EPS')),
      insulation('XPS, between Types X and V', [20.82, 48.06], densityOf('XPS')),
      insulation('EPS reaches down to Type XI, 0.70 lb/ft3', [0, poundsPerFoot(0.7)], rangeEnd('EPS', 0)),
      insulation('XPS reaches up to Type V, 3.00 lb/ft3', [poundsPerFoot(3), 100], rangeEnd('XPS', 1)),
      weight(
        'lead: part of its weight left in fresh water of 20 °C',
        0.912,
        () => 1 - FRESH_AT_20 / densityOf('lead')(),
        {
          within: { absolute: 0.00005 },
        },
      ),
      weight(
        'lead in air for 1 kg in that water',
        1.096522,
        () => densityOf('lead')() / (densityOf('lead')() - FRESH_AT_20),
        {
          unit: 'kg',
          within: { absolute: 0.00001 },
        },
      ),
    ],
  },
];
