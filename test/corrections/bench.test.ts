import { describe, expect, test } from 'vitest';
import type { Piece } from '../../server/core/corrections/room/slots.ts';
import { slotSets } from '../../server/core/corrections/room/slots.ts';
import { cutLines, moveLines } from '../../server/core/report/bench.ts';
import { jsonReport } from '../../server/core/report/jsonReport.ts';
import { heard } from '../helpers/analysed.ts';
import { boatText, textLines } from '../helpers/boatText.ts';
import { corrected } from '../helpers/corrected.ts';
import { probe } from '../helpers/probe.ts';

/** The whole bow bay of the probe filled with a stock. */
function filled(strip: string, units = ''): { readonly piece: Piece; readonly lines: readonly string[] } {
  const text = probe(
    ['strip: 12 x 6 mm', `strip: ${strip}`],
    [
      textLines(['boat: Probe']),
      boatText`
    boat: Probe
    ${units}`,
    ],
  );
  const { boat } = heard(text);
  const slot = slotSets(boat, false).at(-1)![0]!;
  const [from] = slot.station;
  const station = [from, from + 0.0254] as const;
  const piece = { slot, mass: 0.0254 * slot.massPerLength, station, offset: 0.0015875, counts: [] };
  return { piece, lines: cutLines(piece, 'bow', boat) };
}

describe('a cut list', () => {
  test('has the strip as it is written, and how many lie abreast and on top of each other', () => {
    // A bay of 60 x 8 mm.
    const { piece, lines } = filled('6 x 2.4 mm');
    expect(piece.slot.strips).toEqual([10, 3]);
    expect(lines[0]).toContain('25 mm of 6 x 2.4 mm lead strip, 10 strips abreast in 3 layers, ');
  });

  test('turns a strip on edge where more of it fits so', () => {
    // 7 x 5 mm: 8 abreast in one layer; on edge 12 abreast in one layer.
    expect(filled('7 x 5 mm').piece.slot.strips).toEqual([12, 1]);
  });

  test('has inches as fractions, with sign words', () => {
    const { lines } = filled('1/2 x 1/8 in', textLines(['units: { length: mm, mass: g }']));
    expect(lines[1]).toContain('2 mm to starboard');
    const inches = filled('1/2 x 1/8 in', textLines(['units: { length: in, mass: oz }']));
    expect(inches.lines[1]).toContain('1/16 in to starboard');
    expect(inches.lines.join(' ')).not.toMatch(/\d\.\d+ in|-\d/);
  });

  test('says of a piece for one water only that it comes out again', () => {
    const { piece } = filled('6 x 2.4 mm');
    const { boat } = heard(probe());
    const out = { ...piece, slot: { ...piece.slot, bay: { ...piece.slot.bay, inside: null } } };
    expect(cutLines(out, 'bow', boat).join(' ')).toContain('epoxy');
    expect(cutLines(out, 'bow', boat, 'comes out').join(' ')).not.toContain('epoxy');
  });
});

describe('a move', () => {
  const analysis = heard(probe(['150 to 250 mm', '160 to 260 mm']));
  const move = analysis.corrections.all().find(({ kind }) => kind === 'move')!;

  test('is said with where the part stood and where it stands then', () => {
    expect(moveLines(move.moves[0]!, analysis.boat)).toEqual([
      '  battery: move it 10 mm forward',
      '    from 160 mm to 260 mm aft of the bow tip',
      '    to 150 mm to 250 mm aft of the bow tip',
    ]);
  });

  test('stands in the JSON as edits of the text, as do all others', () => {
    const { text } = analysis.syntax;
    const starts = [0, ...[...text.matchAll(/\n/g)].map(({ index }) => index + 1)];
    const at = ({ line, character }: { readonly line: number; readonly character: number }) =>
      starts[line]! + character;
    const { corrections } = jsonReport(analysis);
    expect(corrections.map(({ kind }) => kind)).toContain('move');
    for (const [i, { edits }] of corrections.entries()) {
      const changed = [...edits!]
        .sort((a, b) => at(b.range.start) - at(a.range.start))
        .reduce((was, edit) => was.slice(0, at(edit.range.start)) + edit.text + was.slice(at(edit.range.end)), text);
      expect(changed).toBe(corrected(analysis, analysis.corrections.all()[i]!));
    }
  });
});
