import type { Analysis } from '../../analysis/analysis.ts';
import { allPieces, type Correction } from '../../corrections/correction.ts';
import { cautions, cutLines, moveLines } from '../../report/bench.ts';
import { htmlElement, type Markup, svgText } from '../markup.ts';
import { heading, htmlSection, paragraph, tickBox } from './html.ts';

/** What the preferred correction does, its pieces and moves to tick off at the bench; null where there is none. */
export function cutList({ boat }: Analysis, correction: Correction | null): Markup | null {
  if (!correction) return null;
  const lines = [
    ...correction.moves.map(move => moveLines(move, boat)),
    ...correction.pieces.map((piece, i) => cutLines(piece, correction.parts[i]!.name, boat)),
    ...correction.carried.flatMap(({ pieces, parts }) =>
      pieces.map((piece, i) => cutLines(piece, parts[i]!.name, boat, 'comes out')),
    ),
  ];
  return htmlSection(
    'correction',
    heading('What to do'),
    paragraph(`${correction.title}.`),
    htmlElement(
      'div',
      { class: 'cuts' },
      ...lines.map(deed => htmlElement('div', { class: 'cut' }, tickBox, ...deed.map(line => paragraph(line.trim())))),
    ),
  );
}

/** What to mind at the bench, whatever there is to do. */
export const mindBox = (correction: Correction | null): Markup =>
  htmlElement(
    'p',
    { class: 'caution' },
    htmlElement('strong', {}, svgText('Caution. ')),
    svgText(
      cautions(correction ? allPieces(correction) : [])
        .map(line => line.trim())
        .join(' '),
    ),
  );
