import { freeName } from '../boat/arrangement.ts';
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
  const left = new Set(patient.boat.payload.filter(part => !part.fixed));
  const changes: Change[] = [];
  const kept: string[] = [];
  const names: string[] = [];
  const same = correction.pieces.map(piece => {
    const found = [...left].find(part => isCutAlike(part, piece));
    if (found) left.delete(found);
    return found;
  });
  const taken = patient.boat.payload.filter(part => !left.has(part));
  for (const [i, entry] of correction.entries.entries()) {
    const was = same[i];
    if (was) {
      names.push(was.name);
      kept.push(was.name);
      changes.push(...rewritten(was, entry));
    } else {
      const name = freeName(correction.parts[i]!.name, [...taken, ...names.map(each => ({ name: each }))]);
      names.push(name);
      changes.push({ kind: 'append', path: ['payload'], entry: named(entry, name) });
    }
  }
  for (const part of left) changes.push({ kind: 'remove', path: part.path });
  const out = [...left].map(part => `“${part.name}”`);
  const recut = kept.map(name => `“${name}”`);
  const done = [
    ...(recut.length > 0 ? [`recut ${recut.join(', ')}`] : []),
    ...(out.length > 0 ? [`take out ${out.join(', ')}`] : []),
  ];
  return {
    ...correction,
    title: correction.title.replace(/^Insert /, `${capital(done.join(', '))}, lay `),
    parts: correction.parts.map((part, i) => ({ ...part, name: names[i]! })),
    entries: correction.entries.map((entry, i) => named(entry, names[i]!)),
    changes,
  };
}

/** The entry under another name. */
const named = (entry: EntryText, name: string): EntryText => ({
  ...entry,
  fields: entry.fields.map(([key, text]) => [key, key === 'name' ? name : text] as const),
});

const HAIR = 1e-4;

function isCutAlike(part: Part, { lever }: Piece): boolean {
  const middle = (part.from[2] + part.to[2]) / 2;
  return (
    part.material === lever.material &&
    part.inside === lever.bay.inside &&
    part.from[0] > lever.bay.from[0] - HAIR &&
    part.to[0] < lever.bay.to[0] + HAIR &&
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
