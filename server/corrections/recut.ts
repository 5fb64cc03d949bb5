import type { Boat, Part } from '../boat/boat.ts';
import { assembleBodies } from '../bodies/assemble.ts';
import { floatSubmerged } from '../conditions/submerged.ts';
import { floatSurfaced } from '../conditions/surfaced.ts';
import type { Change, EntryText } from '../findings/finding.ts';
import type { Correction } from './correction.ts';
import type { Piece } from './levers.ts';
import type { Patient } from './patient.ts';

/** The boat without the lead and foam that may be moved; null when there is none, or it does not float without. */
export function withoutLoose(patient: Patient): Patient | null {
  const { boat, shelf, schema } = patient;
  const payload = boat.payload.filter(part => part.fixed);
  if (payload.length === boat.payload.length) return null;
  const bare: Boat = { ...boat, payload };
  const bodies = assembleBodies(bare, shelf);
  const surfaced = floatSurfaced(bodies, boat.length);
  if (surfaced.status !== 'afloat') return null;
  return { boat: bare, bodies, surfaced, submerged: floatSubmerged(bodies), shelf, schema };
}

/**
 * A correction of the boat without its loose pieces, said as changes to those pieces: one of the same material, strip and
 * height in the same bay is recut and slid where it stands in the file; the others are taken out, new ones added.
 */
export function asRecut(correction: Correction, patient: Patient): Correction {
  const loose = patient.boat.payload.filter(part => !part.fixed);
  const left = new Set(loose);
  const changes: Change[] = [];
  const kept: string[] = [];
  for (const [i, piece] of correction.pieces.entries()) {
    const same = [...left].find(part => isCutAlike(part, piece));
    const entry = correction.entries[i]!;
    if (same) {
      left.delete(same);
      kept.push(same.name);
      changes.push(...rewritten(same, entry));
    } else {
      changes.push({ kind: 'append', path: ['payload'], entry });
    }
  }
  for (const part of left) changes.push({ kind: 'remove', path: part.path });
  const out = [...left].map(part => `“${part.name}”`);
  const recut = kept.map(name => `“${name}”`);
  const done = [
    ...(recut.length > 0 ? [`recut ${recut.join(', ')}`] : []),
    ...(out.length > 0 ? [`take out ${out.join(', ')}`] : []),
  ];
  return { ...correction, title: correction.title.replace(/^Insert /, `${capital(done.join(', '))}, lay `), changes };
}

const HAIR = 1e-4;

function isCutAlike(part: Part, { lever }: Piece): boolean {
  const middle = (part.from[2] + part.to[2]) / 2;
  return (
    part.material === lever.material &&
    part.inside === lever.bay.inside &&
    part.written?.station.isRange === true &&
    Math.abs(part.to[1] - part.from[1] - lever.breadth) < HAIR &&
    Math.abs(part.to[2] - part.from[2] - lever.depth) < HAIR &&
    Math.abs(middle - lever.height) < HAIR
  );
}

/** The keys of the entry that differ when a piece is cut and laid anew. */
function rewritten(part: Part, entry: EntryText): readonly Change[] {
  const fields = new Map(entry.fields);
  const replace = (key: string): readonly Change[] => {
    const text = fields.get(key);
    return text === undefined ? [] : [{ kind: 'replace', place: { on: 'value', path: [...part.path, key] }, text }];
  };
  const offset = fields.get('offset');
  const sideways: readonly Change[] = part.written?.offset
    ? [{ kind: 'replace', place: { on: 'value', path: [...part.path, 'offset'] }, text: offset ?? '0' }]
    : offset === undefined
      ? []
      : [{ kind: 'add-key', path: part.path, key: 'offset', text: offset }];
  return [...replace('mass'), ...replace('station'), ...sideways];
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
