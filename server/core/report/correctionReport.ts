import type { Analysis } from '../analysis/analysis.ts';
import type { Boat } from '../boat/boat.ts';
import { type InCondition, inBoth } from '../conditions/loadingCondition.ts';
import type { Correction } from '../corrections/correction.ts';
import { bare, bundleWords, countWords, exactText } from '../corrections/room/pieceEntry.ts';
import type { Piece } from '../corrections/room/slots.ts';
import type { Figure } from '../figures/figure.ts';
import { figuredIn, figuresOf, nameIn, plainText } from '../figures/figured.ts';
import { boundsOf } from '../geometry/cut/solids.ts';
import { capital } from '../wording/capital.ts';
import { lengthText, massText, offsetWords, tapeStep, tapeText } from '../wording/numbers.ts';
import type { Paint } from './rows.ts';

/** A correction for the bench: what it brings, and the pieces to cut, where they go and how to fix them. */
export function correctionReport(analysis: Analysis, correction: Correction, paint: Paint): string {
  const { boat } = analysis;
  return [
    [paint.heading(correction.title), ...(correction.note === null ? [] : [correction.note])].join('\n'),
    beforeAndAfter(analysis, correction, paint),
    ...(correction.left.length > 0 ? [stillOut(correction, paint)] : []),
    [
      paint.heading('Cut list'),
      ...correction.pieces.flatMap((piece, i) => cutLines(piece, correction.parts[i]!.name, boat)),
    ].join('\n'),
    [paint.heading('Mind'), ...cautions(correction.pieces)].join('\n'),
  ].join('\n\n');
}

/** Which limits give way, and by how much. */
const stillOut = ({ left }: Correction, paint: Paint): string =>
  [paint.heading('Still outside the limits'), ...left.map(({ message }) => `  ${message}`)].join('\n');

function beforeAndAfter(analysis: Analysis, correction: Correction, paint: Paint): string {
  const { figures } = analysis.scheme;
  const before = conditionFigures(analysis.boat, inBoth(analysis.surfaced, analysis.submerged), figures);
  const after = conditionFigures(correction.boat, inBoth(correction.surfaced, correction.submerged), figures);
  const names = before.map(([name]) => name);
  const widest = Math.max(...names.map(name => name.length));
  const broadest = Math.max(...before.map(([, value]) => value.length), 'before'.length);
  const lines = before.map(
    ([name, value], i) => `  ${name.padEnd(widest)}  ${value.padEnd(broadest)}  ${after[i]![1]}`,
  );
  return [paint.heading(`  ${''.padEnd(widest)}  ${'before'.padEnd(broadest)}  after`), ...lines].join('\n');
}

/** The figures that a correction is about, those with a limit, each in words. */
export function conditionFigures(
  boat: Boat,
  conditions: readonly InCondition[],
  figures: readonly Figure[],
): readonly (readonly [string, string])[] {
  return conditions.flatMap(inCondition => {
    const { condition } = inCondition;
    const all = figuredIn(boat, inCondition, figures);
    return figuresOf(condition, figures)
      .filter(({ limit }) => limit !== undefined)
      .map(figure => {
        const figured = all.find(one => one.figure === figure);
        const name = (figure.tellsCondition && figure.heading) || capital(nameIn(condition, figure));
        return [name, figured ? plainText(figured) : 'none'] as const;
      });
  });
}

export function cutLines(piece: Piece, name: string, boat: Boat): readonly string[] {
  const { slot, station, offset } = piece;
  const { units } = boat;
  const at = (metres: number) => tapeText(metres, units);
  const exact = (metres: number) => exactText(metres, units);
  const [abreast, layers] = slot.strips;
  const section = `${bare(exact(slot.breadth / abreast))} x ${exact(slot.depth / layers)}`;
  const bundled = bundleWords(slot);
  const stock = boat.stock[slot.material].strip ? 'strip' : 'block';
  const cut =
    piece.counts.length > 0
      ? `  ${name}: ${countWords(piece, boat)} of ${slot.material}, ${inRows(piece)}`
      : `  ${name}: ${at(station[1] - station[0])} of ${section} ${slot.material} ${stock}${bundled === '' ? '' : `, ${bundled}`}, ${massText(piece.mass, units)} on the scale`;
  return [
    cut,
    `    from ${at(station[0])} to ${at(station[1])} aft of the bow tip, ${offsetWords(offset, units)}, its middle ${lengthText(slot.height, units)} above the keel${slot.bay.inside === null ? '' : `, inside “${slot.bay.inside}”`}`,
    ...nearestEnd(piece, boat).map(words => `    ${words}`),
    `    ${fixing(piece)}`,
  ];
}

/** How whole pieces lie: in a row, or in several abreast. */
function inRows({ slot }: Piece): string {
  const cube = Math.cbrt(Math.max(...slot.pieces) / slot.density);
  const rows = Math.round(slot.breadth / Math.min(cube, slot.breadth));
  return rows > 1 ? `in ${rows} rows side by side, fore and aft` : 'in a row fore and aft';
}

/** Where the piece is from the nearest end of a compartment, its own if it lies in one: easier to reach than the bow tip. */
function nearestEnd({ station: [from, to], slot }: Piece, boat: Boat): readonly string[] {
  const { inside } = slot.bay;
  const near = boat.compartments.filter(({ name }) => inside === null || name === inside);
  const marks = near.flatMap(compartment => {
    const bounds = boundsOf(compartment.form);
    return [
      { at: bounds.from[0], end: `forward end of “${compartment.name}”` },
      { at: bounds.to[0], end: `after end of “${compartment.name}”` },
    ];
  });
  const distances = marks.flatMap(({ at, end }) => [
    { edge: 'forward', away: from - at, end },
    { edge: 'after', away: to - at, end },
  ]);
  const [nearest] = distances.sort((a, b) => Math.abs(a.away) - Math.abs(b.away));
  if (!nearest) return [];
  if (Math.abs(nearest.away) < tapeStep(boat.units) / 2) return [`its ${nearest.edge} edge at the ${nearest.end}`];
  const way = nearest.away < 0 ? 'forward of' : 'aft of';
  return [`its ${nearest.edge} edge ${tapeText(Math.abs(nearest.away), boat.units)} ${way} the ${nearest.end}`];
}

function fixing({ slot }: Piece): string {
  if (slot.bay.inside !== null)
    return 'fix it with tape or hook-and-loop, so that it cannot slide when the boat pitches';
  return slot.material === 'lead'
    ? 'tape it for the first trial, then bed it in silicone or epoxy on a degreased hull'
    : 'tape it for the first dive, then glue it with an adhesive that does not eat foam';
}

export function cautions(pieces: readonly Piece[]): readonly string[] {
  const has = (material: string) => pieces.some(piece => piece.slot.material === material);
  return [
    ...(has('lead')
      ? [
          '  Lead is poisonous: gloves, no sanding or melting indoors, wash your hands, keep it from children, pets and ponds.',
        ]
      : []),
    ...(has('foam') ? ['  Cut foam away from yourself, clamp it, and do not breathe the dust.'] : []),
    '  The first dive after a change is on a line, in shallow clear water. Local rules come first.',
  ];
}
