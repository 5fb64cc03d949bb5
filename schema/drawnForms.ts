import * as z from 'zod';
import { atMost, field, map, quantity, text, word } from './fields.ts';
import { readAxes } from './meshAxes.ts';
import type { FileUnits } from './units.ts';

/** A table of offsets: the hull's cross-sections as taken off a plan. */
export function sectionsKey(units: FileUnits) {
  const size = (description: string) => quantity(units, 'length', { description });
  const point = z.tuple(
    [size('Half-breadth: from the centreline out to the side.'), size('Height above the baseline.')],
    { error: 'Expected a [half-breadth, height] pair, such as [18, 20].' },
  );
  const outline = z
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
    });
  const section = map(
    {
      station: quantity(units, 'length', {
        description: 'Where the section lies, aft of the bow tip. Stations rise from bow to stern.',
        examples: ['60 mm'],
      }),
      outline,
    },
    'a section, such as { station: 60 mm, outline: [[0, 2], [18, 20], [22, 40]] }',
  );
  return z
    .array(section, {
      error:
        'Expected a list of sections from bow to stern, such as - { station: 60 mm, outline: [[0, 2], [18, 20], [22, 40]] }.',
    })
    .max(...atMost(100, 'sections'))
    .min(2, { error: 'A table of offsets needs two sections or more: the first and the last are its ends.' })
    .meta({
      description:
        'A table of offsets: cross-sections from bow to stern, straight lines between their points and between stations. Outlines of equally many points are joined point to point, others by girth.',
    })
    .optional();
}

/** A mesh drawn elsewhere. */
export const meshKey = (units: FileUnits) => {
  const at = (description: string) => quantity(units, 'length', { description });
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
        .tuple([at('Station of the file’s origin.'), at('Its offset.'), at('Its height.')], {
          error: 'Expected the place of the file’s origin as [station, offset, height], such as [0, 0, 46].',
        })
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
