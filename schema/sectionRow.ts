import * as z from 'zod';
import { atMost, field, map, quantity } from './fields.ts';
import { type Quantity, type QuantityOptions, readQuantity } from './quantity.ts';
import { ELLIPSE, type Fullness, outlineOfFigures } from './sectionFigures.ts';
import { bad, good, type Read } from './slip.ts';
import type { FileUnits } from './units.ts';

/** One section of a table of offsets: its station, and its outline from keel to deck whichever way it was written. */
interface SectionRow {
  readonly station: Quantity;
  readonly outline: readonly (readonly [half: Quantity, height: Quantity])[];
}

const EXAMPLE = '{ station: 60 mm, keel: 2 mm, deck: 40 mm, half: 22 mm }';

/** A section by the points of its outline, or by the figures that a plan gives for its station. */
export function sectionRow(units: FileUnits): z.ZodType<SectionRow> {
  const size = (description: string, example?: string, options?: QuantityOptions) =>
    quantity(units, 'length', example ? { description, examples: [example] } : { description }, options);
  const height = (description: string, example?: string) => size(description, example, { counted: 'height' });
  const point = z.tuple(
    [size('Half-breadth: from the centreline out to the side.'), height('Height above the baseline.')],
    { error: 'Expected a [half-breadth, height] pair, such as [18, 20].' },
  );
  return map(
    {
      station: size('Where the section lies, aft of the bow tip. Stations rise from bow to stern.', '60 mm', {
        counted: 'station',
      }),
      outline: z
        .array(point, {
          error:
            'Expected a list of [half-breadth, height] points from keel to deck, such as [[0, 2], [18, 20], [22, 40]].',
        })
        .max(...atMost(100, 'points of an outline'))
        .min(1, { error: 'An outline needs a point at least, such as [[0, 40]] for the tip of the bow.' })
        .meta({
          description:
            'Half the cross-section there: [half-breadth, height] points from keel to deck, mirrored to port. A last point off the centreline makes a flat deck, a first one a flat keel; a single point is a tip.',
          shown: [['[0, 2]', '[18, 20]', '[22, 40]']],
        })
        .optional(),
      keel: height('In place of an outline: how high its lowest point is above the baseline.', '2 mm').optional(),
      deck: height('How high its highest point is above the baseline.', '40 mm').optional(),
      half: size('Its half-breadth, at its broadest.', '22 mm').optional(),
      breadth: size('In place of “half”: its whole breadth.', '44 mm').optional(),
      depth: size('In place of “keel” and “deck”: from its lowest point to its highest.', '38 mm').optional(),
      height: height('With “depth”: how high its middle is above the baseline.', '21 mm').optional(),
      full: field(readFullness(units), {
        description:
          'How full it is: ellipse (unless given), round bilge (flat floor, rounded at the bilges, flat deck), box, or what it fills of the rectangle round it: 50 % is a diamond, 79 % an ellipse, 100 % a box.',
        examples: ['ellipse', 'round bilge', '85 %'],
      }).optional(),
    },
    `a section, such as { station: 60 mm, outline: [[0, 2], [18, 20], [22, 40]] } or ${EXAMPLE}`,
  ).transform((row, context): SectionRow => {
    const { station, outline, full = ELLIPSE, ...figures } = row;
    const given = Object.values(figures).some(figure => figure !== undefined) || row.full !== undefined;
    if (outline && !given) return { station, outline };
    const read = outline ? 'This section has an outline and figures of a plan. Keep one of them.' : spanOf(figures);
    if (typeof read === 'string') {
      context.addIssue({ code: 'custom', message: read });
      return z.NEVER;
    }
    const sigma = figures.half?.sigma ?? (figures.breadth?.sigma ? figures.breadth.sigma / 2 : null);
    const plain = (value: number): Quantity => ({ value, sigma: null, unit: null });
    const points = outlineOfFigures({ ...read, full }).map(
      ([half, height]) => [{ ...plain(half), sigma }, plain(height)] as const,
    );
    return { station, outline: points };
  });
}

interface Figures {
  readonly keel?: Quantity | undefined;
  readonly deck?: Quantity | undefined;
  readonly half?: Quantity | undefined;
  readonly breadth?: Quantity | undefined;
  readonly depth?: Quantity | undefined;
  readonly height?: Quantity | undefined;
}

/** Keel, deck and half-breadth, m, of either way to give them; a sentence where they do not tell them. */
function spanOf({ keel, deck, half, breadth, depth, height }: Figures) {
  if (half && breadth) return 'This section has “half” and “breadth”. Keep one of them.';
  const broad = half?.value ?? (breadth ? breadth.value / 2 : null);
  if (broad === null) return `A section needs an “outline”, or its figures: ${EXAMPLE}.`;
  if (broad < 0) return 'A half-breadth is measured from the centreline outward and cannot be negative.';
  const both = (low: number, high: number) =>
    high < low ? 'The deck of this section lies below its keel.' : { keel: low, deck: high, half: broad };
  if (keel && deck && !depth && !height) return both(keel.value, deck.value);
  if (depth && height && !keel && !deck) return both(height.value - depth.value / 2, height.value + depth.value / 2);
  if (depth && keel && !deck && !height) return both(keel.value, keel.value + depth.value);
  if (depth && deck && !keel && !height) return both(deck.value - depth.value, deck.value);
  return 'A section needs two figures for how high it is: “keel” and “deck”, or “depth” with “height”, “keel” or “deck”.';
}

const readFullness =
  (units: FileUnits) =>
  (raw: unknown): Read<Fullness> => {
    const word =
      typeof raw === 'string'
        ? raw
            .trim()
            .toLowerCase()
            .replace(/[\s-]+/g, ' ')
        : null;
    if (word === 'ellipse') return good(ELLIPSE);
    if (word === 'box') return good(1);
    if (word === 'round bilge') return good('round bilge');
    const whole = { start: 0, end: 0 };
    if (word !== null && !/\d/.test(word)) {
      return bad('Expected ellipse, round bilge, box, or a share such as 85 %.', whole);
    }
    const read = readQuantity(raw, 'fraction', units);
    if (!read.ok) return read;
    if (read.value.value >= 0.5) return good(read.value.value);
    return bad('A section fills half of its rectangle at least (a diamond). Give an outline for a hollow one.', whole);
  };
