import { map, word } from './fields.ts';

/** Where the file counts its places from. */
export const originSchema = map(
  {
    stations: word(['bow', 'stern', 'aft of midships', 'forward of midships'], {
      description:
        'Where every station of the file counts from: bow (aft of the bow tip; so unless given), stern (forward of the hull’s after end), aft of midships or forward of midships (half length; to the other side negative).',
    }).optional(),
    heights: word(['baseline', 'waterline'], {
      description:
        'Where every height of the file counts from: baseline (the lowest point of the keel; so unless given) or waterline (the painted waterline at half length; below it negative). The waterline itself is given above the baseline.',
    }).optional(),
  },
  'where stations and heights count from, such as { stations: stern, heights: waterline }',
).meta({
  description:
    'Where stations and heights count from in this file, said once. All that the tool shows and writes counts from there too.',
  shown: ['{ stations: stern }'],
});
