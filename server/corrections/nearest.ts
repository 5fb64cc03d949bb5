import type { Boat } from '../boat/boat.ts';
import type { Finding } from '../findings/finding.ts';
import { boundsOf } from '../geometry/solids.ts';
import { lengthText, massText, tapeText } from '../wording/numbers.ts';
import type { Correction, Scope } from './correction.ts';
import { piecesWords } from './correctionTitle.ts';
import { findLevers, type Lever } from './levers.ts';
import type { Patient } from './patient.ts';
import { cheapestPieces, type Row } from './program.ts';
import { lay, type Workbench } from './realise.ts';
import { cutPiece } from './rounding.ts';

/** Pieces of less than this are not worth cutting for a compromise, kg. */
const TRIFLE = 0.002;

/**
 * The nearest that can be had when no pieces meet all limits: which limits give way is said in the title, never hidden.
 * Null when the pieces would not leave fewer limits broken than before.
 */
export function nearestCorrection(
  patient: Patient,
  rows: readonly Row[],
  bench: Workbench,
  broken: readonly Finding[],
): Correction | null {
  const levers = findLevers(patient.boat);
  if (levers.length === 0) return null;
  const shares = cheapestPieces(levers, rows, { elastic: true })?.shares ?? [];
  const pieces = shares
    .filter(share => share.mass > TRIFLE)
    .flatMap(share => cutPiece(share, patient.boat.units) ?? []);
  const laid = pieces.length > 0 ? lay(pieces, bench) : null;
  if (!laid || laid.left.length === 0 || laid.left.length >= broken.length) return null;
  const still = laid.left.map(finding => limitWords(finding)).join('; ');
  const scope: Scope = 'both';
  return {
    ...laid,
    condition: scope,
    title: `Insert ${piecesWords(pieces, patient.boat)}: the nearest that can be had; still out: ${still}`,
    changes: laid.entries.map(entry => ({ kind: 'append', path: ['payload'], entry }) as const),
  };
}

/** The finding's own figure and limit, without its advice. */
const limitWords = (finding: Finding): string =>
  (finding.message.split(/\. |\.$/)[0] ?? '').replace(/^(\w+), the boat /, '$1, it ');

/** What room would meet every limit, for a builder who can make some: lead and foam wherever they do most. */
export function roomThatWouldDo({ boat }: Patient, rows: readonly Row[]): string | null {
  const wished = [...findLevers(boat), ...imaginedLevers(boat)];
  const solution = cheapestPieces(wished, rows);
  const asked = solution?.shares.filter(share => share.mass > TRIFLE / 4 && share.lever.bay.path.length === 0) ?? [];
  if (asked.length === 0) return null;
  const words = asked.map(({ lever, mass, station, offset }) => {
    const amount =
      lever.material === 'lead'
        ? `${massText(mass, boat.units)} of lead`
        : `${lengthText(mass / lever.massPerLength, boat.units)} of foam strip`;
    const side = Math.abs(offset) < 0.001 ? '' : offset > 0 ? ', to starboard' : ', to port';
    return `${amount} near station ${tapeText(station, boat.units)}, ${lengthText(lever.height, boat.units)} up${side}`;
  });
  return `A bay for ${words.join(' and for ')} would meet every limit.`;
}

/** Lead along the keel and foam under the deck, as if there were room all along. */
function imaginedLevers(boat: Boat): readonly Lever[] {
  const bounds = [...boat.shells, ...boat.compartments].map(entry => boundsOf(entry.form));
  if (bounds.length === 0) return [];
  const keel = Math.min(...bounds.map(b => b.from[2]));
  const deck = Math.max(...bounds.map(b => b.to[2]));
  const half = Math.max(...bounds.map(b => b.to[1])) / 2;
  return (['lead', 'foam'] as const).map((material): Lever => {
    const stock = boat.stock[material];
    const [breadth, depth] = stock.strip ?? [0.02, 0.01];
    const height = material === 'lead' ? keel + depth : deck - depth;
    return {
      bay: {
        path: [],
        name: '',
        takes: material,
        inside: null,
        from: [0, -half, height],
        to: [boat.length, half, height],
      },
      material,
      density: stock.density,
      breadth,
      depth,
      massPerLength: stock.density * breadth * depth,
      station: [0.05 * boat.length, 0.95 * boat.length],
      offset: [-half, half],
      height,
    };
  });
}
