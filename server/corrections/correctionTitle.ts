import type { Boat } from '../boat/boat.ts';
import type { Submerged } from '../conditions/submerged.ts';
import { judgeSubmerged } from '../findings/judgeSubmerged.ts';
import { judgeSurfaced } from '../findings/judgeSurfaced.ts';
import { offWaterline } from '../findings/trim.ts';
import { heelWords, massText, percentText, tapeText, trimWords } from '../wording/numbers.ts';
import type { Laid, Scope } from './correction.ts';
import type { Piece } from './levers.ts';
import { countWords } from './pieceEntry.ts';

/** What a correction adds and what it brings, for the editor's menu and the report. */
export function correctionTitle(laid: Laid, scope: Scope, before: Submerged): string {
  const { boat, pieces } = laid;
  const added = piecesWords(pieces, boat);
  if (scope === 'both')
    return `Insert ${added}: both conditions within limits (${surfaceWords(laid)}; ${diveFigures(laid)})`;
  if (scope === 'surfaced') {
    return `Insert ${added}: surfaced within limits (${surfaceWords(laid)}); ${diveWords(laid, before)}`;
  }
  const surface = judgeSurfaced(boat, laid.surfaced).length === 0 ? 'within' : 'outside';
  return `Insert ${added}: submerged within limits (${diveFigures(laid)}); surfaced ${surface} limits (${surfaceWords(laid)})`;
}

/** What a correction of both conditions brings. */
export const bothWords = (laid: Floated): string =>
  `both conditions within limits (${surfaceWords(laid)}; ${diveFigures(laid)})`;

/** A boat and how it lies. */
type Floated = Pick<Laid, 'boat' | 'surfaced' | 'submerged'>;

/** The pieces in a line: what, how much, where. */
export const piecesWords = (pieces: readonly Piece[], boat: Boat): string =>
  pieces.map(piece => pieceWords(piece, boat)).join(', ');

function pieceWords(piece: Piece, boat: Boat): string {
  const { lever } = piece;
  const length = tapeText(piece.station[1] - piece.station[0], boat.units);
  const amount =
    piece.counts.length > 0
      ? `${countWords(piece, boat)} of`
      : lever.material === 'lead'
        ? massText(piece.mass, boat.units)
        : `${length} of`;
  return `${amount} ${lever.material} in “${lever.bay.name}”`;
}

function surfaceWords({ boat, surfaced }: Floated): string {
  if (surfaced.status !== 'afloat') return 'does not float';
  const off = offWaterline(boat, surfaced);
  return `${trimWords(off.trim)}, ${heelWords(off.heel)}`;
}

function diveFigures({ submerged }: Floated): string {
  if (submerged.status !== 'neutral') return 'cannot hang neutral';
  return `${trimWords(submerged.trim)}, tank ${percentText(submerged.fill)}`;
}

function diveWords(laid: Laid, before: Submerged): string {
  const { boat, submerged } = laid;
  if (submerged.status !== 'neutral') return 'submerged it cannot hang neutral';
  const left = judgeSubmerged(boat, submerged).length;
  if (left === 0) return `submerged within limits too (${diveFigures(laid)})`;
  const worse = before.status === 'neutral' && judgeSubmerged(boat, before).length < left;
  return `submerged ${worse ? 'now' : 'still'} outside limits (${diveFigures(laid)})`;
}
