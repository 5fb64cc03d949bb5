import * as z from 'zod';
import { meshKey, sectionsKey } from './drawnForms.ts';
import { atMost, choose, extent, flag, isMap, map, quantity, section, taper, word } from './fields.ts';
import type { Quantity, QuantityOptions, Range } from './quantity.ts';
import type { FileUnits } from './units.ts';

/** Where a thing is. Ranges give it length, breadth or depth there. */
export const placing = (units: FileUnits) => ({
  station: extent(
    units,
    {
      description:
        'Distance aft of the bow tip, or from where the hull’s `origin` counts: one figure for its centre, a range for where it begins and ends.',
      examples: ['300 mm', '260 to 340 mm'],
    },
    { counted: 'station' },
  ).optional(),
  offset: extent(
    units,
    {
      description:
        'Distance from the centreline, to starboard; to port it is negative. On the centreline unless given.',
      examples: ['-12 mm', '-10 to 10 mm'],
    },
    { sense: 'side' },
  ).optional(),
  height: extent(
    units,
    {
      description:
        'Height above the baseline (the lowest point of the keel), or from where the hull’s `origin` counts: its centre, or a range from below to above.',
      examples: ['24 mm', '3 to 9 mm'],
    },
    { counted: 'height' },
  ).optional(),
});

/** What a thing displaces. At most one of these stands in an entry; ranges alone make a box. */
const oneForm = (units: FileUnits) => ({
  round: taper(units, {
    description:
      'A round bar, tube or bottle: its diameter, or two diameters for a cone, the forward one first. It lies along `axis`, over its range there.',
    examples: ['76 mm', '90 to 40 mm'],
  }).optional(),
  axis: word(['fore-aft', 'athwart', 'vertical'], {
    description: 'The direction in which a round or box lies: fore-aft unless given.',
    examples: ['vertical'],
  }).optional(),
  box: section(units, {
    description:
      'A rectangular block by its cross-section: breadth x depth fore-and-aft; length x depth athwart; length x breadth for a vertical one.',
    examples: ['40 x 12 mm'],
  }).optional(),
  ball: quantity(
    units,
    'length',
    { description: 'A ball, by its diameter, at its centre.', examples: ['30 mm'] },
    { positive: true },
  ).optional(),
  profile: z
    .array(point(units), {
      error: 'Expected a list of [station, radius] points, such as [[0, 0], [40, 31], [200, 38]].',
    })
    .max(...atMost(500, 'points of a profile'))
    .min(2, { error: 'A profile needs two points or more: [[0, 0], [40, 31]].' })
    .meta({
      description:
        'A body of revolution about a fore-and-aft axis at `height` and `offset`: [station, radius] points from bow to stern, straight lines between.',
    })
    .optional(),
  sections: sectionsKey(units),
  faired: flag({
    description:
      'true: fair curves through the points of a profile or of sections, as a batten lies, in place of straight lines. They touch every point and bulge past none.',
  }).optional(),
  mesh: meshKey(units),
  volume: quantity(
    units,
    'volume',
    { description: 'What it displaces when dunked, for a thing of unknown shape.', examples: ['32 ml'] },
    { positive: true },
  ).optional(),
});

/** One of these forms, or several of them. */
/** The forms whose sizes change when a piece is cut anew. */
export function recutKeys(units: FileUnits) {
  const { round, box, ball, volume } = oneForm(units);
  return { round, box, ball, volume };
}

export const formKeys = (units: FileUnits) => ({
  ...oneForm(units),
  forms: z
    .array(
      map(
        { ...placing(units), ...oneForm(units) },
        'a form with its place, such as { round: 40 mm, station: 100 to 200 mm, height: 46 mm }',
      ),
      { error: 'Expected a list of forms, such as - { round: 40 mm, station: 100 to 200 mm, height: 46 mm }.' },
    )
    .max(...atMost(50, 'forms of one thing'))
    .min(1, { error: 'Expected one form at least, such as - { round: 40 mm, station: 100 to 200 mm, height: 46 mm }.' })
    .meta({
      description:
        'Several forms that are one thing, each with its own place: a tube and its domed ends, a hull and its fin. What overlaps counts twice.',
    })
    .optional(),
});

function point(units: FileUnits) {
  const size = (description: string, options: QuantityOptions) => quantity(units, 'length', { description }, options);
  return z.tuple([size('Station, aft of the bow tip.', { counted: 'station' }), size('Radius there.', {})], {
    error: 'Expected a [station, radius] pair, such as [40, 31].',
  });
}

/** Where a thing balances on a knife edge; axes not named keep the form's centroid. */
export const balanceKey = (units: FileUnits) => {
  const at = (description: string, options: QuantityOptions) =>
    quantity(units, 'length', { description }, options).optional();
  return map(
    {
      station: at('Balance point aft of the bow tip.', { counted: 'station' }),
      offset: at('Balance point from the centreline, to starboard.', { sense: 'side' }),
      height: at('Balance point above the baseline.', { counted: 'height' }),
    },
    'where it balances, such as { station: 312 mm }',
  )
    .meta({
      description:
        'Where the thing balances on a knife edge, when that is not the middle of its form. Axes not named keep the form’s.',
    })
    .optional();
};

/** The painted waterline: one height, or one at the bow and one at the stern. */
export function waterlineSchema(units: FileUnits) {
  const level = quantity(units, 'length', {
    description: 'Height of the painted waterline above the baseline.',
    examples: ['56 mm'],
  });
  type Ends = { bow: Quantity; stern: Quantity };
  const ends: z.ZodType<Ends> = map(
    {
      bow: quantity(units, 'length', {
        description: 'Height of the painted waterline at the bow tip.',
        examples: ['55 mm'],
      }),
      stern: quantity(units, 'length', {
        description: 'Height of the painted waterline at the hull’s length.',
        examples: ['57 mm'],
      }),
    },
    'a height, or { bow: 55 mm, stern: 57 mm }',
  );
  return choose<Ends>(
    [
      { suits: isMap, schema: ends },
      { suits: () => true, schema: level.transform((height): Ends => ({ bow: height, stern: height })) },
    ],
    {
      description:
        'The painted waterline above the baseline, where the boat shall float surfaced: one height, or { bow, stern } heights.',
      examples: ['56 mm'],
    },
  );
}

/** An extent is a range rather than a place. */
export const isRange = (value: Quantity | Range): value is Range => 'from' in value;
