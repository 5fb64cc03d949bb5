import * as z from 'zod';
import { blowSchema } from './blow.ts';
import { describeValue, flag, map, noteKey, quantity, text, wholeNumber, word } from './fields.ts';
import { balanceKey, formKeys, placing } from './forms.ts';
import { historyKeys } from './history.ts';
import { holdsKey } from './holds.ts';
import { inWaterKey } from './inWater.ts';
import { severalKeys } from './several.ts';
import type { FileUnits } from './units.ts';

const name = (example: string, whose: string) =>
  text({ description: `What you call it. ${whose}`, examples: [example] });

const mass = (units: FileUnits, description: string) =>
  quantity(units, 'mass', { description, examples: ['410 g', '1 lb 3 oz'] }, { nonNegative: true });

const materialKey = () =>
  text({
    description: 'What it is made of: a name from the materials handbook, which gives its density.',
    examples: ['fibreglass', 'lead'],
  });

export const densityKey = (units: FileUnits) =>
  quantity(
    units,
    'density',
    { description: 'Its own density, where it differs from the handbook’s.', examples: ['32 kg/m3', '2 lb/ft3'] },
    { positive: true },
  );

/** For what is meant to stand outside the hull: it is not told that it does. */
const outsideKey = () =>
  flag({
    description:
      'true: it is meant to stand outside the hull, as a fin, a propeller guard or a keel bolted underneath, and may reach past it. false: it lies inside, whatever it is called. Not given, its name decides: fins, planes, rudders, shafts, propellers and masts may stand outside.',
  }).optional();

/** A free-flooding shell: water fills its inside, only its wall displaces. */
export function shellSchema(units: FileUnits) {
  return map(
    {
      name: name('outer hull', 'Each name stands for one thing only.'),
      mass: mass(units, 'What the bare shell weighs on the scale.'),
      material: materialKey().optional(),
      density: densityKey(units).optional(),
      inWater: inWaterKey(units),
      ...placing(units),
      ...severalKeys(units),
      ...formKeys(units),
      ends: word(['open', 'closed'], {
        description: 'Whether the flat ends of the form belong to the shell; closed unless given.',
      }).optional(),
      balance: balanceKey(units),
      outside: outsideKey(),
      holds: holdsKey(units),
      note: noteKey().optional(),
    },
    'a shell, such as { name: outer hull, material: fibreglass, mass: 640 g, profile: [[0, 0], [200, 45], [900, 0]], height: 46 mm }',
  ).meta({ description: 'A free-flooding hull or casing: water fills the inside, only the wall displaces.' });
}

/** A watertight compartment: its outer form displaces, what is `in` it does not. */
export function compartmentSchema(units: FileUnits) {
  return map(
    {
      name: name('dry cylinder', 'Parts inside it say `in:` with this name.'),
      mass: mass(units, 'What the empty compartment weighs, ends and seals included.'),
      material: materialKey().optional(),
      density: densityKey(units).optional(),
      inWater: inWaterKey(units),
      ...placing(units),
      ...severalKeys(units),
      ...formKeys(units),
      balance: balanceKey(units),
      outside: outsideKey(),
      holds: holdsKey(units),
      note: noteKey().optional(),
    },
    'a compartment, such as { name: dry cylinder, mass: 410 g, round: 76 mm, station: 200 to 680 mm, height: 46 mm }',
  ).meta({ description: 'A watertight space by its outer form: it displaces whole, and what is in it only weighs.' });
}

const shareKey = () =>
  z
    .number({ error: issue => `Expected a number such as 2, but this ${describeValue(issue.input)}.` })
    .min(0.01, { error: 'A share is more than nothing: 1 fills with the others, 2 twice as fast.' })
    .max(100, { error: 'A share is 100 at most: 1 fills with the others, 2 twice as fast.' })
    .meta({
      description: 'How fast it fills against the other tanks: 1 together with them (unless given), 2 twice as fast.',
      shown: [2],
    });

/** A ballast tank. */
export function tankSchema(units: FileUnits) {
  return map(
    {
      name: name('main ballast', 'Findings and the report call the tank by it.'),
      in: text({
        description:
          'The compartment it lies in. Without it the tank stands in the flooded hull and displaces by its own form.',
        examples: ['dry cylinder'],
      }).optional(),
      capacity: quantity(
        units,
        'volume',
        {
          description:
            'What it holds by the measuring jug: filled to the brim and poured out. A form is then for its place only.',
          examples: ['640 ml'],
        },
        { positive: true },
      ).optional(),
      ...placing(units),
      ...severalKeys(units),
      ...formKeys(units),
      kind: word(['sealed', 'vented', 'piston', 'bladder'], {
        description:
          'sealed: water compresses its air. vented: its air goes out through a vent. Both have a free surface. piston: water fills it from one end, no free surface. bladder: a bag, no free surface.',
      }),
      fill: quantity(
        units,
        'fraction',
        { description: 'What is left in it when surfaced; empty (0 %) unless given.', examples: ['5 %'] },
        { nonNegative: true },
      ).optional(),
      cells: wholeNumber({
        description:
          'Watertight cells that divide it fore and aft and fill together; each has its own short free surface. Baffles with holes only slow the water down and do not count.',
        examples: [3],
      }).optional(),
      fills: word(['aft', 'forward'], {
        description: 'The end that a piston’s water occupies from: forward unless given.',
      }).optional(),
      share: shareKey().optional(),
      pressure: quantity(
        units,
        'pressure',
        {
          description: 'The most that a sealed tank’s pump or seals take, over the air outside.',
          examples: ['1.5 bar', '20 psi'],
        },
        { positive: true },
      ).optional(),
      blow: blowSchema(units).optional(),
      outside: outsideKey(),
      note: noteKey().optional(),
    },
    'a tank, such as { name: main ballast, in: dry cylinder, round: 70 mm, station: 360 to 560 mm, height: 46 mm, kind: sealed }',
  ).meta({ description: 'A ballast tank by its inside form: how much water it takes, and where.' });
}

const pieceKeys = (units: FileUnits) => ({
  name: name('battery', 'Each name stands for one thing only.'),
  mass: mass(units, 'What it weighs on the scale. With a form and a material it may be left out.').optional(),
  material: materialKey().optional(),
  density: densityKey(units).optional(),
  inWater: inWaterKey(units),
  in: text({
    description: 'The watertight compartment it lies in: inside, it weighs but does not displace.',
    examples: ['dry cylinder'],
  }).optional(),
  ...placing(units),
  ...severalKeys(units),
  ...formKeys(units),
  balance: balanceKey(units),
  holds: holdsKey(units),
  fixed: flag({
    description:
      'false: corrections may move this, and shrink it or take it out when it is lead or foam. true: it stays where it is. Not given, lead and foam stay, and equipment may be moved inside its compartment.',
  }).optional(),
  outside: outsideKey(),
  note: noteKey().optional(),
});

const PIECE = 'a part, such as { name: battery, mass: 310 g, station: 260 to 340 mm, height: 24 mm, in: dry cylinder }';

/** Something carried: equipment, lead, foam. */
export function partSchema(units: FileUnits) {
  return map({ ...pieceKeys(units), ...historyKeys(units) }, PIECE).meta({
    description: 'One thing carried, in the order it goes aboard.',
  });
}

/** The same for one day only. */
export const pieceSchema = (units: FileUnits) =>
  map(pieceKeys(units), PIECE).meta({ description: 'One thing carried for this trial only.' });

export type ShellEntry = z.infer<ReturnType<typeof shellSchema>>;
export type CompartmentEntry = z.infer<ReturnType<typeof compartmentSchema>>;
export type TankEntry = z.infer<ReturnType<typeof tankSchema>>;
export type PartEntry = z.infer<ReturnType<typeof partSchema>>;
