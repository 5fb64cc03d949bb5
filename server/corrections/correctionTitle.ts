import type { Boat } from '../boat/boat.ts';
import type { Submerged } from '../conditions/submerged.ts';
import type { SurfacedAfloat } from '../conditions/surfaced.ts';
import { judgeSubmerged } from '../findings/judgeSubmerged.ts';
import { offWaterline } from '../findings/trim.ts';
import { heelWords, massText, percentText, tapeText, trimWords } from '../wording/numbers.ts';
import type { Piece } from './levers.ts';

/** What a correction adds and what it brings, for the editor's menu and the report. */
export function correctionTitle(
  pieces: readonly Piece[],
  boat: Boat,
  surfaced: SurfacedAfloat,
  submerged: { readonly before: Submerged; readonly after: Submerged },
): string {
  const off = offWaterline(boat, surfaced);
  const added = pieces.map(piece => pieceWords(piece, boat)).join(' and ');
  const surface = `surfaced trim ${trimWords(off.trim)}, heel ${heelWords(off.heel)}`;
  return `Insert ${added}: ${surface}; ${diveWords(boat, submerged)}`;
}

function pieceWords(piece: Piece, boat: Boat): string {
  const { lever } = piece;
  const length = tapeText(piece.station[1] - piece.station[0], boat.units);
  const amount = lever.material === 'lead' ? massText(piece.mass, boat.units) : `${length} of`;
  return `${amount} ${lever.material} in “${lever.bay.name}”`;
}

function diveWords(boat: Boat, { before, after }: { readonly before: Submerged; readonly after: Submerged }): string {
  if (after.status !== 'neutral') return 'submerged it cannot hang neutral';
  const figures = `${trimWords(after.trim)}, tank ${percentText(after.fill)}`;
  const left = judgeSubmerged(boat, after).length;
  if (left === 0) return `submerged within limits (${figures})`;
  const worse = before.status === 'neutral' && judgeSubmerged(boat, before).length < left;
  return `submerged ${worse ? 'now' : 'still'} outside limits (${figures})`;
}
