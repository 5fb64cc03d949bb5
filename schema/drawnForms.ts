import * as z from 'zod';
import { atMost, field, map, quantity, text, word } from './fields.ts';
import { readAxes } from './meshAxes.ts';
import type { QuantityOptions } from './quantity.ts';
import { sectionRow } from './sectionRow.ts';
import type { FileUnits } from './units.ts';

/** Sections that a table of offsets has at the most. */
export const MOST_SECTIONS = 100;

/** A table of offsets: the hull's cross-sections as taken off a plan. */
export function sectionsKey(units: FileUnits) {
  return z
    .array(sectionRow(units), {
      error:
        'Expected a list of sections from bow to stern, such as - { station: 60 mm, outline: [[0, 2], [18, 20], [22, 40]] }.',
    })
    .max(...atMost(MOST_SECTIONS, 'sections'))
    .min(2, { error: 'A table of offsets needs two sections or more: the first and the last are its ends.' })
    .meta({
      description:
        'A table of offsets: cross-sections from bow to stern, by points of their outline or by the figures of a plan (keel, deck, half-breadth, how full). Straight lines between points and stations, unless “faired”. Outlines of equally many points are joined point to point, others by girth.',
    })
    .optional();
}

/** A mesh drawn elsewhere. */
export const meshKey = (units: FileUnits) => {
  const at = (description: string, options?: QuantityOptions) => quantity(units, 'length', { description }, options);
  return map(
    {
      file: text({
        description: 'STL (binary or text) or 3MF file, by its name from the folder of this boat file.',
        examples: ['hull.stl'],
      }),
      unit: word(['mm', 'cm', 'm', 'in', 'ft'], {
        description: 'The unit that the file is drawn in: mm unless given. A 3MF file says its own.',
      }).optional(),
      axes: field(
        readAxes,
        {
          description:
            'Which of the file’s axes run aft, to starboard and up, in this order: “x y z” unless given. A form drawn with its bow towards +x and its deck towards +z is “-x -y z”.',
          examples: ['-x -y z'],
        },
        { type: 'string' },
      ).optional(),
      at: z
        .tuple(
          [
            at('Station of the file’s origin.', { counted: 'station' }),
            at('Its offset.'),
            at('Its height.', { counted: 'height' }),
          ],
          {
            error: 'Expected the place of the file’s origin as [station, offset, height], such as [0, 0, 46].',
          },
        )
        .meta({
          description:
            'Where the file’s origin lies in the boat: [station, offset, height]. At the bow tip, on the centreline and the baseline unless given.',
          shown: [['450', '0', '46']],
        })
        .optional(),
    },
    'a mesh file, such as { file: hull.stl, unit: mm, axes: -x -y z }',
  )
    .meta({
      description:
        'A form drawn elsewhere, as STL or 3MF: closed, or open for a shell. Its triangles are checked, and told when they spoil the volume.',
    })
    .optional();
};
