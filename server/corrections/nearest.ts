import type { Boat } from '../boat/boat.ts';
import type { Finding } from '../findings/finding.ts';
import { lengthText, massText, tapeText } from '../wording/numbers.ts';
import type { Correction, Laid, Scope } from './correction.ts';
import { piecesWords } from './correctionTitle.ts';
import { findLevers, type Lever, type Piece } from './levers.ts';
import type { Patient } from './patient.ts';
import { cheapestPieces, type Row } from './program.ts';
import { roomsOf } from './proposeBays.ts';
import { lay, type Workbench } from './realise.ts';
import { cutPiece } from './rounding.ts';

/** Pieces of less than this are not worth cutting for a compromise, kg. */
const TRIFLE = 0.002;

/** A compromise that leaves more than this part of what is wrong is none. */
const WORTH_IT = 0.5;

/**
 * The nearest that can be had when no pieces meet all limits: which limits give way is said in the title, never hidden.
 * Null when the pieces would not leave fewer limits broken than before.
 */
export function nearestCorrection(
  patient: Patient,
  rows: readonly Row[],
  bench: Workbench,
  before: readonly Finding[],
): Correction | null {
  const levers = findLevers(patient.boat);
  if (levers.length === 0) return null;
  const best = cheapestPieces(levers, rows, { elastic: true });
  const asItIs = cheapestPieces([], rows, { elastic: true });
  if (!best || !asItIs || best.cost > WORTH_IT * asItIs.cost) return null;
  const pieces = best.shares
    .filter(share => share.mass > TRIFLE)
    .flatMap(share => cutPiece(share, patient.boat.units) ?? []);
  const laid = pieces.length > 0 ? lay(pieces, bench) : null;
  if (!laid || laid.left.length === 0 || laid.left.length > before.length || liesOver(laid)) return null;
  const still = laid.left.map(finding => limitWords(finding)).join('; ');
  const scope: Scope = 'both';
  return {
    ...laid,
    condition: scope,
    title: `Insert ${piecesWords(pieces, patient.boat)}: the nearest that can be had; still out: ${still}`,
    changes: laid.entries.map(entry => ({ kind: 'append', path: ['payload'], entry }) as const),
  };
}

/** Past this heel or trim the linear balances, and so the compromise, mean nothing, rad. */
const FAR_OVER = Math.PI / 9;

function liesOver({ surfaced, submerged }: Laid): boolean {
  const tilts = [
    ...(surfaced.status === 'afloat' ? [surfaced.attitude.trim, surfaced.attitude.heel] : [Math.PI]),
    ...(submerged.status === 'neutral' ? [submerged.trim, submerged.heel] : []),
  ];
  return tilts.some(tilt => Math.abs(tilt) > FAR_OVER);
}

/** The finding's own figure and limit, without its advice. */
const limitWords = (finding: Finding): string =>
  (finding.message.split(/\. |\.$/)[0] ?? '').replace(/^(\w+), the boat /, '$1, it ');

/** What room these pieces ask for, beyond that of the bays; null when they ask for none. */
export function roomWords(pieces: readonly Piece[], { units }: Boat): string | null {
  const asked = pieces.filter(({ lever }) => lever.bay.path.length === 0);
  if (asked.length === 0) return null;
  const words = asked.map(({ lever, mass, station, offset }) => {
    const amount =
      lever.material === 'lead'
        ? `${massText(mass, units)} of lead`
        : `${tapeText(station[1] - station[0], units)} of foam strip`;
    const side = Math.abs(offset) < 0.001 ? '' : offset > 0 ? ', to starboard' : ', to port';
    const middle = tapeText((station[0] + station[1]) / 2, units);
    return `${amount} near station ${middle}, ${lengthText(lever.height, units)} up${side}`;
  });
  return `A bay for ${words.join(' and for ')} would meet every limit.`;
}

/** Lead and foam wherever the hull has room of its own, as broad and deep as the strip. */
export function imaginedLevers(boat: Boat): readonly Lever[] {
  return roomsOf(boat).map(({ name, takes, station, half, height }): Lever => {
    const stock = boat.stock[takes];
    const [breadth, depth] = stock.strip ?? [half, (height[1] - height[0]) / 2];
    return {
      bay: {
        path: [],
        name,
        takes,
        inside: null,
        from: [station[0], -half, height[0]],
        to: [station[1], half, height[1]],
      },
      material: takes,
      density: stock.density,
      breadth,
      depth,
      massPerLength: stock.density * breadth * depth,
      pieces: [],
      station,
      offset: [-Math.max(0, half - breadth / 2), Math.max(0, half - breadth / 2)],
      height: takes === 'lead' ? height[0] + depth / 2 : height[1] - depth / 2,
    };
  });
}
