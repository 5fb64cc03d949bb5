import type { Analysis } from '../../analysis/analysis.ts';
import type { Boat, Part } from '../../boat/boat.ts';
import { lengthText, massText, offsetWords, tapeText } from '../../wording/numbers.ts';
import type { Markup } from '../markup.ts';
import { called } from '../things.ts';
import { heading, htmlSection, htmlTable } from './html.ts';

/**
 * Everything that is aboard by the file, in its order, with places from the bow tip: not what trials only suppose, nor where
 * they nudge it. Null for an empty boat.
 */
export function pieceList({ filed: { boat } }: Analysis): Markup | null {
  if (boat.payload.length === 0) return null;
  return htmlSection(
    'pieces',
    heading('Aboard'),
    htmlTable(
      'list',
      ['what', 'mass', 'from the bow tip', 'athwart', 'height of its middle', 'where'],
      boat.payload.map(part => rowOf(part, boat)),
    ),
  );
}

function rowOf(part: Part, { units }: Boat): readonly string[] {
  const { name, material, mass, from, to, centroid, inside, massFrom } = part;
  const [start, end] = [tapeText(from[0], units), tapeText(to[0], units)];
  return [
    material === null || name.includes(material) ? called(name) : `${called(name)} (${material})`,
    massFrom === 'scale' ? massText(mass, units) : `${massText(mass, units)}, by its form`,
    start === end ? start : `${start} to ${end}`,
    offsetWords(centroid[1], units),
    lengthText(centroid[2], units),
    inside === null ? 'in the water' : `in “${inside}”`,
  ];
}
